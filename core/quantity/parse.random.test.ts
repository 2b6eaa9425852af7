import fc from 'fast-check';
import { expect, test } from 'vitest';
import { AskError } from '../ask-error.ts';
import { type Dimension, readQuantity, type Wanted } from './parse.ts';

const every: readonly Dimension[] = [
  'length',
  'mass',
  'volume',
  'temperature',
  'temperature-difference',
  'pressure',
  'flow',
  'power',
  'energy',
  'time',
  'fraction',
  'money',
  'density',
  'conductivity',
];

function errorOf(text: string, wanted: Wanted): AskError {
  try {
    readQuantity(text, wanted);
  } catch (error) {
    if (error instanceof AskError) return error;
    throw error;
  }
  throw new Error(`${text} was read`);
}

const scraps = fc.constantFrom(
  ...['1', '2,000', '1.5', '½', ' ', ' in', '"', "'", 'ft', 'lb', 'F', '°', 'abs', 'hotter', '(', ')', '+', '-', '*'],
  ...['/', 'x', '%', '$', '#', 'ga', 'e9', '^', 'm3', 'constructor', '__proto__', '\u0000', '\ud800', '🔥', '.', ','],
);
const typed = fc.oneof(
  fc.string({ maxLength: 80 }),
  fc.string({ unit: 'binary', maxLength: 20 }),
  fc.array(scraps, { maxLength: 12 }).map((parts) => parts.join('')),
);

test('any text gives a quantity or an AskError that says everything', () => {
  fc.assert(
    fc.property(typed, fc.subarray([...every, 'number'] as Dimension[], { minLength: 1 }), (text, dimensions) => {
      try {
        const read = readQuantity(text, { dimensions });
        expect(Number.isFinite(read.si)).toBe(true);
        expect(dimensions).toContain(read.dimension);
      } catch (error) {
        if (!(error instanceof AskError)) throw error;
        for (const part of [error.code, error.what, error.expected, error.example]) expect(part).not.toBe('');
      }
    }),
    { numRuns: 20_000 },
  );
});

test('every example given can be sent as it stands', () => {
  for (const dimension of every) {
    for (const system of ['metric', 'US'] as const) {
      const { example } = errorOf('?', { dimensions: [dimension], system });
      expect(readQuantity(example, { dimensions: [dimension] }).dimension).toBe(dimension);
    }
  }
});

test('the example keeps the bounds', () => {
  const dimension = fc.constantFrom<Dimension>(...every, 'number');
  const system = fc.constantFrom<'metric' | 'US'>('metric', 'US');
  fc.assert(
    fc.property(dimension, system, fc.double({ min: 1e-3, max: 1e5, noNaN: true }), (wantedOne, reader, min) => {
      const wanted: Wanted = { dimensions: [wantedOne], system: reader, min, max: min * 4 };
      const { example } = errorOf('?', wanted);
      const { si } = readQuantity(example, wanted);
      expect(si).toBeGreaterThanOrEqual(min);
      expect(si).toBeLessThanOrEqual(min * 4);
    }),
    { numRuns: 2000 },
  );
});
