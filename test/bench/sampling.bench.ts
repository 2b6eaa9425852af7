import { describe, expect, it } from 'vitest';
import { sampleDoubt } from '../../core/doubt/sample.ts';

const spread = { low: 0.9, typical: 1, high: 1.2 };
const inputs = { a: spread, b: spread, c: spread, d: spread, e: spread, f: spread, g: spread, h: spread };

/** A range is part of almost every answer: it may cost a millisecond. */
const BUDGET_MS = 1;

describe('the range of an answer: 1,000 samples of 8 inputs', () => {
  it('one output', async ({ bench }) => {
    const result = await bench('one output', () => {
      sampleDoubt({
        inputs,
        model: ({ a, b, c, d, e, f, g, h }) => ({ out: (a * b * c * (1 + d)) / (e + f) + g * h }),
      });
    }).run();
    expect(result.latency.p50).toBeLessThan(BUDGET_MS);
  });

  it('three outputs', async ({ bench }) => {
    const result = await bench('three outputs', () => {
      sampleDoubt({
        inputs,
        model: ({ a, b, c, d, e, f, g, h }) => ({ mass: a * b * c * (1 + d), ratio: a / (e + f), sum: g + h }),
      });
    }).run();
    expect(result.latency.p50).toBeLessThan(BUDGET_MS);
  });
});
