import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberOf } from './numbers.ts';
import { addressed, saidIn } from './read.ts';
import { mayInvite } from './rooms.ts';

const address = { prefix: '!teemer', names: ['Teemer', '@teemer:example.org', 'teemer'] };
const text = (body: string, more: object = {}) =>
  saidIn({ type: 'm.room.message', content: { msgtype: 'm.text', body, ...more } });

describe('who is meant', () => {
  test.each([
    ['!teemer mix 30 L', 'mix 30 L'],
    ['!Teemer  mix 30 L', 'mix 30 L'],
    ['!teemer', 'help'],
    ['Teemer: mix 30 L', 'mix 30 L'],
    ['teemer, mix 30 L', 'mix 30 L'],
    ['@teemer mix 30 L', 'mix 30 L'],
    ['@teemer:example.org: mix 30 L', 'mix 30 L'],
    ['Teemer', 'help'],
    ['[Teemer](https://matrix.to/#/@teemer:example.org) mix 30 L', 'mix 30 L'],
    ['[Teemer](https://matrix.to/#/@teemer:example.org): mix 30 L', 'mix 30 L'],
    ['[T\\] (bot)](https://matrix.to/#/%40teemer%3Aexample.org), mix 30 L', 'mix 30 L'],
    ['[@teemer:example.org](https://matrix.to/#/@teemer:example.org?via=example.org) mix 30 L', 'mix 30 L'],
    ['[Teemer](https://matrix.to/#/@teemer:example.org)', 'help'],
    ['[Teemer](https://matrix.to/#/@teemer:other.org) mix 30 L', undefined],
    ['[Teemer](https://matrix.to/#/teemer) mix 30 L', undefined],
    ['[Teemer](https://example.org/#/@teemer:example.org) mix 30 L', undefined],
    ['[Teemer](https://matrix.to/#/%E0%A4%A) mix 30 L', undefined],
    ['ask [Teemer](https://matrix.to/#/@teemer:example.org) mix 30 L', undefined],
    ['@teemer:other.org: mix 30 L', undefined],
    ['!teemers mix 30 L', undefined],
    ['Teemers are nice', undefined],
    ['ask teemer: mix 30 L', undefined],
    ['mix 30 L', undefined],
  ])('%j asks %j', (words, line) => expect(addressed(words, address)).toBe(line));

  test('never fails, and gives only what stands at the end', () => {
    fc.assert(
      fc.property(fc.string(), (words) => {
        const line = addressed(words, address);
        if (line !== undefined && line !== 'help') expect(words.trim().endsWith(line)).toBe(true);
      }),
    );
  });
});

describe('what an event says', () => {
  test('words, their thread, and what they answer by name', () => {
    expect(text(' mix 30 L ')).toEqual({ kind: 'text', text: 'mix 30 L' });
    const thread = { rel_type: 'm.thread', event_id: '$root', 'm.in_reply_to': { event_id: '$last' } };
    expect(text('1', { 'm.relates_to': { ...thread, is_falling_back: true } })).toEqual({
      kind: 'text',
      text: '1',
      root: '$root',
    });
    expect(text('1', { 'm.relates_to': thread })).toEqual({ kind: 'text', text: '1', root: '$root', replyTo: '$last' });
  });

  test('without the quote of older clients', () => {
    const reply = { 'm.relates_to': { 'm.in_reply_to': { event_id: '$a' } } };
    expect(text('> <@teemer:example.org> 15 kg\n> more\n\n2', reply)).toMatchObject({ text: '2', replyTo: '$a' });
    expect(text('> 2')).toMatchObject({ text: '> 2' });
  });

  test('an edit says its new words', () => {
    const edit = (msgtype: string) =>
      text('* mix 40 L', {
        'm.new_content': { msgtype, body: 'mix 40 L' },
        'm.relates_to': { rel_type: 'm.replace', event_id: '$q' },
      });
    expect(edit('m.text')).toEqual({ kind: 'text', text: 'mix 40 L', edits: '$q' });
    expect(edit('m.notice')).toBeUndefined();
  });

  test.each([
    ['m.room.message', { msgtype: 'm.notice', body: '!teemer mix 30 L' }],
    ['m.room.message', { msgtype: 'm.image', body: 'mix' }],
    ['m.room.message', { msgtype: 'm.text' }],
    ['m.room.message', { msgtype: 'm.text', body: 7 }],
    ['m.room.member', { membership: 'join' }],
    ['m.reaction', { 'm.relates_to': { rel_type: 'm.annotation', event_id: '$a' } }],
    ['m.reaction', { 'm.relates_to': 'x' }],
  ])('%s %j says nothing', (type, content) => expect(saidIn({ type, content })).toBeUndefined());

  test('whatever comes in, it is read without failing', () => {
    const content = fc.dictionary(
      fc.constantFrom('msgtype', 'body', 'm.relates_to', 'm.new_content'),
      fc.anything({ maxDepth: 2 }),
    );
    fc.assert(
      fc.property(fc.constantFrom('m.room.message', 'm.reaction'), content, (type, some) => {
        saidIn({ type, content: some });
      }),
    );
  });
});

test.each([
  ['1️⃣', 1],
  ['3\u20e3', 3],
  ['2', 2],
  [' 9 ', 9],
  ['0', undefined],
  ['10', undefined],
  ['👍', undefined],
  ['1 more', undefined],
])('%j is the number %j', (key, number) => expect(numberOf(key)).toBe(number));

test.each([
  [['*'], true],
  [['example.org'], true],
  [['@ann:example.org'], true],
  [['!room:b.org'], true],
  [['example.com', '@bob:example.org'], false],
  [['ample.org'], false],
  [[], false],
])('%j may invite: %j', (allow, may) => expect(mayInvite(allow, '@ann:example.org', '!room:b.org')).toBe(may));
