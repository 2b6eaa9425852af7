import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Currency } from './currency.ts';
import type { Figure, Shown, SiUnit, UnitSystem } from './figure.ts';
import { formatBoth, formatFigure, formatSi } from './format.ts';
import { type Dimension, readQuantity } from './parse.ts';
import { scaleOf } from './scale.ts';

const LB = 0.45359237;
const figure = (value: number, unit: SiUnit, range?: [number, number], shown?: Shown): Figure => ({
  id: 'mix.clay',
  label: 'dry clay',
  value,
  unit,
  ...(shown && { shown }),
  ...(range && { range: { low: range[0], high: range[1] } }),
  rangeBasis: range ? 'sampled' : 'none',
});

describe('formatSi', () => {
  test.each<[number, SiUnit, UnitSystem, Shown | undefined, string]>([
    [0.04, 'm', 'US', undefined, '1.57 in (1 9/16)'],
    [0.04, 'm', 'metric', undefined, '40 mm'],
    [0.3556, 'm', 'US', undefined, '14 in'],
    [0.0889, 'm', 'US', undefined, '3.5 in (3 1/2)'],
    [0.0127, 'm', 'US', undefined, '0.5 in (1/2)'],
    [0.0015, 'm', 'metric', 'sheet', '1.5 mm'],
    [0.0015, 'm', 'US', 'sheet', '0.059 in'],
    [33 * LB, 'kg', 'US', undefined, '33 lb'],
    [0.4 * LB, 'kg', 'US', undefined, '6.4 oz'],
    [0.25, 'kg', 'metric', undefined, '250 g'],
    [0.0311485, 'm3', 'US', 'bulk', '1.1 cu ft'],
    [0.0311485, 'm3', 'metric', 'bulk', '31.1 L'],
    [9.46352946e-3, 'm3', 'US', 'liquid', '2.5 gal'],
    [9.46352946e-4, 'm3', 'US', 'liquid', '1 qt'],
    [1373.15, 'K', 'metric', undefined, '1100 °C'],
    [1373.15, 'K', 'US', undefined, '2012 °F'],
    [200, 'dK', 'US', undefined, '360 °F'],
    [137895.1459, 'Pa', 'US', undefined, '20 psi'],
    [137895.1459, 'Pa', 'metric', undefined, '138 kPa'],
    [2739.97801, 'Pa', 'US', undefined, '11 inWC'],
    [29307.107, 'W', 'US', undefined, '100,000 Btu/h'],
    [29307.107, 'W', 'metric', undefined, '29.3 kW'],
    [1.2 / 3600, 'kg/s', 'metric', undefined, '1.2 kg/h'],
    [1.2 / 3600, 'kg/s', 'US', undefined, '2.65 lb/h'],
    [0.016, 'kg/s', 'metric', undefined, '57.6 kg/h'],
    [12, 'm/s', 'metric', undefined, '12 m/s'],
    [12, 'm/s', 'US', undefined, '39.4 ft/s'],
    [24.2, 'USD', 'US', undefined, '$24'],
    [9.5, 'USD', 'US', undefined, '$9.50'],
    [24.2, 'EUR', 'US', undefined, '€24'],
    [-9.5, 'GBP', 'metric', undefined, '-£9.50'],
    [24.2, 'CHF' as Currency, 'metric', undefined, '24 CHF'],
    [0.1, '1', 'metric', 'percent', '10 %'],
    [1, '1', 'metric', 'percent', '100 %'],
    [0.9998, '1', 'metric', 'percent', '99.98 %'],
    [0.99995, '1', 'metric', 'percent', '99.995 %'],
    [0.997, '1', 'metric', 'percent', '99.7 %'],
    [0.00004, '1', 'metric', 'percent', '0.004 %'],
    [3, 'count', 'US', undefined, '3'],
    [172_800, 's', 'US', undefined, '2 days'],
    [86_400, 's', 'US', 'days', '1 day'],
    [10_800, 's', 'US', undefined, '3 h'],
    [1800, 's', 'US', undefined, '30 min'],
    [0, 'kg', 'metric', undefined, '0 g'],
    [-0.0001, 'm', 'metric', undefined, '-0.1 mm'],
  ])('%d %s %s %s', (value, unit, system, shown, text) => {
    expect(formatSi(value, unit, system, shown)).toBe(text);
  });
});

test('inches rounded by their range have no sixteenths of a finer value behind them', () => {
  const vent = { id: 'v', label: '', value: 3.375 * 0.0254, unit: 'm', rangeBasis: 'judged' } as const;
  const wide = { ...vent, range: { low: 0.04, high: 0.22 } };
  const { lead } = formatFigure(wide, 'US');
  expect(lead).toBe('3 in');
  expect(formatFigure({ ...vent, rangeBasis: 'none' }, 'US').lead).toBe('3.38 in (3 3/8)');
});

