import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findPour, pours } from '../materials/catalogue.ts';
import { celsius } from '../materials/data/make.ts';
import type { Pour } from '../materials/pour.ts';
import { heatCurve, meltHeat_J_kg, meltHeatSteps, pourFor, shiftedCurve } from './melt-heat.ts';

const cold_K = celsius(20);
const usual = (alloy: Pour) => pourFor(alloy, 'medium').typical;

describe.each(pours.map((alloy) => [alloy.id, alloy] as const))('%s', (_, alloy) => {
  const pour_K = usual(alloy);

  it('needs more heat for a hotter pour and less where it is charged warm', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 250, max: alloy.solidus_K.typical - 1, noNaN: true }),
        fc.double({ min: alloy.liquidus_K.typical + 1, max: 1900, noNaN: true }),
        (from_K, poured_K) => {
          const heat = meltHeat_J_kg({ alloy, from_K, pour_K: poured_K });
          expect(meltHeat_J_kg({ alloy, from_K, pour_K: poured_K + 10 })).toBeGreaterThan(heat);
          expect(meltHeat_J_kg({ alloy, from_K: from_K - 10, pour_K: poured_K })).toBeGreaterThan(heat);
        },
      ),
      { numRuns: 30 },
    );
  });

  it('takes the same heat in two goes as in one', () => {
    const warm_K = cold_K + 0.6 * (alloy.solidus_K.typical - cold_K);
    const warmed = heatCurve({ alloy, from_K: cold_K, pour_K });
    const both = meltHeat_J_kg({ alloy, from_K: warm_K, pour_K }) + at(warmed, warm_K);
    // Straight between knots 20 to 100 K apart: iron's change of lattice, 16 of 1240 kJ/kg, may lie within a stretch.
    expect(Math.abs(both / meltHeat_J_kg({ alloy, from_K: cold_K, pour_K }) - 1)).toBeLessThan(0.005);
  });

  it('heats along a curve that rises to the whole', () => {
    const curve = heatCurve({ alloy, from_K: cold_K, pour_K });
    for (const [index, point] of curve.entries()) {
      const before = curve[index - 1];
      if (!before) continue;
      expect(point.T_K).toBeGreaterThanOrEqual(before.T_K);
      expect(point.heat_J_kg).toBeGreaterThan(before.heat_J_kg);
    }
    expect(curve[0]).toEqual({ T_K: cold_K, heat_J_kg: 0 });
    expect(curve.at(-1)?.heat_J_kg).toBeCloseTo(meltHeat_J_kg({ alloy, from_K: cold_K, pour_K }), 6);
  });

  it('heats as a liquid in a straight line, as the samples of a range take it', () => {
    const curve = heatCurve({ alloy, from_K: cold_K, pour_K });
    const { low, high } = alloy.pour_K;
    for (const poured_K of [Math.max(low, alloy.liquidus_K.typical), high]) {
      const shifted = shiftedCurve(curve, { pour_K: poured_K, shift_J_kg: 5000 }).at(-1)!.heat_J_kg;
      const correction_J_kg = alloy.melting_correction_J_kg.typical + 5000;
      const exact = meltHeat_J_kg({ alloy, from_K: cold_K, pour_K: poured_K, correction_J_kg });
      // As the docstring says; tin's liquid is the least straight.
      expect(Math.abs(shifted / exact - 1)).toBeLessThan(0.002);
    }
  });

  it('melts before it is poured, thinner sections hotter', () => {
    const [heavy, medium, thin] = (['heavy', 'medium', 'thin'] as const).map((section) => pourFor(alloy, section));
    expect(alloy.solidus_K.typical).toBeLessThanOrEqual(alloy.liquidus_K.typical);
    expect(heavy!.low).toBeGreaterThan(alloy.liquidus_K.typical);
    expect(medium!.typical).toBeGreaterThanOrEqual(heavy!.typical);
    expect(thin!.typical).toBeGreaterThanOrEqual(medium!.typical);
  });

  it('is less dense as a liquid', () => {
    expect(alloy.liquid_density_kg_m3.typical).toBeLessThan(alloy.solid_density_kg_m3.typical);
  });

  it('shows the sum it came from', () => {
    const steps = meltHeatSteps({ alloy, from_K: cold_K, pour_K });
    const whole = steps.at(-1)?.gives.melt_heat_J_kg ?? Number.NaN;
    const parts = steps.slice(0, -1).map(({ inputs, gives }) => inputs.share_of_mass! * gives.heat_J_kg!);
    const correction = steps.at(-1)?.inputs.correction_J_kg ?? Number.NaN;
    expect(parts.reduce((sum, part) => sum + part, 0) + correction).toBeCloseTo(whole, 3);
  });
});

const at = (curve: ReturnType<typeof heatCurve>, T_K: number): number => {
  const next = curve.findIndex((point) => point.T_K >= T_K);
  const [a, b] = [curve[next - 1]!, curve[next]!];
  return a.heat_J_kg + ((b.heat_J_kg - a.heat_J_kg) * (T_K - a.T_K)) / (b.T_K - a.T_K);
};

describe('what has no answer', () => {
  const alloy = findPour('aluminium');

  it.each([
    ['a pour below the liquidus', { from_K: cold_K, pour_K: celsius(600) }, /not all liquid.*615/],
    ['a charge that already melts', { from_K: celsius(640), pour_K: celsius(700) }, /no longer solid.*600/],
    ['a pour beyond the data', { from_K: cold_K, pour_K: celsius(2300) }, /beyond/],
    ['no number', { from_K: cold_K, pour_K: Number.NaN }, /./],
  ])('%s is refused with the number', (_, temperatures, says) => {
    expect(() => meltHeat_J_kg({ alloy, ...temperatures })).toThrow(says);
  });
});
