import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Command } from '../../commands/command.ts';
import { commands } from '../../commands/registry.ts';
import { fieldNames } from './bodies.ts';
import { suggestions } from './complete.ts';
import { limits } from './limits.ts';

const typing = (name: string, option: string, typed: string, units: 'metric' | 'US' = 'metric') =>
  suggestions({
    command: commands.find((one) => one.name === name) as Command,
    option,
    typed,
    commands,
    units,
    builds: ['club lining'],
  }).map(({ value }) => value);

describe('suggestions', () => {
  test('are never more or longer than the platform takes, whatever is typed', () => {
    const field = fc
      .constantFrom(...commands)
      .chain((command) => fc.constantFrom(...fieldNames(command)).map((option) => ({ command, option })));
    fc.assert(
      fc.property(field, fc.string({ maxLength: 300, unit: 'grapheme' }), ({ command, option }, typed) => {
        const all = suggestions({ command, option, typed, commands, units: 'US', builds: ['x'.repeat(40)] });
        expect(all.length).toBeLessThanOrEqual(limits.choices);
        for (const { name, value } of all) {
          expect(name.length).toBeGreaterThan(0);
          expect(name.length).toBeLessThanOrEqual(limits.choice);
          expect(value.length).toBeLessThanOrEqual(limits.choice);
        }
        expect(new Set(all.map(({ value }) => value)).size).toBe(all.length);
      }),
    );
  });

  test('what is typed stands first, so that nothing is taken out of anybody’s hands', () => {
    expect(typing('mix', 'amount', '1.1 cu ft')[0]).toBe('1.1 cu ft');
  });

  test('a bare number has the units of its option, the reader’s first', () => {
    expect(typing('mix', 'amount', '30').slice(0, 3)).toEqual(['30', '30 L', '30 ml']);
    expect(typing('mix', 'amount', '30', 'US').slice(0, 3)).toEqual(['30', '30 gal', '30 imp gal']);
    expect(typing('mix', 'damp', '10')).toEqual(['10', '10%']);
    expect(typing('wall', 'hot', '1000').slice(0, 3)).toEqual(['1000', '1000 °C', '1000 °F']);
    expect(typing('mix', 'outside', '1 1/2', 'US')).toContain('1 1/2 in');
  });

  test('a unit that is begun is finished', () => {
    expect(typing('mix', 'amount', '30 ga')).toEqual(['30 ga', '30 gal']);
  });

  test('names follow an amount, and layers follow one another', () => {
    expect(typing('melt', 'melt', '5 kg bron')).toContain('5 kg bronze');
    expect(typing('wall', 'layers', '1 in castable; 2 in vermi')).toContain('1 in castable; 2 in vermiculite');
    expect(typing('flame', 'fuel', 'charc')).toContain('lump charcoal');
  });

  test('with nothing typed, the command’s own examples', () => {
    expect(typing('mix', 'amount', '')).toContain('1.1 cu ft');
  });

  test('an argument of the shelf, a question to set against another, and what both can be weighed by', () => {
    const beside = { one: 'mix 30 L' };
    const offered = (option: string, typed: string, more: Readonly<Record<string, string>> = beside) =>
      suggestions({
        command: commands.find(({ name }) => name === 'settle') as Command,
        option,
        typed,
        commands,
        units: 'metric',
        builds: [],
        beside: more,
      }).map(({ value }) => value);
    expect(offered('one', 'vermic', {})).toContain('perlite or vermiculite');
    expect(offered('other', '')).toContain('mix 30 L recipe=castable tub=20 kg');
    expect(offered('other', '').filter((line) => !line.startsWith('mix'))).toEqual([]);
    expect(offered('by', '')).toEqual(expect.arrayContaining(['cost', 'weight', 'water', 'limit']));
    expect(offered('by', '')).not.toContain('shell');
  });

  test('options without a field of their own are named where they are typed', () => {
    const command = commands.find((one) => fieldNames(one).includes('more')) as Command;
    const hidden = Object.keys(command.options.shape).filter((name) => !fieldNames(command).includes(name));
    expect(typing(command.name, 'more', '')).toEqual(hidden.map((name) => `${name}=`));
    expect(typing(command.name, 'more', `${hidden[0]}=1 `)).not.toContain(`${hidden[0]}=1 ${hidden[0]}=`);
  });
});
