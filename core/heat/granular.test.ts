import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findMaterial } from '../materials/catalogue.ts';
import { at } from '../materials/curve.ts';
import { airAt } from './air.ts';
import { fitGranular, granularConductivity_W_mK, looseFillAt } from './granular.ts';

const curveOf = (name: string) => findMaterial(name).conductivity_W_mK!;

describe('loose fill as contact, air and radiation', () => {
  it.each(['vermiculite', 'perlite'])('meets the first and last row of %s at every end', (name) => {
    const curve = curveOf(name);
    for (const end of ['low', 'typical', 'high'] as const) {
      const fitted = fitGranular(curve, end);
      for (const T_K of [curve.T_K[0]!, curve.T_K.at(-1)!]) {
        // Where the cold row leaves nothing for contact, that row is not met: still air alone conducts 0.026.
        if (fitted.contact_W_mK > 0 || T_K > 300) {
          expect(granularConductivity_W_mK(fitted, T_K)).toBeCloseTo(at(curve, T_K, end).value, 9);
        }
      }
    }
  });

  it.each(['vermiculite', 'perlite'])(
    'gives %s an extinction within what evacuated perlite was measured at, 1600 to 5700 1/m',
    (name) => {
      const { extinction_per_m } = fitGranular(curveOf(name));
      expect(extinction_per_m).toBeGreaterThan(1600);
      expect(extinction_per_m).toBeLessThan(5700);
    },
  );

  it('leaves a table as it is inside, and bends up beyond it more than the straight line', () => {
    const perlite = curveOf('perlite');
    expect(looseFillAt(perlite, 700)).toEqual(at(perlite, 700));
    const { value, extrapolated } = looseFillAt(perlite, 1300);
    expect(extrapolated).toBe(true);
    expect(value).toBeGreaterThan(at(perlite, 1300).value);
  });

  it('rises with temperature and never falls below still air', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.1, noNaN: true }),
        fc.double({ min: 500, max: 10_000, noNaN: true }),
        fc.double({ min: 250, max: 1500, noNaN: true }),
        (contact_W_mK, extinction_per_m, T_K) => {
          const fill = { contact_W_mK, extinction_per_m };
          const k = granularConductivity_W_mK(fill, T_K);
          expect(k).toBeGreaterThan(airAt(T_K).conductivity_W_mK);
          expect(granularConductivity_W_mK(fill, T_K + 10)).toBeGreaterThan(k);
        },
      ),
    ));

  it('refuses a table that falls', () => {
    const falling = { ...curveOf('perlite'), T_K: [300, 1300], typical: [0.1, 0.07] };
    expect(() => fitGranular(falling)).toThrow('leaves nothing for radiation');
  });
});
