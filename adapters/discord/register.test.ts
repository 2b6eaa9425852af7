import { describe, expect, test } from 'vitest';
import { commands } from '../../commands/registry.ts';
import { charactersOf, fieldNames, slashBodies } from './bodies.ts';
import { fieldsOf } from './form.ts';
import { limits } from './limits.ts';
import { commandOf, slashName } from './names.ts';
import { commandBodies, planRegistration } from './register.ts';

const bodies = commandBodies(commands);
const wire = JSON.parse(JSON.stringify(bodies)) as typeof bodies;
const existing = wire.map((body, at) => ({ ...body, id: String(at), application_id: '1', version: '2', nsfw: false }));

interface Option {
  readonly type: number;
  readonly name: string;
  readonly description: string;
  readonly required?: boolean;
  readonly autocomplete?: boolean;
  readonly choices?: readonly { readonly name: string; readonly value: string }[];
  readonly options?: readonly Option[];
}
const leaves = (option: Option): readonly Option[] => [option, ...(option.options ?? []).flatMap(leaves)];

describe('the list of commands as the platform takes it', () => {
  test('every command is there once, a family as one', () => {
    const slash = [...new Set(commands.map(({ name }) => name.split(' ')[0]))];
    const menu = commands.flatMap(({ onMessage }) => onMessage?.label ?? []);
    expect(bodies.map(({ name }) => name)).toEqual([...slash, ...menu]);
    for (const command of commands) expect(commandOf(slashName(command, commands), commands)).toBe(command);
    expect(bodies.length).toBeLessThanOrEqual(100);
  });

  const slash = JSON.parse(JSON.stringify(slashBodies(commands))) as ReturnType<typeof slashBodies>;
  test.each(slash.map((body) => [body.name, body] as const))('%s keeps every published limit', (_name, body) => {
    expect(charactersOf(body)).toBeLessThanOrEqual(limits.commandCharacters);
    const all = [
      { ...body, type: 0 } as unknown as Option,
      ...(body.options ?? []).flatMap((one) => leaves(one as Option)),
    ];
    for (const { name, description, options = [], choices = [], autocomplete } of all) {
      expect(name).toMatch(/^[-_\p{Ll}\p{N}]{1,32}$/u);
      expect(description.length).toBeGreaterThan(0);
      expect(description.length).toBeLessThanOrEqual(limits.commandDescription);
      expect(options.length).toBeLessThanOrEqual(limits.options);
      expect(new Set(options.map((one) => one.name)).size).toBe(options.length);
      expect(choices.length).toBeLessThanOrEqual(limits.choices);
      expect(choices.length > 0 && autocomplete === true).toBe(false);
      const required = options.map((one) => one.required ?? false);
      expect(required).toEqual(required.toSorted((a, b) => Number(b) - Number(a)));
    }
  });

  test('what can be asked about a message stands in its menu, under a name and nothing else', () => {
    const menu = wire.filter(({ type }) => type === 3);
    expect(menu.map(({ name }) => name)).toEqual(['Weigh the numbers']);
    expect(menu.length).toBeLessThanOrEqual(15);
    for (const body of menu) {
      expect(Object.keys(body).sort()).toEqual(['contexts', 'integration_types', 'name', 'type']);
      expect(body.name).toMatch(/^.{1,32}$/u);
    }
  });

  test('options beyond the platform’s number are reached through one that takes a line', () => {
    for (const command of commands) {
      const fields = fieldNames(command);
      const own = fieldsOf(command);
      expect(own.every((name) => fields.includes(name)) || fields.includes('more')).toBe(true);
      if (!command.takesLine && !command.passing) expect(fields).toEqual(expect.arrayContaining(['for', 'units']));
    }
  });

  test('a line that is taken apart has a field for each part instead of one for itself', () => {
    const fields = (name: string) => fieldNames(commands.find((one) => one.name === name)!);
    expect(fields('settle')).toEqual(['one', 'other', 'third', 'fourth', 'by', 'at', 'flip', 'for', 'units']);
    expect(fields('claim')).toEqual(['statement', 'figure', 'is', 'at', 'for', 'units']);
    expect(fields('again')).toEqual(['change']);
  });

  test('works in guilds, in the bot’s own messages and where a person installed it', () => {
    for (const { integration_types, contexts } of bodies) {
      expect(integration_types).toEqual([0, 1]);
      expect(contexts).toEqual([0, 1, 2]);
    }
  });
});

