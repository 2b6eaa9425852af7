import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exactly, type Spread } from '../materials/spread.ts';
import { CONTRADICTS, calibrate, momentsOf, type Reading } from './log-calibrate.ts';

const spreadOf = fc
  .tuple(
    fc.double({ min: 1, max: 100, noNaN: true }),
    fc.double({ min: 0.01, max: 1, noNaN: true }),
    fc.double({ min: 0, max: 1, noNaN: true }),
  )
  .map(([low, width, lean]): Spread => ({ low, typical: low * (1 + width * lean), high: low * (1 + width) }));

const density: Spread = { low: 1700, typical: 1850, high: 2000 };
const bucket = (value: number, error: number): Reading => ({
  name: 'bucket',
  value,
  unit: 'kg_m3',
  error,
  predicted: (draw) => draw.density!,
});
/** A sum, so that the answer is known in closed form. */
const inputs = { a: { low: 0, typical: 3, high: 6 }, b: { low: 10, typical: 14, high: 18 }, c: exactly(2) };
const sum = (value: number, error: number, more: Partial<Reading> = {}): Reading => ({
  name: 'sum',
  value,
  unit: 'K',
  error,
  predicted: ({ a, b, c }) => 2 * a! + b! + c!,
  ...more,
});
const difference = (value: number, error: number): Reading => ({
  ...sum(value, error),
  name: 'difference',
  predicted: ({ a, b }) => a! - b!,
});
const typical = { a: 3, b: 14, c: 2 };
const momentsAfter = (spread: Spread | undefined) => momentsOf(spread!);

describe('a measured input', () => {
  it('is the conjugate normal update: mean and variance by precision', () => {
    const { mean, deviation } = momentsOf(density);
    const [value, error] = [1780, 45];
    const { spreads } = calibrate({ inputs: { density }, readings: [bucket(value, error)] });
    const found = momentsAfter(spreads.density);
    const precision = 1 / deviation ** 2 + 1 / error ** 2;
    expect(found.mean).toBeCloseTo((mean / deviation ** 2 + value / error ** 2) / precision, 8);
    expect(found.deviation).toBeCloseTo(Math.sqrt(1 / precision), 8);
  });

  it('is fixed by an exact reading and left alone by a useless one', () => {
    const exact = calibrate({ inputs: { density }, readings: [bucket(1780, 0)] });
    expect(exact.spreads.density!.low).toBeCloseTo(1780, 4);
    expect(exact.spreads.density!.high).toBeCloseTo(1780, 4);
    const useless = calibrate({ inputs: { density }, readings: [bucket(1780, 1e9)] });
    expect(useless.spreads.density!.low).toBeCloseTo(density.low, 4);
    expect(useless.spreads.density!.high).toBeCloseTo(density.high, 4);
  });

  it('without any reading is as it was, to the last digit', () => {
    const { spreads, draw, steps } = calibrate({ inputs, readings: [] });
    expect(spreads).toEqual(inputs);
    expect(draw(typical)).toBe(typical);
    expect(steps()).toEqual([]);
  });

  it('never gets wider, and stays within its bounds, whatever is read', () => {
    fc.assert(
      fc.property(
        spreadOf,
        fc.double({ min: -2, max: 3, noNaN: true }),
        fc.double({ min: 0, max: 2, noNaN: true }),
        (spread, at, error) => {
          const width = spread.high - spread.low;
          const reading = bucket(spread.low + at * width, error * width);
          const { spreads, readings } = calibrate({ inputs: { density: spread }, readings: [reading] });
          const { low, high } = spreads.density!;
          expect(high - low).toBeLessThanOrEqual(width * (1 + 1e-12));
          expect(low).toBeGreaterThanOrEqual(spread.low);
          expect(high).toBeLessThanOrEqual(spread.high);
          expect(readings[0]!.left).toBeLessThanOrEqual(readings[0]!.spread * (1 + 1e-9));
        },
      ),
    );
  });

  it('keeps its range where a reading contradicts it, which says by how much', () => {
    const { deviation } = momentsOf(density);
    const { spreads, readings, draw } = calibrate({ inputs: { density }, readings: [bucket(1200, 20)] });
    expect(readings[0]).toMatchObject({ used: false });
    expect(readings[0]!.off).toBeCloseTo(650 / Math.hypot(deviation, 20), 9);
    expect(spreads.density).toEqual(density);
    expect(draw({ density: 1800 })).toEqual({ density: 1800 });
    const [just, beyond] = [1.999, 2.001].map((share) => 1850 + share * Math.hypot(deviation, 20));
    expect(CONTRADICTS).toBe(2);
    expect(calibrate({ inputs: { density }, readings: [bucket(just!, 20)] }).readings[0]!.used).toBe(true);
    expect(calibrate({ inputs: { density }, readings: [bucket(beyond!, 20)] }).readings[0]!.used).toBe(false);
  });
});

