import { describe, expect, it } from 'vitest';
import { mixDoubt } from '../../commands/mix/doubt.ts';
import { mixQuestion } from '../../commands/mix/question.ts';
import { type Side, weighSides } from '../../core/doubt/sides.ts';
import type { Spread } from '../../core/materials/spread.ts';
import type { Numbers } from '../../core/step.ts';
import { librariesOf, stored } from '../reference/stored.ts';
import { outside } from './outside.ts';

interface Inputs {
  model: string;
  spreads: Record<string, Spread>;
  what: 'odds' | 'low' | 'high' | 'share';
  input?: string;
}

const reference = stored<Inputs>('settle');
const names = [...new Set(reference.cases.map(({ inputs }) => inputs.model))];

const shell_K = (x: Numbers, conductivity_W_mK: number): number => {
  const resistance = 0.05 / conductivity_W_mK + 1 / x.film_W_m2K!;
  return x.air_K! + (x.face_K! - x.air_K!) / resistance / x.film_W_m2K!;
};

/** Each side names only what it depends on: what both name is drawn once. */
const side = (spreads: Record<string, Spread>, inputs: readonly string[], of: (x: Numbers) => number): Side<'y'> => ({
  inputs: Object.fromEntries(inputs.map((name) => [name, spreads[name]!])),
  model: (x) => ({ y: of(x) }),
});

/** The commands' own model; the script calls its inputs by other names. */
const mixNames: Readonly<Record<string, string>> = {
  packs_clay_sand_kg_m3: 'how densely rammed clay and sand 1:2 packs',
  spare: 'the spare kept',
  loose_clay_kg_m3: 'how densely stoneware clay lies loose',
  loose_sand_kg_m3: 'how densely silica sand lies loose',
  bag_of_clay_USD: 'the price of stoneware clay',
  bag_of_sand_USD: 'the price of silica sand',
  packs_castable_kg_m3: 'how densely dense castable packs',
  bag_of_castable_USD: 'the price of dense castable',
};

function mixSides(figure: 'mix.dry_mass' | 'mix.cost', spreads: Record<string, Spread>): readonly Side<'y'>[] {
  const amount = { dimension: 'volume', si: 0.03, text: '30 L', system: 'metric' } as const;
  return [{ amount }, { amount, recipe: 'castable' }].map((options) => {
    const { inputs, model } = mixDoubt(mixQuestion(options as Parameters<typeof mixQuestion>[0]), new Map());
    for (const [name, own] of Object.entries(mixNames))
      if (inputs[own]) expect(inputs[own], `${own} has moved: store settle.py again`).toMatchObject(spreads[name]!);
    return { inputs, model: (draw) => ({ y: model(draw)[figure]! }) };
  });
}

function sidesOf(model: string, spreads: Record<string, Spread>): readonly Side<'y'>[] {
  switch (model) {
    case 'two lines with a shared doubt':
      return [
        side(spreads, ['shared', 'own_a'], (x) => x.shared! + x.own_a!),
        side(spreads, ['shared', 'own_b'], (x) => x.shared! + x.own_b!),
      ];
    case 'a product against a sum':
      return [side(spreads, ['a', 'b'], (x) => x.a! * x.b!), side(spreads, ['c', 'a'], (x) => x.c! + x.a!)];
    case 'shell behind 50 mm of two fills, K':
      return (['first_W_mK', 'second_W_mK'] as const).map((fill) =>
        side(spreads, ['face_K', 'air_K', 'film_W_m2K', fill], (x) => shell_K(x, x[fill]!)),
      );
    case '30 L of clay and sand against castable, kg':
      return mixSides('mix.dry_mass', spreads);
    case '30 L of clay and sand against castable, $':
      return mixSides('mix.cost', spreads);
    default:
      throw new Error(`no model is called ${model}`);
  }
}

describe.each(names)('%s', (model) => {
  const cases = reference.cases.filter(({ inputs }) => inputs.model === model);
  const { below, difference } = weighSides({ sides: sidesOf(model, cases[0]!.inputs.spreads), outputs: ['y'] }).measured
    .y;
  const { range, movers } = difference(0, 1);
  const ours = ({ what, input = '' }: Inputs): number => {
    if (what === 'odds') return below(0, 1);
    if (what === 'share') return movers.find((mover) => mover.input === nameOf(input))?.share ?? Number.NaN;
    return range![what];
  };
  const nameOf = (input: string) => (model.startsWith('30 L') ? mixNames[input]! : input);

  it.each(cases)('$id', ({ id, inputs, expected, tolerance, why }) => {
    outside({
      subject: model,
      quantity: id.slice(model.length + 2),
      ours: ours(inputs),
      theirs: expected,
      unit: inputs.what === 'low' || inputs.what === 'high' ? (/, (\S+)$/.exec(model)?.[1] ?? '') : '',
      source: `${librariesOf(reference)}, random sampling and Sobol indices`,
      tolerance,
      reason: why,
    });
  });

  it('ranks the inputs that matter in the order of the Sobol indices', () => {
    // Below a tenth, and where two are within the noise of both estimates, the order says nothing.
    const shares = cases.filter(({ inputs: { what } }) => what === 'share').filter(({ expected }) => expected > 0.1);
    const theirs = shares.toSorted((a, b) => b.expected - a.expected);
    expect(theirs.length).toBeGreaterThan(0);
    for (const [at, one] of theirs.entries())
      for (const other of theirs.slice(at + 1)) {
        if (one.expected - other.expected < 2 * one.tolerance) continue;
        expect(ours(one.inputs), `${one.id} before ${other.id}`).toBeGreaterThan(ours(other.inputs));
      }
  });
});
