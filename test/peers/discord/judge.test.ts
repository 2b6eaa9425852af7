import { describe, expect, test } from 'vitest';
import { type CommandBody, commandCharacters, commandFaults, commandSetFaults } from './judge-command.ts';
import { type Component, modalFaults } from './judge-components.ts';
import { bodyFaults, type MessageBody, mentionFaults, messageFaults, type SentFile } from './judge-message.ts';

const x = (length: number) => 'x'.repeat(length);
const numbers = (count: number) => Array.from({ length: count }, (_, index) => index);

/** All that is wrong with a body as the platform sees it: shape first, then the rules beyond it. */
function faultsOf(body: MessageBody, files: readonly SentFile[] = []): readonly string[] {
  return [...bodyFaults('IncomingWebhookRequestPartial', body), ...messageFaults({ body, files, edit: false })];
}

const file = (index: number, name: string): SentFile => ({
  index,
  name,
  contentType: 'image/png',
  bytes: new Uint8Array(1),
});
const button = (custom_id: string, more: object = {}): Component => ({
  type: 2,
  style: 2,
  label: 'go',
  custom_id,
  ...more,
});
const row = (...components: readonly Component[]): Component => ({ type: 1, components });
const select = (count: number, more: object = {}): Component => ({
  type: 3,
  custom_id: 'pick',
  options: numbers(count).map((value) => ({ label: `${value}`, value: `${value}` })),
  ...more,
});

describe('limits of a message: the last that passes and the first that does not', () => {
  const field = (name: number, value: number) => ({ fields: [{ name: x(name), value: x(value) }] });
  test.each<readonly [string, MessageBody, MessageBody]>([
    ['content of 2000', { content: x(2000) }, { content: x(2001) }],
    ['title of 256', { embeds: [{ title: x(256) }] }, { embeds: [{ title: x(257) }] }],
    ['description of 4096', { embeds: [{ description: x(4096) }] }, { embeds: [{ description: x(4097) }] }],
    ['field name of 256', { embeds: [field(256, 1)] }, { embeds: [field(257, 1)] }],
    ['field value of 1024', { embeds: [field(1, 1024)] }, { embeds: [field(1, 1025)] }],
    ['a field has a value', { embeds: [field(1, 1)] }, { embeds: [field(1, 0)] }],
    ['footer of 2048', { embeds: [{ footer: { text: x(2048) } }] }, { embeds: [{ footer: { text: x(2049) } }] }],
    ['author of 256', { embeds: [{ author: { name: x(256) } }] }, { embeds: [{ author: { name: x(257) } }] }],
    ['25 fields', { embeds: [fields(25)] }, { embeds: [fields(26)] }],
    [
      '10 embeds',
      { embeds: numbers(10).map(() => ({ title: 'a' })) },
      { embeds: numbers(11).map(() => ({ title: 'a' })) },
    ],
    ['6000 over all embeds', { embeds: sums(6000) }, { embeds: sums(6001) }],
    ['an embed shows something', { embeds: [{ title: 'a' }] }, { embeds: [{ color: 1 }] }],
    ['something in it', { content: 'a' }, { content: ' ' }],
    ['5 rows', { components: rows(5) }, { components: rows(6) }],
    ['5 buttons a row', { components: [row(...buttons(5))] }, { components: [row(...buttons(6))] }],
    ['one select a row', { components: [row(select(2))] }, { components: [row(select(2), button('b'))] }],
    ['25 options', { components: [row(select(25))] }, { components: [row(select(26))] }],
    [
      'values within options',
      { components: [row(select(2, { max_values: 2 }))] },
      { components: [row(select(2, { max_values: 3 }))] },
    ],
    ['custom_id of 100', { components: [row(button(x(100)))] }, { components: [row(button(x(101)))] }],
    ['custom_id not empty', { components: [row(button('a'))] }, { components: [row(button(''))] }],
    [
      'custom_id once',
      { components: [row(button('a'), button('b'))] },
      { components: [row(button('a')), row(button('a'))] },
    ],
    [
      'label of 80',
      { components: [row(button('a', { label: x(80) }))] },
      { components: [row(button('a', { label: x(81) }))] },
    ],
    [
      'a button shows something',
      { components: [row(button('a'))] },
      { components: [row(button('a', { label: undefined }))] },
    ],
    [
      'a link has no custom_id',
      { components: [row({ type: 2, style: 5, label: 'a', url: 'https://example.org' })] },
      { components: [row(button('a', { style: 5, url: 'https://example.org' }))] },
    ],
    [
      'v2 without content',
      { flags: 1 << 15, components: [text('a')] },
      { flags: 1 << 15, components: [text('a')], content: 'a' },
    ],
    ['v2 needs its flag', { flags: 1 << 15, components: [text('a')] }, { components: [text('a')] }],
    ['v2 of 40', { flags: 1 << 15, components: nested(39) }, { flags: 1 << 15, components: nested(40) }],
    [
      'v2 text of 4000',
      { flags: 1 << 15, components: [text(x(4000))] },
      { flags: 1 << 15, components: [text(x(3999)), text('ab')] },
    ],
    ['flags of its own', { content: 'a', flags: 64 }, { content: 'a', flags: 128 }],
  ])('%s', (_, good, bad) => {
    expect(faultsOf(good)).toEqual([]);
    expect(faultsOf(bad)).not.toEqual([]);
  });

  function fields(count: number) {
    return { fields: numbers(count).map(() => ({ name: 'a', value: 'b' })) };
  }
  function sums(total: number) {
    return [
      { description: x(4000) },
      { title: x(200), fields: [{ name: 'a', value: x(1000) }], footer: { text: x(total - 5201) } },
    ];
  }
  function rows(count: number) {
    return numbers(count).map((index) => row(button(`b${index}`)));
  }
  function buttons(count: number) {
    return numbers(count).map((index) => button(`b${index}`));
  }
  function text(content: string): Component {
    return { type: 10, content };
  }
  function nested(inside: number): Component[] {
    return [{ type: 17, components: numbers(inside).map(() => text('a')) }];
  }
});

