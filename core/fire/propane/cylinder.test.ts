import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AskError } from '../../ask-error.ts';
import { sourceOf } from '../../sources/sources.ts';
import { cylinderKinds, exchange_W_m2K, usable_share } from '../data/cylinders.ts';
import { regulators } from '../data/regulators.ts';
import { fullCharge_kg, lastingTime_s, refuseWarming, type SteadyDrawInput, steadyDraw } from './cylinder.ts';
import { drawDown } from './cylinder-transient.ts';
import { propaneLatentHeat_J_kg, propaneLiquidHeatCapacity_J_kgK, propanePressure_Pa } from './propane.ts';
import { neededBottle_Pa, requireBottle } from './regulator.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const air_Pa = 101325;
const plain: SteadyDrawInput = {
  radius_m: 0.153,
  liquid_kg: 9,
  ambient_K: 293.15,
  needed_Pa: air_Pa + 200e3,
  exchange_W_m2K: 11,
  pressure_factor: 1,
};

describe('a cylinder that feeds for long (physics)', () => {
  it('balances heat, and feeds the regulator just so', () => {
    const { draw_kg_s, liquid_K, wetted_m2 } = steadyDraw(plain);
    expect(propanePressure_Pa({ liquid_K })).toBeCloseTo(plain.needed_Pa, 3);
    expect(draw_kg_s * propaneLatentHeat_J_kg({ liquid_K })).toBeCloseTo(11 * wetted_m2 * (293.15 - liquid_K), 6);
  });

  it('gives more when fuller, warmer or better wetted, less at a higher setting', () => {
    fc.assert(
      fc.property(real(280, 315), real(110e3, 400e3), real(1, 30), (ambient_K, needed_Pa, liquid_kg) => {
        const input = { ...plain, ambient_K, needed_Pa, liquid_kg };
        const draw = (changed: Partial<SteadyDrawInput>) => steadyDraw({ ...input, ...changed }).draw_kg_s;
        const now = draw({});
        expect(draw({ liquid_kg: liquid_kg + 1 })).toBeGreaterThan(now);
        expect(draw({ ambient_K: ambient_K + 1 })).toBeGreaterThan(now);
        expect(draw({ exchange_W_m2K: 12 })).toBeGreaterThan(now);
        expect(draw({ needed_Pa: needed_Pa + 1000 })).toBeLessThan(now);
        expect(draw({ pressure_factor: 1.1 })).toBeGreaterThan(now);
      }),
    );
  });

  it('gives about 0.4, 0.65 and 0.95 kg/h at 0, 10 and 20 °C with 10 W/(m² K) on 0.30 m²', () => {
    const per_h = [273.15, 283.15, 293.15].map((ambient_K) => {
      const { draw_kg_s, wetted_m2 } = steadyDraw({ ...plain, ambient_K, exchange_W_m2K: 10 });
      return (draw_kg_s * 3600 * 0.3) / wetted_m2;
    });
    expect(per_h[0]).toBeCloseTo(0.4, 1);
    expect(per_h[1]).toBeCloseTo(0.65, 1);
    expect(per_h[2]).toBeCloseTo(0.95, 1);
  });

  it('refuses a pressure that the air is too cold for, and says the temperature', () => {
    expect(() => steadyDraw({ ...plain, ambient_K: 253.15 })).toThrow(/liquid would have to be at -14 °C/);
    expect(() => steadyDraw({ ...plain, radius_m: -1 })).toThrow(AskError);
    expect(() => steadyDraw({ ...plain, exchange_W_m2K: 100 })).toThrow(AskError);
  });
});

