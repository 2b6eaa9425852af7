import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sourceOf } from '../sources/sources.ts';
import type { Situation } from './caution.ts';
import { cautionsFor, localRules } from './cautions.ts';
import { facts, hazardNumbers, isFact } from './facts.ts';
import { type Rule, ruleSchema } from './rule.ts';
import { rules } from './rules/rules.ts';
import { factsIn } from './words.ts';

const ids = (situation: Situation) => cautionsFor(situation).map(({ id }) => id);

/** The least that makes a rule fire. */
const situationOf = ({ when }: Rule): Situation => ({
  facts: [...(when.all ?? []), ...(when.any ?? []).slice(0, 1)],
  numbers: Object.fromEntries(Object.entries(when.above ?? {}).map(([name, limit]) => [name, limit + 0.01])),
});

const situations = fc.record({
  facts: fc.subarray([...facts]),
  numbers: fc.dictionary(fc.constantFrom(...hazardNumbers), fc.double({ min: 0, max: 3000 })),
});

describe('rules', () => {
  it('are many, and each id is there once', () => {
    expect(rules.length).toBeGreaterThanOrEqual(30);
    expect(new Set(rules.map(({ id }) => id)).size).toBe(rules.length);
  });

  it.each(rules.map((rule) => [rule.id, rule] as const))('%s is valid, sourced, calm and can fire', (id, rule) => {
    expect(() => ruleSchema.parse(rule)).not.toThrow();
    expect(sourceOf(rule.source).id).toBe(rule.source);
    expect(`${rule.text} ${rule.reason}`).not.toContain('!');
    if (rule.headline) expect(rule.severity).toBe('danger');
    expect(ids(situationOf(rule))).toContain(id);
  });

  it('ask for every fact and number of the vocabulary, and for no other', () => {
    const asked = rules.flatMap(({ when }) => [...(when.any ?? []), ...(when.all ?? []), ...(when.none ?? [])]);
    expect(asked.every(isFact)).toBe(true);
    expect(new Set(asked)).toEqual(new Set(facts));
    expect(new Set(rules.flatMap(({ when }) => Object.keys(when.above ?? {})))).toEqual(new Set(hazardNumbers));
  });

  it('refuse a `when` that always holds, an unknown fact and an unknown number', () => {
    const rule = rules[0]!;
    expect(ruleSchema.safeParse({ ...rule, when: {} }).success).toBe(false);
    expect(ruleSchema.safeParse({ ...rule, when: { any: ['dragon'] } }).success).toBe(false);
    expect(ruleSchema.safeParse({ ...rule, when: { above: { shell_C: 20 } } }).success).toBe(false);
  });
});

describe('words', () => {
  it('mean facts that the rules know', () => {
    const named = factsIn(
      'galvanised gypsum cement propane tank charcoal magnesium beryllium solder brass blanket garage mesh',
    );
    expect(named.length).toBeGreaterThanOrEqual(12);
    expect(named.filter((fact) => !isFact(fact))).toEqual([]);
  });
});

describe('a galvanised shell', () => {
  const zinc = (shell_K: number) =>
    cautionsFor({ facts: ['galvanised'], numbers: { shell_K } }).find(({ id }) => id.startsWith('zinc-shell'));

  it.each([
    [473, undefined],
    [473.1, 'note'],
    [623, 'note'],
    [623.1, 'caution'],
    [692.65, 'caution'],
    [692.7, 'danger'],
    [Number.NaN, 'danger'],
  ])('at %d K: %s', (shell_K, severity) => expect(zinc(shell_K)?.severity).toBe(severity));

  it('leads above the melting point of zinc, and is then hot work even where nobody said so', () => {
    const cautions = cautionsFor({ facts: ['galvanised'], numbers: { shell_K: 700 } });
    expect(cautions[0]).toMatchObject({ id: 'zinc-shell-melts', leads: true });
    expect(cautions.at(-1)).toBe(localRules);
  });

  it('says nothing of zinc for bare steel', () => {
    expect(ids({ facts: [], numbers: { shell_K: 700 } })).toEqual(['shell-touch', 'local-rules']);
  });
});

describe('cautions', () => {
  it('of mixing clay and sand begin with silica and the damp lining', () => {
    const mix = ids({ facts: ['hot-work', 'dry-powder', 'silica-dust', 'damp-lining'] });
    expect(mix.slice(0, 2)).toEqual(['silica-dust', 'damp-lining']);
    expect(mix.at(-1)).toBe('local-rules');
  });

  it('show the gravest of a topic only', () => {
    expect(ids({ facts: ['charcoal', 'indoors', 'hot-work'] })).toEqual([
      'charcoal-indoors',
      'hot-work',
      'local-rules',
    ]);
    expect(ids({ facts: ['lift'], numbers: { lift_kg: 23.1 } })).toEqual(['two-people']);
    expect(ids({ facts: ['lift'], numbers: { lift_kg: 23 } })).toEqual(['lift']);
    expect(ids({ facts: ['molten-metal', 'lift'], numbers: { lift_kg: 30 } })).not.toContain('two-people');
  });

  it('are none where nothing is wrong', () => expect(cautionsFor({ facts: [] })).toEqual([]));

  it('are never missing from hot work, in order, once each and frozen', () => {
    const order = ['danger', 'caution', 'note'];
    fc.assert(
      fc.property(situations, (situation) => {
        const cautions = cautionsFor({ ...situation, facts: [...situation.facts, 'hot-work'] });
        expect(cautions.length).toBeGreaterThanOrEqual(2);
        expect(cautions.at(-1)).toBe(localRules);
        expect(new Set(cautions.map(({ id }) => id)).size).toBe(cautions.length);
        const ranks = cautions.map(({ severity }) => order.indexOf(severity));
        expect(ranks).toEqual(ranks.toSorted((a, b) => a - b));
        const leading = cautions.map(({ leads }) => Number(leads));
        expect(leading).toEqual(leading.toSorted((a, b) => b - a));
        expect(Object.isFrozen(cautions) && cautions.every(Object.isFrozen)).toBe(true);
      }),
    );
  });

  it('only grow graver as a number rises', () => {
    const gravest = (situation: Situation) =>
      Math.min(...cautionsFor(situation).map(({ severity }) => ['danger', 'caution', 'note'].indexOf(severity)), 3);
    fc.assert(
      fc.property(
        situations,
        fc.constantFrom(...hazardNumbers),
        fc.double({ min: 0, max: 3000, noNaN: true }),
        (s, name, more) => {
          const low = { ...s, numbers: { ...s.numbers, [name]: more } };
          const high = { ...s, numbers: { ...s.numbers, [name]: more + 500 } };
          expect(gravest(high)).toBeLessThanOrEqual(gravest(low));
        },
      ),
    );
  });
});
