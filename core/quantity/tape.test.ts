import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import type { UnitSystem } from './figure.ts';
import { readQuantity } from './parse.ts';
import { formatTape, onTape } from './tape.ts';

const inch = 0.0254;

test.each<[number, UnitSystem, string]>([
  [15.25 * inch, 'US', '15 1/4 in (387 mm)'],
  [15.25 * inch, 'metric', '387 mm (15 1/4 in)'],
  [0.232, 'US', '9 1/8 in (232 mm)'],
  [0.04, 'US', '1 9/16 in (40 mm)'],
  [0.0127, 'US', '1/2 in (13 mm)'],
  [48 * inch, 'metric', '1219 mm (48 in)'],
  // The next sixteenth is the whole inch.
  [1.99 * inch, 'US', '2 in (51 mm)'],
  [0.25 * inch, 'US', '1/4 in (6 mm)'],
  [0.24 * inch, 'US', '0.24 in (6.1 mm)'],
  [0.0008, 'metric', '0.8 mm (0.03 in)'],
  [0, 'US', '0 in (0 mm)'],
  // Half a millimetre, as the points of a drawing come to it.
  [0.3425 - 0.3, 'metric', '43 mm (1 11/16 in)'],
])('%d m for a reader of %s', (length_m, units, text) => {
  expect(formatTape(length_m, units)).toBe(text);
});

describe('what a tape says', () => {
  const size = fc.double({ min: 0.25 * inch, max: 20, noNaN: true });
  const read = (text: string) => readQuantity(text, { dimensions: ['length'] }).si;

  it('is read back to half its own smallest line', () => {
    fc.assert(
      fc.property(size, (length_m) => {
        expect(Math.abs(read(onTape(length_m, 'US')) - length_m)).toBeLessThanOrEqual((inch / 32) * (1 + 1e-9));
        // Four digits before the unit, so that no comma of thousands is read into it.
        expect(Math.abs(Number.parseInt(onTape(length_m, 'metric'), 10) / 1000 - length_m)).toBeLessThanOrEqual(
          0.0005 * (1 + 1e-9),
        );
      }),
    );
  });

  it('has no fraction that could be said shorter', () => {
    fc.assert(
      fc.property(size, (length_m) => {
        const [, over, under] = /(\d+)\/(\d+) in$/.exec(onTape(length_m, 'US')) ?? [];
        if (over === undefined) return;
        expect(Number(over) % 2).toBe(1);
        expect([2, 4, 8, 16]).toContain(Number(under));
        expect(Number(over)).toBeLessThan(Number(under));
      }),
    );
  });
});
