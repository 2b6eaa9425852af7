import { describe, expect, it } from 'vitest';
import { AskError } from '../../ask-error.ts';
import table from '../data/nasa-species.json' with { type: 'json' };
import {
  enthalpy_J_mol,
  entropy_J_molK,
  gibbs_J_mol,
  heatCapacity_J_molK,
  rangeOf,
  type SpeciesName,
  speciesNames,
  speciesOf,
} from './nasa.ts';

const joins = speciesNames.flatMap((species) =>
  speciesOf(species)
    .pieces.slice(1)
    .map(({ from_K }) => [species, from_K] as const),
);

describe('species', () => {
  it('are those of the data file, each once', () => {
    expect([...speciesNames].sort()).toEqual(table.species.map(({ name }) => name).sort());
    expect(new Set(speciesNames).size).toBe(speciesNames.length);
  });

  it.each(joins)('%s is in one piece at %d K', (species, T_K) => {
    const [below, above] = [T_K, T_K + 1e-6].map((T) => enthalpy_J_mol({ species, T_K: T }));
    // The fits are joined to five or six figures: a joule or two a mole.
    expect(Math.abs(above! - below!)).toBeLessThan(2);
    const [s0, s1] = [T_K, T_K + 1e-6].map((T) => entropy_J_molK({ species, T_K: T }));
    expect(Math.abs(s1! - s0!)).toBeLessThan(0.002);
  });

  it.each(speciesNames)('%s: cp is the slope of h, cp/T that of s, −s that of g', (species) => {
    const { from_K, to_K } = rangeOf(species);
    for (const share of [0.1, 0.37, 0.9]) {
      const T_K = from_K + share * Math.min(to_K - from_K, 2500) + 0.123;
      const slope = (f: (state: { species: SpeciesName; T_K: number }) => number): number =>
        (f({ species, T_K: T_K + 0.01 }) - f({ species, T_K: T_K - 0.01 })) / 0.02;
      const cp = heatCapacity_J_molK({ species, T_K });
      expect(slope(enthalpy_J_mol) / cp).toBeCloseTo(1, 5);
      expect((slope(entropy_J_molK) * T_K) / cp).toBeCloseTo(1, 5);
      expect(-slope(gibbs_J_mol) / entropy_J_molK({ species, T_K })).toBeCloseTo(1, 5);
    }
  });

  it('refuse a temperature without data, unless asked to carry on', () => {
    expect(() => enthalpy_J_mol({ species: 'N2', T_K: 150 })).toThrow(AskError);
    expect(() => enthalpy_J_mol({ species: 'H2O(L)', T_K: 700 })).toThrow(AskError);
    expect(() => enthalpy_J_mol({ species: 'N2', T_K: Number.NaN })).toThrow(AskError);
    expect(() => enthalpy_J_mol({ species: 'AL(L)', T_K: 900 })).toThrow(/no data at 900 K/);
    expect(enthalpy_J_mol({ species: 'AL(L)', T_K: 900, extrapolate: true })).toBeGreaterThan(0);
  });
});
