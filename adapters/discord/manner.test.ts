import { describe, expect, test } from 'vitest';
import { answerLine } from '../../commands/answer.ts';
import type { Reply } from '../../commands/card.ts';
import { inProcessMemory } from '../../commands/memory.ts';
import { commands } from '../../commands/registry.ts';
import { sampleCard } from '../terminal/sample-card.ts';
import { fieldNames } from './bodies.ts';
import { slashLine, slashManner, spokenHere } from './manner.ts';

const manner = slashManner(commands);
const help = async (line: string) => {
  const context = { asker: 'ann', place: 'shed', now: new Date(0), memory: inProcessMemory(), manner };
  const reply = await answerLine(line, context);
  if (reply.kind === 'error') throw new Error(reply.error.what);
  return reply.card;
};
const commandOf = (name: string) => commands.find((one) => one.name === name)!;

describe('help', () => {
  test('names every command as it is called here, and nobody is told to type name=value', async () => {
    const { headline, table } = await help('help');
    expect(headline).toContain('slash');
    for (const [name] of table!.rows) expect(name).toMatch(/^\//);
    expect(JSON.stringify(await help('help'))).not.toContain('name=value');
  });

  test.each(commands.map(({ name }) => name))(
    'of %s has its fields, its examples as they are put here',
    async (name) => {
      const { table, notes } = await help(`help ${name}`);
      const fields = fieldNames(commandOf(name));
      for (const [option = ''] of table!.rows) {
        expect(fields.includes(option) || option.startsWith('more: ')).toBe(true);
      }
      for (const { line } of commandOf(name).examples) expect(notes.join('\n')).toContain(slashLine(line, commands));
    },
  );
});

describe('a line', () => {
  test.each([
    ['mix 1.1 cu ft damp=10%', '/mix amount:1.1 cu ft damp:10%'],
    ['size can 20 gal', '/size can vessel:20 gal'],
    ['settle list', '/settle one:list'],
    ['units US', '/units system:US'],
    ['why', '/why'],
    ['nonsense 3', 'nonsense 3'],
  ])('%s is put as %s', (line, put) => expect(slashLine(line, commands)).toBe(put));
});

test('what is assumed, in doubt or wrong speaks of fields; what a button sends stays a line', () => {
  const mix = commandOf('mix');
  const doubtful = { ...sampleCard, doubt: 'how damp the clay is: weigh some, and say damp=.' };
  const { card } = spokenHere({ kind: 'card', card: doubtful }, mix, commands);
  expect(card.doubt).toBe('how damp the clay is: weigh some, and say damp.');
  expect(card.assumed.map(({ override }) => override).join()).not.toContain('=');
  expect(card.next).toBe(sampleCard.next);
  const mistake: Extract<Reply, { kind: 'error' }> = {
    kind: 'error',
    error: {
      code: 'impossible',
      what: 'recipe= and ratio= were given',
      expected: 'a = b',
      example: 'mix 30 L ram=light',
    },
    cautions: [],
  };
  const wrong = spokenHere(mistake, mix, commands);
  expect(wrong.error.what).toBe('recipe and ratio were given');
  expect(wrong.error.expected).toBe('a = b');
  expect(wrong).toMatchObject({ tryLine: '/mix amount:30 L ram:light' });
});

describe('a hint is put as it can be put here', () => {
  const hinted = (
    { notes = [], given = [], override }: { notes?: string[]; given?: string[]; override?: string },
    name: string,
    about?: string,
  ) => {
    const assumed = override === undefined ? [] : [{ text: 'it is so', override }];
    const reply = { kind: 'card', card: { ...sampleCard, command: name, notes, given, assumed } } as const;
    return spokenHere(reply, commandOf(name), commands, about === undefined ? undefined : commandOf(about)).card;
  };
  const override = (typed: string, name: string, about?: string) =>
    hinted({ override: typed }, name, about).assumed[0]?.override;

  test.each([
    ['say co=.', 'say co.', 'fuel'],
    ['sooner (weighed=).', 'sooner (weighed).', 'dry'],
    ['tub= counts the batches', 'tub counts the batches', 'mix'],
    ['may be typed: metal=…', 'may be typed: metal', 'start'],
    ['rate= for its heat, or blast= for what it gives', 'rate for its heat, or blast for what it gives', 'fuel'],
    // No option of its.
    ['bore=8 in', 'bore=8 in', 'mix'],
    ['lid= and floor=', 'more: lid= and more: floor=', 'fuel'],
  ])('%s: %s', (typed, put, name) => {
    expect(hinted({ notes: [typed] }, name).notes).toEqual([put]);
  });

  test('by the command it belongs to: the one explained, or the one a statement was asked as', () => {
    expect(override('recipe=castable', 'why')).toBe('recipe=castable');
    expect(override('recipe=castable', 'why', 'mix')).toBe('recipe:castable');
    const given = ['asked as: melt 5 kg aluminium', 'asked as: wall for=(size can 60 L) hot=1000 °C'];
    const claimed = (typed: string) => hinted({ given, override: typed }, 'claim').assumed[0]?.override;
    expect(claimed('pour=730 °C')).toBe('pour:730 °C');
    expect(claimed('ramp=1 h')).toBe('ramp:1 h');
    expect(claimed('co=20%')).toBe('co=20%');
  });

  test('in the field that takes all the others where it has none of its own', () => {
    expect(fieldNames(commandOf('fuel'))).not.toContain('air');
    expect(override('air=30 °C', 'fuel')).toBe('more:air=30 °C');
    expect(override('air=30 °C', 'wall')).toBe('air:30 °C');
    // A side of settle is a line, in which options are typed as ever.
    expect(override('air=30 °C', 'settle')).toBe('air=30 °C');
  });

  test('a whole line as a slash command', () => {
    expect(override('checklist start club lining fuel=charcoal', 'checklist')).toBe(
      slashLine('checklist start club lining fuel=charcoal', commands),
    );
    expect(override('checklist start club lining fuel=charcoal', 'checklist')).toMatch(
      /^\/checklist start .*fuel:charcoal$/,
    );
  });
});
