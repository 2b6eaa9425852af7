import { describe, expect, it } from 'vitest';
import { AskError } from '../ask-error.ts';
import { within } from './within.ts';

const limits = { low: 0.01, high: 1, example: '38 mm' };

describe('limits of a formula', () => {
  it('let pass what lies within, ends and a rounding error included', () => {
    for (const bore_m of [0.01, 0.5, 1, 1 + 1e-12]) expect(() => within({ bore_m }, limits)).not.toThrow();
  });

  it('say what was wrong in the words and unit of its key, what would be right and what works', () => {
    try {
      within({ pipe_bore_m: 0.002 }, limits);
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(AskError);
      expect((error as AskError).parts()).toEqual({
        code: 'out-of-range',
        what: 'pipe bore of 2 mm (0.08 in) is not at least 10 mm (0.39 in)',
        expected: 'pipe bore from 10 mm (0.39 in) to 1000 mm (39.4 in)',
        example: '38 mm',
      });
    }
  });

  it('let no NaN and no infinity pass', () => {
    for (const bore_m of [Number.NaN, Number.POSITIVE_INFINITY, -1]) {
      expect(() => within({ bore_m }, limits)).toThrow(AskError);
    }
  });
});
