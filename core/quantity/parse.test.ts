import { describe, expect, test } from 'vitest';
import { AskError } from '../ask-error.ts';
import { type Dimension, readNumber, readQuantity, type Wanted } from './parse.ts';

const every: readonly Dimension[] = [
  'length',
  'mass',
  'volume',
  'temperature',
  'temperature-difference',
  'pressure',
  'flow',
  'mass-flow',
  'speed',
  'power',
  'energy',
  'time',
  'fraction',
  'money',
  'density',
  'conductivity',
];

function errorOf(text: string, wanted: Wanted = { dimensions: every }): AskError {
  try {
    readQuantity(text, wanted);
  } catch (error) {
    if (error instanceof AskError) return error;
    throw error;
  }
  throw new Error(`${text} was read`);
}

describe('reads', () => {
  test.each<[string, Dimension, number]>([
    ['14 in', 'length', 0.3556],
    ['14"', 'length', 0.3556],
    ['14″', 'length', 0.3556],
    ['14”', 'length', 0.3556],
    ["14''", 'length', 0.3556],
    ['14in', 'length', 0.3556],
    ['14 IN.', 'length', 0.3556],
    ['14\u00a0in', 'length', 0.3556],
    ['1 1/2 in', 'length', 0.0381],
    ['1-1/2 in', 'length', 0.0381],
    ['1½"', 'length', 0.0381],
    ['1 ½ in', 'length', 0.0381],
    ['½ in', 'length', 0.0127],
    ['3/8 in', 'length', 0.009525],
    ['3 ft 2 in', 'length', 0.9652],
    ['3ft2in', 'length', 0.9652],
    [`3' 2"`, 'length', 0.9652],
    ['3’ 2”', 'length', 0.9652],
    ['3′ 2½″', 'length', 0.9779],
    [`3'-2"`, 'length', 0.9652],
    ['3 ft - 2 in', 'length', 0.8636],
    ['2,5 cm', 'length', 0.025],
    ['0.125 in', 'length', 0.003175],
    ['0,125 in', 'length', 0.003175],
    ['1,234.5 mm', 'length', 1.2345],
    ['1.234,5 mm', 'length', 1.2345],
    ['1 234 mm', 'length', 1.234],
    ['1\u202f234,5 mm', 'length', 1.2345],
    ['2 yards', 'length', 1.8288],
    ['1.57 in (1 5/8)', 'length', 0.039878],
    ['(14 in - 2*1.5 in)/2', 'length', 0.1397],
    ['(14 in − 2 × 1.5 in) ÷ 2', 'length', 0.1397],
    ['(14 in - 2 x 1.5 in)/2', 'length', 0.1397],
    ['(2 + 3) in', 'length', 0.127],
    ['10% * 1 m', 'length', 0.1],
    ['30lb', 'mass', 13.6077711],
    ['2 lb 3 oz', 'mass', 0.99223325],
    ['2 tonnes', 'mass', 2000],
    ['2.5 gal', 'volume', 9.46352946e-3],
    ['1 US gal', 'volume', 3.785411784e-3],
    ['1 imp gal', 'volume', 4.54609e-3],
    ['10 qt', 'volume', 9.46352946e-3],
    ['8 fl oz', 'volume', 2.365882365e-4],
    ['1 cup', 'volume', 2.365882365e-4],
    ['1.1 cu ft', 'volume', 0.031148531],
    ['2 ft³', 'volume', 0.056633693],
    ['2 ft^3', 'volume', 0.056633693],
    ['2 cubic feet', 'volume', 0.056633693],
    ['100 cu in', 'volume', 1.6387064e-3],
    ['3 m3', 'volume', 3],
    ['5 litres', 'volume', 5e-3],
    ['2000F', 'temperature', 1366.483333],
    ['2000 degF', 'temperature', 1366.483333],
    ['2000 degrees F', 'temperature', 1366.483333],
    ['1100 °C', 'temperature', 1373.15],
    ['1100° C', 'temperature', 1373.15],
    ['-20 C', 'temperature', 253.15],
    ['−20 °C', 'temperature', 253.15],
    ['300 K', 'temperature', 300],
    ['400 F hotter', 'temperature-difference', 222.2222222],
    ['90 C cooler', 'temperature-difference', -90],
    ['20 psi', 'pressure', 137895.1459],
    ['11 inWC', 'pressure', 2739.97801],
    ['11 in wc', 'pressure', 2739.97801],
    ['30 mbar', 'pressure', 3000],
    ['1.5 bar', 'pressure', 150_000],
    ['35 cfm', 'flow', 0.01651816],
    ['60 m3/h', 'flow', 1 / 60],
    ['60 L/min', 'flow', 1e-3],
    ['1.2 kg/h', 'mass-flow', 1.2 / 3600],
    ['2 lb/h', 'mass-flow', 2.5199577e-4],
    ['2 lbs/hr', 'mass-flow', 2.5199577e-4],
    ['0.01 kg/s', 'mass-flow', 0.01],
    ['20 g/min', 'mass-flow', 3.3333333e-4],
    ['12 m/s', 'speed', 12],
    ['30 ft/s', 'speed', 9.144],
    ['100000 Btu/h', 'power', 29307.107],
    ['30 kW', 'power', 30_000],
    ['1 kWh', 'energy', 3.6e6],
    ['1000 Btu', 'energy', 1055055.853],
    ['1 h 30 min', 'time', 5400],
    ['2 days', 'time', 172_800],
    ['10%', 'fraction', 0.1],
    ['$9', 'money', 9],
    ['9 $', 'money', 9],
    ['9.50 USD', 'money', 9.5],
    ['120 lb/ft3', 'density', 1922.2156],
    ['0.3 W/mK', 'conductivity', 0.3],
  ])('%s', (text, dimension, si) => {
    const read = readQuantity(text, { dimensions: every });
    expect(read.dimension).toBe(dimension);
    expect(read.si / si).toBeCloseTo(1, 6);
  });

  test('oz by what is wanted', () => {
    expect(readQuantity('8 oz', { dimensions: ['mass'] }).si).toBeCloseTo(0.2267962, 6);
    expect(readQuantity('8 oz', { dimensions: ['volume'] }).si).toBeCloseTo(2.365882e-4, 9);
  });

  test('F as a difference where one is wanted', () => {
    expect(readQuantity('400 F', { dimensions: ['temperature-difference'] }).si).toBeCloseTo(222.222, 3);
    expect(errorOf('400 F hotter', { dimensions: ['temperature'] }).code).toBe('wrong-dimension');
  });

  test('pressures are gauge unless abs', () => {
    const wanted: Wanted = { dimensions: ['pressure'] };
    expect(readQuantity('20 psi', wanted).gauge).toBe(true);
    expect(readQuantity('20 psi gauge', wanted).gauge).toBe(true);
    expect(readQuantity('20 psi abs', wanted).gauge).toBe(false);
    expect(readQuantity('20 psia', wanted).gauge).toBe(false);
    expect(readQuantity('14 in', { dimensions: ['length'] })).not.toHaveProperty('gauge');
    expect(errorOf('14 in abs').code).toBe('wrong-dimension');
  });

  test('a plain number takes the unit of the asker and says so', () => {
    const wanted: Wanted = { dimensions: ['temperature'], plainUnit: { metric: '°C', US: '°F' } };
    expect(readQuantity('2000', { ...wanted, system: 'US' })).toMatchObject({ assumedUnit: '°F', system: 'US' });
    expect(readQuantity('2000', { ...wanted, system: 'US' }).si).toBeCloseTo(1366.483, 3);
    expect(readQuantity('1100', { ...wanted, system: 'metric' }).si).toBeCloseTo(1373.15, 3);
    expect(readQuantity('1100 C', wanted)).not.toHaveProperty('assumedUnit');
  });

  test('plain numbers', () => {
    expect(readNumber('2 * (3 + 1)')).toBe(8);
    expect(readNumber('1½')).toBe(1.5);
    expect(readNumber('-2,5')).toBe(-2.5);
    expect(readNumber('2,000', { min: 100 })).toBe(2000);
  });
});

