import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AskError } from '../../ask-error.ts';
import { breakEvenRatio, type Stage, type StagingInput, stageFuels } from './staging.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const stage = (flue_K: number, share: number): Stage => ({
  flue_K,
  duration_s: 1200,
  net_power_W: 6000,
  air_kg_s: 0.02,
  cheap: { useful_J_kg: 21e6 * share, air_kg_kg: 7.6 },
  better: { useful_J_kg: 29.5e6 * share, air_kg_kg: 10.2 },
});
const plain: StagingInput = {
  cheap: { price_USD_per_kg: 1, ash_share: 0.22 },
  better: { price_USD_per_kg: 2, ash_share: 0.03 },
  stages: [stage(900, 0.65), stage(1200, 0.55), stage(1450, 0.45)],
  ash_limit_kg: 10,
};
const heat = (one: Stage) => one.net_power_W * one.duration_s;

describe('two fuels in turn (physics)', () => {
  it('meets every stage with what it burns, and adds up cost and ash', () => {
    fc.assert(
      fc.property(real(0.1, 3), real(0.1, 3), real(0.15, 3), (cheapPrice, betterPrice, ash_limit_kg) => {
        const input = {
          ...plain,
          ash_limit_kg,
          cheap: { ...plain.cheap, price_USD_per_kg: cheapPrice },
          better: { ...plain.better, price_USD_per_kg: betterPrice },
        };
        const made = stageFuels(input);
        for (const [at, { cheap_kg, better_kg }] of made.stages.entries()) {
          const one = plain.stages[at]!;
          const given = cheap_kg * one.cheap.useful_J_kg + better_kg * one.better.useful_J_kg;
          expect(given / heat(one)).toBeCloseTo(1, 9);
          const air = cheap_kg * one.cheap.air_kg_kg + better_kg * one.better.air_kg_kg;
          expect(air).toBeLessThanOrEqual(one.air_kg_s * one.duration_s * (1 + 1e-9));
        }
        expect(made.ash_kg).toBeLessThanOrEqual(ash_limit_kg + 1e-9);
        expect(made.ash_kg).toBeCloseTo(made.cheap_kg * 0.22 + made.better_kg * 0.03, 9);
        expect(made.cost_USD).toBeCloseTo(made.cheap_kg * cheapPrice + made.better_kg * betterPrice, 9);
      }),
    );
  });

  it('is the least cost: no other split tried is cheaper', () => {
    fc.assert(
      fc.property(
        fc.tuple(real(0, 1), real(0, 1), real(0, 1)),
        real(0.2, 1.5),
        real(0.15, 2),
        (shares, cheapPrice, ash_limit_kg) => {
          const cheap = { ...plain.cheap, price_USD_per_kg: cheapPrice };
          const best = stageFuels({ ...plain, cheap, ash_limit_kg });
          let cost = 0;
          let ash = 0;
          for (const [at, one] of plain.stages.entries()) {
            const cheap_kg = (shares[at]! * heat(one)) / one.cheap.useful_J_kg;
            const better_kg = ((1 - shares[at]!) * heat(one)) / one.better.useful_J_kg;
            cost += cheap_kg * cheapPrice + better_kg * 2;
            ash += cheap_kg * 0.22 + better_kg * 0.03;
          }
          if (ash <= ash_limit_kg) expect(best.cost_USD).toBeLessThanOrEqual(cost + 1e-9);
        },
      ),
      { numRuns: 1000 },
    );
  });

  it('turns at the break-even price ratio', () => {
    const ratio = breakEvenRatio(plain.stages[0]!);
    expect(ratio).toBeCloseTo(21 / 29.5, 12);
    const at = (price: number) =>
      stageFuels({ ...plain, cheap: { ...plain.cheap, price_USD_per_kg: price } }).stages[0]!.cheap_share;
    expect(at(2 * ratio * 0.99)).toBe(1);
    expect(at(2 * ratio * 1.01)).toBe(0);
  });

  it('burns the cheap fuel first and the better one later where ash is short', () => {
    const free = stageFuels(plain);
    expect(free.stages.map(({ cheap_share }) => cheap_share)).toEqual([1, 1, 1]);
    expect(free.ash_worth_USD_per_kg).toBe(0);
    const tight = stageFuels({ ...plain, ash_limit_kg: 0.25 });
    const [first, second, last] = tight.stages.map(({ cheap_share }) => cheap_share);
    expect(first).toBeGreaterThanOrEqual(second!);
    expect(second).toBeGreaterThanOrEqual(last!);
    expect(first! - last!).toBeGreaterThan(0.5);
    expect(tight.ash_kg).toBeCloseTo(0.25, 9);
    expect(tight.cost_USD).toBeGreaterThan(free.cost_USD);
    // A little more room for ash saves what it says.
    const wider = stageFuels({ ...plain, ash_limit_kg: 0.251 });
    expect((tight.cost_USD - wider.cost_USD) / 0.001).toBeCloseTo(tight.ash_worth_USD_per_kg, 6);
  });

  it('takes the better fuel where the blast is too weak for the cheap one', () => {
    const weak = {
      ...stage(1450, 0.45),
      cheap: { useful_J_kg: 4e6, air_kg_kg: 7.6 },
      air_kg_s: 0.008,
      net_power_W: 6000,
    };
    const cheap = { ...plain.cheap, price_USD_per_kg: 0.1 };
    const { stages } = stageFuels({ ...plain, cheap, stages: [weak] });
    expect(stages[0]!.cheap_share).toBeGreaterThan(0);
    expect(stages[0]!.cheap_share).toBeLessThan(1);
  });

  it('says what is impossible, with the number', () => {
    expect(() => stageFuels({ ...plain, ash_limit_kg: 0.01 })).toThrow(/even the fuel with less ash/);
    expect(() => stageFuels({ ...plain, stages: [{ ...stage(1450, 0.45), air_kg_s: 1e-4 }] })).toThrow(
      /takes .* of air/,
    );
    expect(() => stageFuels({ ...plain, stages: [{ ...stage(1450, -0.1) }] })).toThrow(/nothing for the furnace/);
    expect(() => stageFuels({ ...plain, stages: [] })).toThrow(AskError);
  });
});
