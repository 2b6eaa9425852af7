import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sourceOf } from '../sources/sources.ts';
import { gear } from './data/gear.ts';
import { parts } from './data/parts.ts';
import { bricksUnder, partRows, totals } from './shop.ts';
import { everyTraits, type Traits } from './traits.ts';

const gas: Traits = { fuel: 'gas', lining: 'rammed', fill: 'loose', vessel: 'open', zinc: 'no', forms: 'mesh' };
const ids = (traits: Traits) => partRows([...parts, ...gear], traits, {}).map(({ id }) => id);

describe('parts and gear', () => {
  it.each([...parts, ...gear].map((part) => [part.id, part] as const))(
    '%s is priced, sourced and has a shop',
    (_id, part) => {
      const { low, typical, high } = part.price_USD;
      expect(low >= 0 && low <= typical && typical <= high).toBe(true);
      expect(part.shops.length).toBeGreaterThan(0);
      expect(sourceOf(part.source).id).toBe(part.source);
      expect(part.standing === 'from memory' || part.source !== 'from-memory').toBe(true);
    },
  );

  it('are each there once, whatever is built', () => {
    for (const traits of everyTraits()) expect(new Set(ids(traits)).size).toBe(ids(traits).length);
  });

  it('follow the fuel, the lining, the fill and the forms', () => {
    const charcoal: Traits = { ...gas, fuel: 'charcoal', lining: 'cast', fill: 'blanket', forms: 'card' };
    for (const id of ['burner', 'gas-hose', 'soap', 'mesh', 'rammer']) {
      expect(ids(gas)).toContain(id);
      expect(ids(charcoal)).not.toContain(id);
    }
    for (const id of ['blower', 'rcd', 'blanket', 'card-tube', 'shaker']) {
      expect(ids(charcoal)).toContain(id);
      expect(ids(gas)).not.toContain(id);
    }
  });

  it('whose number the build does not know stand there without a cost', () => {
    const [mesh] = partRows(parts, gas, {}).filter(({ id }) => id === 'mesh');
    expect(mesh).toMatchObject({ quantity: undefined, cost: undefined });
    const [known] = partRows(parts, gas, { mesh_m: { low: 2, typical: 3, high: 4 } }).filter(({ id }) => id === 'mesh');
    const { price_USD } = parts.find(({ id }) => id === 'mesh')!;
    expect(known?.cost).toEqual({ low: 2 * price_USD.low, typical: 3 * price_USD.typical, high: 4 * price_USD.high });
  });
});

describe('a total', () => {
  const spread = fc.tuple(fc.nat(500), fc.nat(500), fc.nat(500)).map((all) => {
    const [low = 0, typical = 0, high = 0] = all.toSorted((a, b) => a - b);
    return { low, typical, high };
  });
  const row = fc.record({
    id: fc.constant('x'),
    name: fc.constant('x'),
    quantity: spread,
    counted: fc.constant('count' as const),
    cost: fc.option(spread, { nil: undefined }),
    currency: fc.constantFrom('USD', 'EUR'),
    shops: fc.constant([]),
  });

  it('is the sum of the rows of its money, and nothing is converted', () => {
    fc.assert(
      fc.property(fc.array(row), (rows) => {
        for (const [currency, sum] of totals(rows)) {
          const own = rows.flatMap((one) => (one.currency === currency && one.cost ? [one.cost] : []));
          for (const end of ['low', 'typical', 'high'] as const) {
            expect(sum[end]).toBe(own.reduce((all, one) => all + one[end], 0));
          }
        }
      }),
    );
  });
});

describe('bricks under a floor', () => {
  it('cover it, with no more than a third to spare and one', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 1, noNaN: true }), (across_m) => {
        const area = (Math.PI / 4) * across_m ** 2;
        const { low, typical, high } = bricksUnder({ across_m, thick_m: 0.064 });
        expect(low * 0.23 * 0.114).toBeGreaterThanOrEqual(area * (1 - 1e-6));
        expect(low <= typical && typical <= high).toBe(true);
        expect((high - 1) * 0.23 * 0.114).toBeLessThanOrEqual(1.3 * area * (1 + 1e-6));
      }),
    );
  });

  it('are none under no bricks, and two layers where they lie double', () => {
    expect(bricksUnder({ across_m: 0.3, thick_m: 0 }).high).toBe(0);
    const one = bricksUnder({ across_m: 0.3, thick_m: 0.064 });
    expect(bricksUnder({ across_m: 0.3, thick_m: 0.128 }).typical).toBe(2 * one.typical);
  });
});
