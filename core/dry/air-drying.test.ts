import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type AirDryingInput, airDrying } from './air-drying.ts';
import { evaporating } from './evaporation.ts';

const DAY_s = 86_400;
const base: AirDryingInput = {
  thickness_m: 0.038,
  open_sides: 1,
  dry_kg_m2: 70,
  free_kg_m2: 3.9,
  diffusivity_m2_s: 2e-9,
  activation_J_mol: 25e3,
  access: 0.6,
  covered_s: DAY_s,
  air_K: 293.15,
  humidity: 0.5,
  exchange_W_m2K: 4,
  sun_W_m2: 0,
  until: { left: 0.01, loss_per_day: 0.005 },
};
const air = fc.record({
  air_K: fc.double({ min: 279, max: 312, noNaN: true }),
  humidity: fc.double({ min: 0.1, max: 0.9, noNaN: true }),
  exchange_W_m2K: fc.double({ min: 1.5, max: 30, noNaN: true }),
});
const thick = fc.double({ min: 0.01, max: 0.1, noNaN: true });
/** A lining of the same body, as thick. */
const of = (thickness_m: number): Partial<AirDryingInput> => ({
  thickness_m,
  dry_kg_m2: 1850 * thickness_m,
  free_kg_m2: 1850 * 0.055 * thickness_m,
});
const time = (more: Partial<AirDryingInput>) => airDrying({ ...base, ...more }).time_s;

describe('a wet face in air', () => {
  it('is colder than dry air, gives off nothing into saturated air, and more the warmer, drier and windier it is', () => {
    fc.assert(
      fc.property(air, (weather) => {
        const at = (more: object) => evaporating({ ...weather, sun_W_m2: 0, ...more }).water_kg_m2s;
        const face = evaporating({ ...weather, sun_W_m2: 0 });
        expect(face.face_K).toBeLessThan(weather.air_K);
        expect(at({ air_K: weather.air_K + 1 })).toBeGreaterThan(face.water_kg_m2s);
        expect(at({ humidity: weather.humidity + 0.05 })).toBeLessThan(face.water_kg_m2s);
        expect(at({ exchange_W_m2K: weather.exchange_W_m2K * 1.1 })).toBeGreaterThan(face.water_kg_m2s);
        expect(at({ sun_W_m2: 20 })).toBeGreaterThan(face.water_kg_m2s);
      }),
    );
    expect(evaporating({ ...base, humidity: 1 }).water_kg_m2s).toBeLessThan(1e-9);
  });

  it('spends on evaporation what it takes from air, surroundings and sun', () => {
    fc.assert(
      fc.property(air, fc.double({ min: 0, max: 100, noNaN: true }), (weather, sun_W_m2) => {
        const { face_K, water_kg_m2s } = evaporating({ ...weather, sun_W_m2 });
        if (water_kg_m2s === 0) return;
        const radiation = 4 * 0.93 * 5.670374419e-8 * weather.air_K ** 3;
        const taken = (weather.exchange_W_m2K + radiation) * (weather.air_K - face_K) + sun_W_m2;
        const latent = (2.501e6 - 2370 * (face_K - 273.15)) * water_kg_m2s;
        expect(Math.abs(taken - latent)).toBeLessThan(0.02 + 1e-3 * Math.abs(latent));
      }),
    );
  });

  it('is refused outside its range', () => {
    expect(() => evaporating({ ...base, humidity: 1.2 })).toThrow();
    expect(() => evaporating({ ...base, air_K: 250 })).toThrow();
  });
});

describe('drying in air', () => {
  it('takes longer the thicker, damper, colder it is, and shorter with wind, warmth or a second open side', () => {
    fc.assert(
      fc.property(air, thick, (weather, thickness_m) => {
        const input = { ...weather, ...of(thickness_m) };
        const known = time(input);
        expect(time({ ...weather, ...of(thickness_m * 1.1) })).toBeGreaterThan(known);
        expect(time({ ...input, humidity: weather.humidity + 0.05 })).toBeGreaterThan(known);
        expect(time({ ...input, air_K: weather.air_K - 1 })).toBeGreaterThan(known);
        expect(time({ ...input, exchange_W_m2K: weather.exchange_W_m2K * 1.2 })).toBeLessThanOrEqual(known);
        expect(time({ ...input, open_sides: 2 })).toBeLessThan(known);
        expect(time({ ...input, covered_s: 2 * DAY_s })).toBeCloseTo(known + DAY_s, 0);
      }),
      { numRuns: 60 },
    );
  });

  it('goes as thickness² where diffusion rules, and as thickness where the air does', () => {
    const far = { covered_s: 0, until: { left: 0.01, loss_per_day: 1 } };
    const ratio = (more: Partial<AirDryingInput>) =>
      time({ ...far, ...more, ...of(0.08) }) / time({ ...far, ...more, ...of(0.04) });
    expect(ratio({ access: 1e6 })).toBeCloseTo(4, 2);
    expect(ratio({ diffusivity_m2_s: 1e-5 })).toBeCloseTo(2, 2);
  });

  it('ends with both limits met and one of them just so', () => {
    fc.assert(
      fc.property(air, thick, (weather, thickness_m) => {
        const drying = airDrying({ ...base, ...weather, ...of(thickness_m) });
        const [left, loss] = [drying.leftAt(drying.time_s), drying.lossAt(drying.time_s)];
        expect(left).toBeLessThanOrEqual(0.01 * (1 + 1e-6));
        expect(loss).toBeLessThanOrEqual(0.005 * (1 + 1e-6));
        expect(Math.max(left / 0.01, loss / 0.005)).toBeCloseTo(1, 5);
      }),
    );
  });

  it('keeps count of the water: what is lost day by day is what is no longer there', () => {
    const drying = airDrying(base);
    let lost = 0;
    const step_s = DAY_s / 200;
    for (let t = 0; t < 20 * DAY_s; t += step_s) lost += (drying.lossAt(t + step_s / 2) * step_s) / DAY_s;
    expect(lost).toBeCloseTo(drying.leftAt(0) - drying.leftAt(20 * DAY_s), 4);
    expect(drying.leftAt(0)).toBeCloseTo(base.free_kg_m2 / base.dry_kg_m2, 12);
  });

  it('never ends in saturated air', () => expect(time({ humidity: 1 })).toBe(Number.POSITIVE_INFINITY));

  it('shows its working in finite numbers', () => {
    for (const { gives, inputs } of airDrying(base).steps())
      expect([...Object.values(gives), ...Object.values(inputs)].every(Number.isFinite)).toBe(true);
  });
});