describe('two readings of one mark', () => {
  const power: Wanted = { dimensions: ['power'] };

  test('bounds decide', () => {
    expect(readQuantity('100,000 Btu/h', { ...power, min: 1000, max: 1e6 }).si).toBeCloseTo(29307.1, 1);
    expect(readQuantity('2,000 mm', { dimensions: ['length'], min: 0.1, max: 10 }).si).toBe(2);
    expect(readQuantity('1.500 in', { dimensions: ['length'], max: 3 }).si).toBeCloseTo(0.0381, 6);
  });

  test.each(['2,000 mm', '1.500 in', '100,000 Btu/h'])('%s is asked about', (text) => {
    const error = errorOf(text);
    expect(error.code).toBe('ambiguous');
    const [grouped, decimal] = error.expected.split(' or ');
    const [a, b] = [grouped, decimal].map((each) => readQuantity(each!, { dimensions: every }).si);
    expect(a! / b!).toBeCloseTo(1000, 6);
    expect(readQuantity(error.example, { dimensions: every }).si).toBe(a);
  });

  test('1.234 keeps its digits in the second spelling', () => {
    expect(errorOf('1.234 m').expected).toBe('1234 m or 1.2340 m');
  });

  test('a reading that cannot be is not asked about', () => {
    expect(readQuantity('-100.125 °C', { dimensions: ['temperature'] }).si).toBeCloseTo(173.025, 6);
  });

  test('out of bounds both ways', () => {
    expect(errorOf('2,000 mm', { dimensions: ['length'], min: 10, max: 20 }).code).toBe('out-of-range');
  });
});