describe('attachments', () => {
  const picture = { embeds: [{ title: 'a', image: { url: 'attachment://wall.png' } }] };

  test('a picture that is attached passes, one that is not is named', () => {
    expect(faultsOf(picture, [file(0, 'wall.png')])).toEqual([]);
    expect(faultsOf(picture, [file(0, 'other.png')])).toEqual(['attachment://wall.png is not attached (other.png)']);
    expect(faultsOf(picture)).toEqual(['attachment://wall.png is not attached (nothing is)']);
  });

  test('an entry needs its file, and a file a name that stays', () => {
    const listed = { content: 'a', attachments: [{ id: '0', description: 'the wall' }] };
    expect(faultsOf(listed, [file(0, 'wall.png')])).toEqual([]);
    expect(faultsOf(listed)).toEqual(['attachments: 0 has no file']);
    expect(faultsOf({ content: 'a' }, [file(0, 'my wall.png')])).toEqual([
      'the file name my wall.png would be rewritten',
    ]);
  });

  test('an edit may show what the message had, unless it drops it', () => {
    const before = [{ id: '77', name: 'wall.png' }];
    expect(messageFaults({ body: picture, files: [], before, edit: true })).toEqual([]);
    expect(messageFaults({ body: { ...picture, attachments: [] }, files: [], before, edit: true })).toHaveLength(1);
  });

  test('10 MiB each, 10 of them', () => {
    const large = { ...file(0, 'a.png'), bytes: new Uint8Array(10 * 2 ** 20 + 1) };
    expect(faultsOf({}, [large])).toEqual(['a.png is larger than 10 MiB']);
    const many = (count: number) => numbers(count).map((index) => file(index, `${index}.png`));
    expect(faultsOf({}, many(10))).toEqual([]);
    expect(faultsOf({}, many(11))).toEqual(['11 attachments: at most 10']);
  });
});

test('only closed mentions are right', () => {
  expect(mentionFaults({ allowed_mentions: { parse: [] } })).toEqual([]);
  const users = 'users' as never;
  for (const allowed_mentions of [undefined, null, {}, { parse: [users] }, { parse: [], users: ['1'] }]) {
    expect(mentionFaults(allowed_mentions === undefined ? {} : { allowed_mentions })).toHaveLength(1);
  }
});

describe('modals', () => {
  const label = (custom_id: string, more: object = {}) => ({
    type: 18,
    label: 'Layers',
    component: { type: 4, style: 1, custom_id, ...more },
  });
  const modal = (...components: readonly object[]) => ({ custom_id: 'm', title: 'Wall', components }) as never;

  test('five labels pass, six do not', () => {
    expect(modalFaults(modal(...numbers(5).map((index) => label(`${index}`))))).toEqual([]);
    expect(modalFaults(modal(...numbers(6).map((index) => label(`${index}`))))).toHaveLength(1);
  });

  test('an id twice, a row, a value outside its own limits', () => {
    expect(modalFaults(modal(label('a'), label('a')))).toEqual(['two components have the custom_id a']);
    expect(modalFaults(modal({ type: 1, components: [] }))).toEqual(['a row in a modal: use a label']);
    expect(modalFaults(modal(label('a', { value: 'abc', max_length: 2 })))).toHaveLength(1);
  });
});

