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
  expect(card.doubt).toBe('how damp the clay is: weigh some, and say damp:.');
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
  expect(wrong.error.what).toBe('recipe: and ratio: were given');
  expect(wrong.error.expected).toBe('a = b');
  expect(wrong).toMatchObject({ tryLine: '/mix amount:30 L ram:light' });
});
