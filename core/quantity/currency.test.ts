import { expect, test } from 'vitest';
import { currencyOf, isCurrency } from './currency.ts';
import { formatPrice } from './format.ts';

test.each([
  ['$', 'USD'],
  ['€', 'EUR'],
  ['£', 'GBP'],
  ['cad', 'CAD'],
  [' CHF ', 'CHF'],
  ['kg', undefined],
  ['bag', undefined],
  ['', undefined],
  ['constructor', undefined],
])('"%s" is %s', (typed, code) => {
  expect(currencyOf(typed)).toBe(code);
});

test('no unit of measure is taken for a money', () => {
  expect(['m', 'K', 'W', 'dK', '1', 'count', 'Pa'].filter(isCurrency)).toEqual([]);
});

test.each([
  [33, 'USD', '$33'],
  [33.5, 'USD', '$33.50'],
  [1234.5, 'EUR', '€1234.50'],
  [30, 'CAD', '30 CAD'],
])('a price of %d %s is written to the cent', (price, code, text) => {
  expect(formatPrice(price, currencyOf(code)!)).toBe(text);
});
