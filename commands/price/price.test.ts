import { describe, expect, it } from 'vitest';
import { talk } from '../../test/contract/conversation.ts';

const cost = (card: Awaited<ReturnType<ReturnType<typeof talk>['card']>>) =>
  card.figures.find(({ id }) => id === 'mix.cost');

describe('a price', () => {
  it('is shown back, listed with its age, changed and dropped', async () => {
    const { card, refused, later } = talk();
    const first = await card('price vermiculite 4 cu ft $33');
    expect(first.headline).toBe('Your price of expanded vermiculite, loose: $33 for 113 L (4 cu ft).');
    later(12);
    expect((await card('price vermiculite 4 cu ft $35.50')).notes[0]).toContain(
      '33 USD for 113 L (4 cu ft), set 12 days ago',
    );
    later(1);
    expect((await card('price list units=US')).table?.rows).toEqual([
      ['expanded vermiculite, loose', '$35.50', '4 cu ft (113 L)', 'yours', 'yesterday'],
    ]);
    await card('price drop vermiculite');
    expect((await refused('price drop vermiculite')).error.code).toBe('unknown-name');
    expect((await card('price list')).headline).toMatch(/^No price is set/);
  });

  it('of charcoal is no hot work', async () => {
    const { card } = talk();
    for (const line of ['price charcoal 9 kg €21', 'price propane 20 lb $22', 'price list', 'price drop charcoal']) {
      expect((await card(line)).cautions).toEqual([]);
    }
  });

  it('of a place is set by who may, holds for all there, and yields to one’s own', async () => {
    const { card, memory } = talk();
    await card('price sand 25 kg $7 who=place');
    const ben = talk({ memory, asker: 'ben', mayModerate: false });
    expect((await ben.card('price list')).table?.rows[0]).toContain("this place's");
    for (const line of ['price sand 25 kg $6 who=place', 'price drop sand who=place', 'units metric who=place']) {
      const { error } = await ben.refused(line);
      expect(error.code).toBe('refused');
      expect(error.example).toContain('who=me');
    }
    await ben.card('price sand 25 kg $6');
    expect((await ben.card('price list')).table?.rows).toHaveLength(1);
    expect((await card('mix 30 L')).given).toContain(
      "this place's price of silica sand: $7 for 25 kg (55.1 lb), set today",
    );
    expect((await ben.card('mix 30 L')).given).toContain(
      'your price of silica sand: $6 for 25 kg (55.1 lb), set today',
    );
  });
});

describe('the cost of a mix', () => {
  it('comes from kept prices and whole bags, in their money, and says whose they are', async () => {
    const { card, later } = talk();
    await card('price stoneware clay 10 kg €6');
    await card('price sand 25 kg €4');
    later(40);
    const mixed = await card('mix 30 L');
    const mass = (id: string) => mixed.figures.find((one) => one.id === id)!.value;
    const clay = Math.ceil(mass('mix.clay_mass') / 10);
    const sand = Math.ceil(mass('mix.sand_mass') / 25);
    expect(cost(mixed)).toMatchObject({ unit: 'EUR', value: clay * 6 + sand * 4 });
    expect(mixed.given).toContain('your price of stoneware clay: €6 for 10 kg (22 lb), set 40 days ago');
    expect(mixed.assumed.map(({ text }) => text).join()).not.toContain('common bags');
  });

  it('says which prices are common ones', async () => {
    const { card } = talk();
    await card('price sand 25 kg $4');
    expect((await card('mix 30 L')).assumed.map(({ text }) => text)).toContain(
      'common bags and prices of stoneware clay, as remembered',
    );
  });

  it('is left out where moneys are mixed, with what to do', async () => {
    const { card, refused } = talk();
    await card('price clay 25 kg €9');
    const mixed = await card('mix 30 L');
    expect(cost(mixed)).toBeUndefined();
    expect(mixed.notes.join(' ')).toMatch(
      /No cost: stoneware clay in EUR, silica sand in USD.*price silica sand 25 kg EUR/,
    );
    expect(cost(await card('mix 30 L prices=sand 25 kg €4'))?.unit).toBe('EUR');
    expect((await refused('mix 30 L prices=sand 25 kg €4; clay 25 kg $9')).error.code).toBe('impossible');
  });

  it('takes what is free in any money', async () => {
    const { card } = talk();
    await card('price sand 25 kg £4');
    expect(cost(await card('mix 30 L ratio=2 sand 1 garden clay as=outer layer'))?.unit).toBe('GBP');
  });
});