describe('commands', () => {
  const command = (more: object = {}): CommandBody => ({ name: 'mix', description: 'mixes', ...more }) as CommandBody;
  const option = (name: string, more: object = {}) => ({ type: 3, name, description: 'd', ...more });
  const choices = (count: number) => numbers(count).map((index) => ({ name: `c${index}`, value: `v${index}` }));

  test.each<readonly [string, object, object]>([
    [
      '25 options',
      { options: numbers(25).map((i) => option(`o${i}`)) },
      { options: numbers(26).map((i) => option(`o${i}`)) },
    ],
    [
      '25 choices',
      { options: [option('o', { choices: choices(25) })] },
      { options: [option('o', { choices: choices(26) })] },
    ],
    ['description of 100', { description: x(100) }, { description: x(101) }],
    ['a description', { description: 'a' }, { description: '' }],
    ['small letters', { name: 'mix' }, { name: 'Mix' }],
    ['no space in a name', { options: [option('a-b')] }, { options: [option('a b')] }],
    ['names once', { options: [option('a'), option('b')] }, { options: [option('a'), option('a')] }],
    [
      'required first',
      { options: [option('a', { required: true }), option('b')] },
      { options: [option('a'), option('b', { required: true })] },
    ],
    [
      'choices or autocomplete',
      { options: [option('a', { autocomplete: true })] },
      { options: [option('a', { autocomplete: true, choices: choices(1) })] },
    ],
    [
      'choice of 100',
      { options: [option('a', { choices: [{ name: 'a', value: x(100) }] })] },
      { options: [option('a', { choices: [{ name: 'a', value: x(101) }] })] },
    ],
    [
      'subcommands alone',
      { options: [{ type: 1, name: 'can', description: 'd' }] },
      { options: [{ type: 1, name: 'can', description: 'd' }, option('a')] },
    ],
    [
      'en-US beside others',
      { name_localizations: { 'en-US': 'mix', de: 'mischen' } },
      { name_localizations: { de: 'mischen' } },
    ],
    [
      'locales that are',
      { name_localizations: { 'en-US': 'mix' } },
      { name_localizations: { 'en-US': 'mix', xx: 'mix' } },
    ],
  ])('%s', (_, good, bad) => {
    expect(commandFaults(command(good), 'create')).toEqual([]);
    expect(commandFaults(command(bad), 'create')).not.toEqual([]);
  });

  test('8000 characters, with the longest localisation of each text', () => {
    const wide = (count: number) => numbers(count).map((i) => ({ name: `${i}`.padEnd(100, 'n'), value: x(100) }));
    // 3 + 5 of the command, 2 + 20 × 200, 2 + 19 × 200, 1 + 100, and 1 + the last.
    const sized = (last: number) => [
      option('o', { choices: wide(20) }),
      option('p', { choices: wide(19) }),
      option('q', { description: x(100) }),
      option('r', { description: x(last) }),
    ];
    expect(commandCharacters(command({ options: sized(86) }))).toBe(8000);
    expect(commandFaults(command({ options: sized(86) }), 'create')).toEqual([]);
    expect(commandFaults(command({ options: sized(87) }), 'create')).toEqual(['mix: 8001 characters, at most 8000']);
    const name_localizations = { 'en-US': 'mix', de: 'mixe' };
    expect(commandFaults(command({ options: sized(86), name_localizations }), 'create')).toHaveLength(1);
  });

  test('100 chat commands, 15 of messages, no name twice', () => {
    const many = (count: number, type: number) => numbers(count).map((i) => ({ name: `c${i}`, type }) as CommandBody);
    expect(commandSetFaults([...many(100, 1), ...many(15, 2), ...many(15, 3)])).toEqual([]);
    expect(commandSetFaults(many(101, 1))).toHaveLength(1);
    expect(commandSetFaults(many(16, 3))).toHaveLength(1);
    expect(commandSetFaults([command(), command()])).toEqual(['two chat commands are called mix']);
  });
});