describe('a cylinder that cools (physics)', () => {
  const strong = { ...plain, draw_kg_s: 2.5 / 3600, usable_share: 0.9 };

  it('keeps heat: what evaporation took came from the air or from the liquid', () => {
    const { rows } = drawDown(strong);
    let air_J = 0;
    let spent_J = 0;
    let liquid_J = 0;
    for (let at = 1; at < rows.length; at++) {
      const [a, b] = [rows[at - 1]!, rows[at]!];
      const liquid_K = (a.liquid_K + b.liquid_K) / 2;
      const liquid_kg = (a.liquid_kg + b.liquid_kg) / 2;
      const span_s = b.time_s - a.time_s;
      const { wetted_m2 } = steadyDraw({ ...plain, liquid_kg });
      air_J += 11 * wetted_m2 * (293.15 - liquid_K) * span_s;
      spent_J += strong.draw_kg_s * propaneLatentHeat_J_kg({ liquid_K }) * span_s;
      liquid_J += liquid_kg * propaneLiquidHeatCapacity_J_kgK({ liquid_K }) * (a.liquid_K - b.liquid_K);
    }
    // The wetted area is taken at one temperature here: its density moves by 5 %.
    expect((air_J + liquid_J) / spent_J).toBeCloseTo(1, 1);
    expect(Math.abs((air_J + liquid_J) / spent_J - 1)).toBeLessThan(0.02);
  });

  it('starts at the air, only falls, and is stopped by cold before the fill is gone', () => {
    const { rows, cold_s, empty_s, drawn_kg } = drawDown(strong);
    expect(rows[0]).toMatchObject({ time_s: 0, liquid_K: 293.15, liquid_kg: 9 });
    for (let at = 1; at < rows.length; at++) expect(rows[at]!.bottle_Pa).toBeLessThan(rows[at - 1]!.bottle_Pa);
    expect(cold_s).toBeDefined();
    expect(cold_s!).toBeLessThan(empty_s);
    expect(drawn_kg).toBeCloseTo(strong.draw_kg_s * cold_s!, 12);
    // Its own warmth gives 1.4 to 2 kg, the air adds to that.
    expect(drawn_kg).toBeGreaterThan(1.4);
  });

  it('lasts to the end of the fill at a small draw, near the steady answer', () => {
    const gentle = { ...strong, draw_kg_s: 0.3 / 3600 };
    const { cold_s, empty_s, rows } = drawDown(gentle);
    expect(cold_s).toBeUndefined();
    expect(empty_s).toBeCloseTo(lastingTime_s({ fill_kg: 9, usable_share: 0.9, draw_kg_s: gentle.draw_kg_s }), 6);
    expect(rows.at(-1)?.liquid_kg).toBeCloseTo(0.9, 9);
  });

  it('lasts longer with less draw', () => {
    fc.assert(
      fc.property(real(1.6, 6), (per_h) => {
        const at = (draw_kg_h: number) => {
          const { cold_s, empty_s } = drawDown({ ...strong, draw_kg_s: draw_kg_h / 3600 });
          return cold_s ?? empty_s;
        };
        expect(at(per_h * 1.05)).toBeLessThan(at(per_h));
      }),
      { numRuns: 30 },
    );
  });

  it('never leaves its correlations, however hard it is drawn', () => {
    fc.assert(
      fc.property(real(0.1, 50), real(0.5, 40), real(245, 320), (per_h, liquid_kg, ambient_K) => {
        const input = { ...strong, needed_Pa: air_Pa + 5e3, liquid_kg, ambient_K, draw_kg_s: per_h / 3600 };
        for (const row of drawDown(input).rows) expect(Number.isFinite(row.bottle_Pa)).toBe(true);
      }),
      { numRuns: 60 },
    );
  });

  it('stays near the air and below it under a draw of weeks', () => {
    const input = { ...strong, needed_Pa: air_Pa + 5e3, liquid_kg: 38.2, ambient_K: 245, draw_kg_s: 0.1 / 3600 };
    // 0.1 kg/h takes 11 W; the bottom alone brings that at a few kelvin.
    for (const { liquid_K } of drawDown(input).rows) {
      expect(liquid_K).toBeLessThanOrEqual(245);
      expect(liquid_K).toBeGreaterThan(235);
    }
  });
});

describe('fill, regulator and refusals', () => {
  it('fills 42 % of the water', () => {
    expect(fullCharge_kg({ water_capacity_kg: 21.6 })).toBeCloseTo(9.07, 2);
    const named = { '5-kg': 5, '9-kg': 9, '14-kg': 13.6, '18-kg': 18.1, '45-kg': 45.4 };
    for (const { id, water_capacity_kg } of cylinderKinds) {
      const fill = fullCharge_kg({ water_capacity_kg: water_capacity_kg.typical });
      expect(Math.abs(fill / named[id as keyof typeof named] - 1)).toBeLessThan(0.02);
    }
  });

  it('adds up what the bottle must hold, and says by how much it falls short', () => {
    const demand = { outlet_Pa: 200e3, headroom_Pa: 50e3, pressure_Pa: air_Pa };
    expect(neededBottle_Pa(demand)).toBe(air_Pa + 250e3);
    expect(() => requireBottle({ ...demand, bottle_Pa: air_Pa + 260e3 })).not.toThrow();
    expect(() => requireBottle({ ...demand, bottle_Pa: air_Pa + 150e3 })).toThrow(/150 kPa .* takes 250 kPa/);
  });

  it('never warms a bottle', () => {
    expect(() => refuseWarming({ heat: 'a flame' })).toThrow(/not to be warmed \(a flame\).*49 °C/);
    try {
      refuseWarming({ heat: 'warm water' });
    } catch (error) {
      expect((error as AskError).code).toBe('refused');
    }
  });

  it('keeps its data in order and cited', () => {
    const all = [
      ...cylinderKinds.flatMap(({ water_capacity_kg, radius_m }) => [water_capacity_kg, radius_m]),
      ...regulators.flatMap(({ outlet_Pa, headroom_Pa }) => [outlet_Pa, headroom_Pa]),
      exchange_W_m2K,
      usable_share,
    ];
    for (const { low, typical, high, source } of all) {
      expect(low).toBeLessThanOrEqual(typical);
      expect(typical).toBeLessThanOrEqual(high);
      expect(sourceOf(source).id).toBe(source);
    }
  });
});