describe('what to register', () => {
  test('nothing where everything is there', () => {
    expect(planRegistration(existing, bodies)).toEqual({ differences: [], unknown: [] });
  });

  test('everything where nothing is', () => {
    const { put, differences } = planRegistration([], bodies);
    expect(put).toEqual(bodies);
    expect(differences).toHaveLength(bodies.length);
  });

  test('a changed word is named', () => {
    const [first, ...rest] = existing;
    const changed = { ...first!, description: 'old' } as (typeof existing)[number];
    const { differences, put } = planRegistration([changed, ...rest], bodies);
    const description = 'description' in first! ? first.description : '';
    expect(differences).toEqual([`~ ${first!.name} description: "old" → "${description}"`]);
    expect(put).toHaveLength(bodies.length);
  });

  const at = existing.findIndex((body) => 'options' in body && body.name === 'mix');
  const mix = existing[at] as unknown as { options: Record<string, unknown>[]; [key: string]: unknown };
  const [amount, ...others] = mix.options;
  const asRegistered = (changed: object) =>
    planRegistration(existing.with(at, changed as (typeof existing)[number]), bodies).differences;

  test.each([
    ['another language’s name', { ...mix, name_localizations: { de: 'mischen' } }, 'mix name_localizations'],
    ['another language’s word', { ...mix, description_localizations: { de: 'x' } }, 'mix description_localizations'],
    [
      'an option’s',
      { ...mix, options: [{ ...amount, name_localizations: { de: 'menge' } }, ...others] },
      'amount name_localizations',
    ],
    [
      'an option’s length',
      { ...mix, options: [{ ...amount, max_length: 5 }, ...others] },
      'amount max_length: 5 → null',
    ],
    ['its least', { ...mix, options: [{ ...amount, min_length: 5 }, ...others] }, 'amount min_length: 5 → null'],
    [
      'a choice’s',
      {
        ...mix,
        options: mix.options.map((option) => ({
          ...option,
          ...(Array.isArray(option.choices)
            ? { choices: option.choices.map((one) => ({ ...one, name_localizations: { de: 'x' } })) }
            : {}),
        })),
      },
      'name_localizations',
    ],
  ])('%s is a difference', (_, changed, said) => {
    const differences = asRegistered(changed);
    expect(differences.length).toBeGreaterThan(0);
    for (const one of differences) expect(one).toContain(said);
  });

  test('what the platform says of languages and lengths where there are none is no difference', () => {
    const nothing = { name_localizations: null, description_localizations: {} };
    expect(asRegistered({ ...mix, ...nothing, options: [{ ...amount, ...nothing }, ...others] })).toEqual([]);
  });

  test('another’s command is kept as it was, and only deleted when that is wished', () => {
    const other = { name: 'other', description: 'not ours', type: 1 as const, id: '9', version: '1' };
    expect(planRegistration([...existing, other], bodies)).toEqual({ differences: [], unknown: ['other'] });
    const kept = planRegistration([...existing.slice(1), other], bodies);
    expect(kept.put?.at(-1)).toEqual({ name: 'other', description: 'not ours', type: 1 });
    const gone = planRegistration([...existing, other], bodies, { deleteUnknown: true });
    expect(gone.put).toEqual(bodies);
    expect(gone.differences).toEqual(['- other: not ours, deleted']);
  });
});