describe('a reading of what several inputs make', () => {
  it('exact, leaves every draw on it', () => {
    const { draw } = calibrate({ inputs, readings: [sum(24, 0)] });
    for (const a of [1.5, 3, 4])
      for (const b of [12, 14, 15]) {
        const moved = draw({ a, b, c: 2 });
        expect(2 * moved.a! + moved.b! + moved.c!).toBeCloseTo(24, 6);
      }
  });

  it('moves what matters most, and an input it does not depend on not at all', () => {
    const more = { ...inputs, d: { low: 0, typical: 1, high: 2 } };
    const { draw, spreads } = calibrate({ inputs: more, readings: [sum(25, 0.1)] });
    const moved = draw({ ...typical, d: 1 });
    const sd = (spread: Spread) => momentsOf(spread).deviation;
    // Gain is slope × variance.
    expect((moved.a! - 3) / (moved.b! - 14)).toBeCloseTo((2 * sd(inputs.a) ** 2) / sd(inputs.b) ** 2, 9);
    expect(moved.d).toBe(1);
    expect(spreads.d).toEqual(more.d);
    expect(moved.c).toBe(2);
  });

  it('comes to the same in any order', () => {
    const readings = [sum(23, 1), difference(-10, 0.7), sum(21, 2)];
    const orders = [
      [0, 1, 2],
      [2, 1, 0],
      [1, 2, 0],
    ];
    const [first, ...others] = orders.map((order) => calibrate({ inputs, readings: order.map((at) => readings[at]!) }));
    for (const other of others)
      for (const name of ['a', 'b'])
        for (const end of ['low', 'typical', 'high'] as const)
          expect(other.spreads[name]![end]).toBeCloseTo(first!.spreads[name]![end], 9);
  });

  it('repeated, beats its own error but not the error of the model', () => {
    const error = 1;
    const model = { name: 'the sum', error: 1 };
    const left = (count: number, more: Partial<Reading>) =>
      calibrate({ inputs, readings: Array.from({ length: count }, () => sum(22, error, more)) }).readings[0]!.left;
    expect(left(100, {})).toBeLessThan(0.11);
    const floor = left(1, { error: 0, model });
    expect(left(100, { model })).toBeGreaterThan(floor);
    expect(left(100, { model })).toBeLessThan(1.02 * floor);
    expect(left(10, { model })).toBeLessThan(left(1, { model }));
  });

  it('with inputs that go together: one is learned from the other', () => {
    const rank = 0.8;
    const together = [{ input: 'b', goesWith: 'a', rank, why: '', source: 'derived', standing: 'judged' as const }];
    const onlyA: Reading = { ...sum(4, 0), predicted: ({ a }) => a! };
    const { draw, spreads } = calibrate({ inputs, readings: [onlyA], together });
    const r = 2 * Math.sin((Math.PI * rank) / 6);
    const [a, b] = [momentsOf(inputs.a), momentsOf(inputs.b)];
    expect(draw(typical).b).toBeCloseTo(14 + r * b.deviation * (1 / a.deviation), 6);
    expect(momentsOf(spreads.b!).deviation).toBeCloseTo(b.deviation * Math.sqrt(1 - r * r), 6);
    expect(calibrate({ inputs, readings: [onlyA] }).spreads.b).toEqual(inputs.b);
  });

  it('that contradicts an earlier one is not used', () => {
    const { readings } = calibrate({ inputs: { density }, readings: [bucket(1750, 5), bucket(1950, 5)] });
    expect(readings.map(({ used }) => used)).toEqual([true, false]);
    expect(readings[1]!.off).toBeGreaterThan(20);
  });
});

describe('a bent model', () => {
  const bent = (value: number): Reading => ({ ...sum(value, 0.01), predicted: ({ a }) => Math.exp(a! / 3) });

  it('counts its bend as error of the reading', () => {
    const straight: Reading = { ...bent(3), predicted: ({ a }) => a! };
    const left = (reading: Reading) => {
      const { readings } = calibrate({ inputs, readings: [reading] });
      return readings[0]!.left / readings[0]!.spread;
    };
    expect(left(bent(3))).toBeGreaterThan(10 * left(straight));
  });

  it('without an answer there leaves its reading out', () => {
    const none: Reading = { ...sum(1, 1), predicted: ({ a }) => Math.log(a! - 3) };
    const { readings, spreads } = calibrate({ inputs, readings: [none, sum(22, 1)] });
    expect(readings.map(({ value }) => value)).toEqual([22]);
    expect(spreads).toEqual(calibrate({ inputs, readings: [sum(22, 1)] }).spreads);
  });

  it('by its logarithm is a straight one where it is a product', () => {
    const product: Reading = { ...sum(60, 0.6), predicted: ({ a, b }) => (a! + 3) * b!, logarithm: true };
    const { readings, draw, steps } = calibrate({ inputs, readings: [product, { ...product, value: 100, error: 1 }] });
    const [taken] = readings;
    expect(taken!.used).toBe(true);
    expect(Math.exp(taken!.after)).toBeGreaterThan(59);
    const moved = draw(typical);
    expect((moved.a! + 3) * moved.b!).toBeCloseTo(60, -1);
    expect(steps()[0]!.inputs.reading_count).toBeCloseTo(Math.log(60), 12);
    expect(steps()[0]!.inputs.error_count).toBeGreaterThan(0.01);
  });
});

describe('its steps', () => {
  it('are of the readings that were used, and can be reckoned again', () => {
    const steps = calibrate({ inputs: { density }, readings: [bucket(1780, 45), bucket(900, 45)] }).steps();
    expect(steps).toHaveLength(1);
    const { inputs: into, gives } = steps[0]!;
    const gain = into.spread_kg_m3! ** 2 / (into.spread_kg_m3! ** 2 + into.error_kg_m3! ** 2);
    expect(gives.gain).toBeCloseTo(gain, 12);
    expect(gives.calibrated_kg_m3).toBeCloseTo(1850 + gain * (1780 - 1850), 9);
  });
});
