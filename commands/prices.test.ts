import { describe, expect, it, test } from 'vitest';
import { AskError } from '../core/ask-error.ts';
import { fuels } from '../core/fire/fuel/fuel.ts';
import { materials, nameKey } from '../core/materials/catalogue.ts';
import { inProcessMemory } from './memory.ts';
import { ageOf, itemId, pricesFor, readPrice, readPrices } from './prices.ts';

const lb_kg = 0.45359237;
const gal_m3 = 3.785411784e-3;
const ft3_m3 = 0.028316846592;

describe('a price as people write it', () => {
  it.each([
    ['vermiculite 4 cu ft $33', 'vermiculite', { volume_m3: 4 * ft3_m3 }, 33, 'USD'],
    ['clay 50 lb $9', 'stoneware-clay', { mass_kg: 50 * lb_kg }, 9, 'USD'],
    ['clay 50 lb 9 USD', 'stoneware-clay', { mass_kg: 50 * lb_kg }, 9, 'USD'],
    ['charcoal 9 kg €21', 'lump-charcoal', { mass_kg: 9 }, 21, 'EUR'],
    ['charcoal 9 kg 21,50 €', 'lump-charcoal', { mass_kg: 9 }, 21.5, 'EUR'],
    ['lump charcoal 20 lb 18 eur', 'lump-charcoal', { mass_kg: 20 * lb_kg }, 18, 'EUR'],
    ['sand: 25 kg £4', 'silica-sand', { mass_kg: 25 }, 4, 'GBP'],
    ['propane €2.40 per kg', 'propane', { mass_kg: 1 }, 2.4, 'EUR'],
    ['diesel 1.40€/L', 'diesel', { volume_m3: 1e-3 }, 1.4, 'EUR'],
    ['waste vegetable oil 20 USD for 5 gal', 'waste-vegetable-oil', { volume_m3: 5 * gal_m3 }, 20, 'USD'],
    ['perlite CHF 38.50 for 100 L', 'perlite', { volume_m3: 0.1 }, 38.5, 'CHF'],
    // A cup is no Cuban peso, and the 3 of ft3 is no price.
    ['sand 1 cup $3', 'silica-sand', { volume_m3: gal_m3 / 16 }, 3, 'USD'],
    ['sand 2 1/2 ft3 $3', 'silica-sand', { volume_m3: 2.5 * ft3_m3 }, 3, 'USD'],
    ['sand ½ cu ft $1,200.50', 'silica-sand', { volume_m3: ft3_m3 / 2 }, 1200.5, 'USD'],
    ['garden clay 20 L $0', 'garden-clay', { volume_m3: 0.02 }, 0, 'USD'],
  ])('%s', (text, item, amount, price, currency) => {
    const read = readPrice(text, 'what');
    expect(read).toMatchObject({ item, price, currency });
    const [[unit, size]] = Object.entries(amount) as [[string, number]];
    expect((read.amount as Record<string, number>)[unit]).toBeCloseTo(size, 9);
  });

  it.each([
    ['sand 50 lb 5', 'unreadable'],
    ['sand $5', 'unreadable'],
    ['50 lb $5', 'unreadable'],
    ['sand 50 lb $5 $6', 'unreadable'],
    ['', 'unreadable'],
    ['perlyte 4 cu ft $33', 'unknown-name'],
    ['sand 50 lb $1,200', 'ambiguous'],
    ['propane 20 lb tank $22', 'unreadable'],
    ['sand 50 psi $5', 'wrong-dimension'],
    ['sand 0 kg $5', 'out-of-range'],
    ['sand 50 lb $9999999', 'out-of-range'],
  ])('"%s" is refused (%s) with one that works', (text, code) => {
    try {
      readPrice(text, 'what');
    } catch (error) {
      expect(error).toBeInstanceOf(AskError);
      const refused = error as AskError;
      expect(refused.code).toBe(code);
      expect(readPrice(refused.example, 'what').price).toBeGreaterThan(0);
      return;
    }
    expect.fail('this should be refused');
  });

  it('stands in a list of one currency', () => {
    expect(readPrices('clay 50 lb $9; sand 50 lb 5 USD', 'prices')).toHaveLength(2);
    expect(() => readPrices('clay 50 lb $9; sand 25 kg €5', 'prices')).toThrow('USD and EUR');
  });
});

test('no fuel and material share a name or an id: a price is of one of them', () => {
  const named = new Set(materials.flatMap(({ id, name, aliases }) => [id, name, ...aliases].map(nameKey)));
  const both = fuels
    .flatMap(({ id, name, aliases }) => [id, name, ...aliases])
    .filter((name) => named.has(nameKey(name)));
  expect(both).toEqual([]);
  for (const { id } of [...fuels, ...materials]) expect(itemId(id, 'item')).toBe(id);
});

test("a person's own price goes before their place's, and a typed one before both", async () => {
  const memory = inProcessMemory();
  const context = { asker: 'ann', place: 'shed', memory };
  const sand = (price: number) => readPrice(`sand 50 lb $${price}`, 'what');
  const now = new Date(0);
  expect([...(await pricesFor(context)).values()]).toEqual([]);
  await memory.setPrice({ place: 'shed' }, sand(4), now);
  expect((await pricesFor(context)).get('silica-sand')).toMatchObject({ price: 4, whose: 'place', setAt: now });
  await memory.setPrice({ asker: 'ann' }, sand(5), now);
  expect((await pricesFor(context)).get('silica-sand')).toMatchObject({ price: 5, whose: 'asker' });
  expect((await pricesFor({ ...context, asker: 'ben' })).get('silica-sand')?.price).toBe(4);
  const typed = (await pricesFor(context, [sand(6)])).get('silica-sand');
  expect(typed).toMatchObject({ price: 6, whose: 'typed' });
  expect(typed).not.toHaveProperty('setAt');
});

test.each([
  [0, 'today'],
  [-3, 'today'],
  [1, 'yesterday'],
  [59, '59 days ago'],
  [90, '3 months ago'],
  [800, '2 years ago'],
])('%d days are %s', (days, words) => {
  expect(ageOf(new Date(0), new Date(days * 86_400_000))).toBe(words);
});