test('formatBoth puts the other system behind', () => {
  expect(formatBoth(33 * LB, 'kg', 'US')).toBe('33 lb (15 kg)');
  expect(formatBoth(0.04, 'm', 'metric')).toBe('40 mm (1.57 in)');
  expect(formatBoth(3600 * 3, 's', 'metric')).toBe('3 h');
  expect(formatBoth(0.1, '1', 'US')).toBe('10 %');
});

describe('formatFigure', () => {
  test('rounds to what the range justifies', () => {
    expect(formatFigure(figure(33.2 * LB, 'kg', [27.1 * LB, 39.8 * LB]), 'US')).toEqual({
      lead: '33 lb',
      other: '15 kg',
      range: '27 to 40',
    });
    expect(formatFigure(figure(107.3 * LB, 'kg', [95.2 * LB, 118.1 * LB]), 'US').range).toBe('95 to 118');
    // Cents or none, never half of them.
    expect(formatFigure(figure(0.61, 'USD', [0.28, 1.52]), 'US')).toEqual({
      lead: '$0.61',
      other: '',
      range: '$0.28 to $1.52',
    });
    expect(formatFigure(figure(24.3, 'USD', [20.1, 31.2]), 'US')).toEqual({
      lead: '$24',
      other: '',
      range: '$20 to $31',
    });
    expect(formatFigure(figure(24.3, 'EUR', [20.1, 31.2]), 'US')).toEqual({
      lead: '€24',
      other: '',
      range: '€20 to €31',
    });
    expect(formatFigure(figure(24.3, 'CHF' as Currency, [20.1, 31.2]), 'US')).toEqual({
      lead: '24 CHF',
      other: '',
      range: '20 to 31',
    });
    expect(formatFigure(figure(0.1, '1', [0.08, 0.12]), 'metric')).toEqual({
      lead: '10 %',
      other: '',
      range: '8 to 12',
    });
    expect(formatFigure(figure(1366, 'K', [1266, 1466]), 'metric').lead).toBe('1090 °C');
  });

  test('three digits without a range', () => {
    expect(formatFigure(figure(12.3456, 'kg'), 'metric')).toEqual({ lead: '12.3 kg', other: '27.2 lb' });
    expect(formatFigure(figure(12.3456, 'kg', [12.3456, 12.3456]), 'metric')).not.toHaveProperty('range');
  });

  test('a range narrower than what is printed is left out', () => {
    expect(formatFigure(figure(0.35, 'm', [0.3499, 0.3501]), 'metric')).toEqual({ lead: '350 mm', other: '13.78 in' });
  });

  test('nothing, with a range', () => {
    expect(formatFigure(figure(0, 'kg', [0, 3]), 'metric')).toEqual({
      lead: '0.0 kg',
      other: '0 lb',
      range: '0.0 to 3.0',
    });
  });

  test('next to nothing, with a range', () => {
    expect(formatFigure(figure(1e-14, 'dK', [-3, 3]), 'metric').lead).toBe('0.0 °C');
    expect(formatFigure(figure(1e-14, 'W/(m K)', [-3, 3]), 'metric').lead).toBe('0.000 W/(m K)');
  });

  test('a wide range does not print the value as nothing', () => {
    expect(formatFigure(figure(0.3, 'kg', [0.01, 4]), 'metric').lead).toBe('300 g');
  });
});

test.each<[SiUnit, Dimension, Shown | undefined, number, number]>([
  ['m', 'length', undefined, 1e-3, 20],
  ['kg', 'mass', undefined, 1e-3, 4000],
  ['m3', 'volume', 'bulk', 1e-5, 50],
  ['m3', 'volume', 'liquid', 1e-5, 30],
  ['K', 'temperature', undefined, 250, 3000],
  ['kg/s', 'mass-flow', undefined, 1e-5, 2],
  ['m/s', 'speed', undefined, 0.05, 90],
])('printed %s is read back as %s (%s)', (unit, dimension, shown, min, max) => {
  const size = fc.double({ min, max, noNaN: true });
  const system = fc.constantFrom<UnitSystem>('metric', 'US');
  fc.assert(
    fc.property(size, system, (value, reader) => {
      const text = formatSi(value, unit, reader, shown);
      const scale = scaleOf(value, unit, reader, shown);
      // A bound, as commands give one: `10,000 L` alone would be asked about.
      const read = readQuantity(text, { dimensions: [dimension], min: value / 20 });
      // Half of the last printed place: three digits of the value, or the fewest decimals its unit allows.
      const printed = Math.abs((value - scale.offset) / scale.factor);
      const digits = unit === 'K' ? 1 : 10 ** (Math.floor(Math.log10(printed || 1)) - 2);
      const half = 0.5 * Math.max(digits, 10 ** -scale.most) * scale.factor;
      expect(Math.abs(read.si - value)).toBeLessThanOrEqual(half * (1 + 1e-6));
    }),
    { numRuns: 2000 },
  );
});