describe('refuses', () => {
  test.each<[string, AskError['code']]>([
    ['', 'missing'],
    [' \u00a0 ', 'missing'],
    ['5', 'unknown-unit'],
    ['6 dozen', 'unknown-unit'],
    ['14 inchs', 'unknown-unit'],
    ['1e400 m', 'out-of-range'],
    ['1e300 * 1e300 m', 'out-of-range'],
    ['m^999999999', 'unreadable'],
    ['2 m^999999999', 'unreadable'],
    ['createUnit("foo")', 'unreadable'],
    ['5 foo', 'unknown-unit'],
    ['1 m / 0', 'unreadable'],
    ['1/0 m', 'unreadable'],
    ['2 x 3 in', 'ambiguous'],
    ['3 in * 2 in', 'wrong-dimension'],
    ['3 in + 2 lb', 'wrong-dimension'],
    ['3 in + 2', 'wrong-dimension'],
    ['2000 F - 70 F', 'unreadable'],
    ['3 in 2 ft', 'unreadable'],
    ['5 m2', 'unreadable'],
    ['(3 in', 'unreadable'],
    ['3 in)', 'unreadable'],
    ['10 to 12 in', 'unreadable'],
    ['-500 C', 'out-of-range'],
    ['-1 psi abs', 'out-of-range'],
    ['1.2.3 in', 'unreadable'],
    ['1,2,3 in', 'unreadable'],
    ['in', 'unreadable'],
    ['#6', 'unreadable'],
    ['A6', 'unreadable'],
    ['no. 8', 'unreadable'],
    ['16 ga', 'unreadable'],
    ['16 gauge', 'unreadable'],
  ])('%j as %s', (text, code) => {
    expect(errorOf(text).code).toBe(code);
  });

  test('what to measure instead', () => {
    expect(errorOf('#6').expected).toContain('outside diameter and height');
    expect(errorOf('16 ga').expected).toContain('caliper');
  });

  test('nothing typed makes a unit', () => {
    expect(errorOf('createUnit("foo")').code).toBe('unreadable');
    expect(errorOf('5 foo').code).toBe('unknown-unit');
  });

  test('names the nearest unit', () => {
    expect(errorOf('14 inchs').expected).toContain('in');
    expect(errorOf('20 ppsi', { dimensions: ['pressure'] }).expected).toContain('psi');
  });

  test('says what it is and what is wanted', () => {
    const error = errorOf('30 lb', { dimensions: ['length'], label: 'inside diameter', system: 'US' });
    expect(error.parts()).toEqual({
      code: 'wrong-dimension',
      what: '“30 lb” is a mass.',
      expected: 'a length for inside diameter',
      example: '14 in',
    });
  });

  test('says the bounds', () => {
    const error = errorOf('14 ft', { dimensions: ['length'], min: 0.0254, max: 2.54, system: 'US' });
    expect(error.code).toBe('out-of-range');
    expect(error.what).toBe('“14 ft” is 14 ft (4270 mm).');
    expect(error.expected).toBe('a length, from 1 in (25 mm) to 100 in (2540 mm)');
    expect(errorOf('0 K', { dimensions: ['temperature'], min: 250 }).expected).toContain('at least');
  });

  test('very long text, by its length', () => {
    const started = performance.now();
    expect(errorOf(`${'2*'.repeat(100_000)}1 m`).code).toBe('too-long');
    expect(performance.now() - started).toBeLessThan(50);
    expect(readQuantity(`${'('.repeat(30)}1 m${')'.repeat(30)}`, { dimensions: every }).si).toBe(1);
  });
});
