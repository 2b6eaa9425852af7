import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sheet } from './sheet.ts';

const biots = fc.double({ min: -3, max: 3, noNaN: true }).map((power) => 10 ** power);
const fouriers = fc.double({ min: 1e-3, max: 5, noNaN: true });

describe('a drying sheet', () => {
  it('holds all its water at first, and less and less of it', () => {
    fc.assert(
      fc.property(biots, fouriers, fouriers, (biot, a, b) => {
        const { left } = sheet({ biot });
        expect(left(0)).toBe(1);
        const [early, late] = [Math.min(a, b), Math.max(a, b)];
        expect(left(late)).toBeLessThanOrEqual(left(early));
        expect(left(late)).toBeGreaterThan(0);
      }),
    );
  });

  it('loses what leaves its face, no more and no less', () => {
    fc.assert(
      fc.property(biots, fouriers, (biot, fourier) => {
        const { left, rate } = sheet({ biot });
        const step = 1e-4 * fourier;
        const lost = (left(fourier - step) - left(fourier + step)) / (2 * step);
        expect(lost).toBeCloseTo(rate(fourier), 3);
      }),
    );
  });

  it('dries sooner the more freely its face loses, never faster than that face allows', () => {
    fc.assert(
      fc.property(biots, fouriers, (biot, fourier) => {
        expect(sheet({ biot: biot * 1.5 }).left(fourier)).toBeLessThan(sheet({ biot }).left(fourier) + 1e-12);
        expect(sheet({ biot }).rate(fourier)).toBeLessThanOrEqual(biot * (1 + 1e-9));
      }),
    );
  });

  it('knows when it holds a share and when it loses at a rate', () => {
    fc.assert(
      fc.property(biots, fc.double({ min: 0.001, max: 0.99, noNaN: true }), (biot, share) => {
        const { left, rate, whenLeft, whenRate } = sheet({ biot });
        expect(left(whenLeft(share))).toBeCloseTo(share, 6);
        const wanted = share * biot;
        const at = whenRate(wanted);
        if (at > 1e-4) expect(rate(at) / wanted).toBeCloseTo(1, 6);
      }),
    );
    const { whenLeft, whenRate } = sheet({ biot: 2 });
    expect(whenLeft(1)).toBe(0);
    expect(whenRate(2)).toBe(0);
  });

  it('with a face that lets little out dries like a bucket through a hole: e^(−Bi·Fo)', () => {
    expect(sheet({ biot: 1e-4 }).left(5e3)).toBeCloseTo(Math.exp(-0.5), 4);
  });
});
