import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cardOf, conversation, errorOf } from '../../test/contract/conversation.ts';
import type { Card } from '../card.ts';
import { readJet } from './question.ts';

const figure = (card: Card, id: string) => card.figures.find((one) => one.id === `burner.${id}`);
const value = (card: Card, id: string) => figure(card, id)?.value ?? Number.NaN;

describe('a jet as typed', () => {
  it('is a bore or a drill', () => {
    expect(readJet('0.8 mm', 'metric')).toBeCloseTo(0.0008, 9);
    expect(readJet('1/32 in', 'US')).toBeCloseTo(0.00079375, 9);
    for (const drill of ['no. 65', 'no 65', '#65', 'number 65', 'drill 65', 'No.65'])
      expect(readJet(drill, 'US')).toBeCloseTo(0.035 * 0.0254, 9);
    expect(() => readJet('no. 99', 'US')).toThrow(/no drill number 99/);
    expect(() => readJet('2 in', 'US')).toThrow(/2 in/);
  });
});

describe('burner', () => {
  it('finds the third of heat, jet and pressure, whichever it is', async () => {
    const jet_m = value(await cardOf('burner 20 kW pressure=100 kPa'), 'jet');
    const bore = `${(jet_m * 1000).toFixed(5)} mm`;
    expect(value(await cardOf(`burner 20 kW jet=${bore}`), 'pressure') / 100e3).toBeCloseTo(1, 3);
    expect(value(await cardOf(`burner jet=${bore} pressure=100 kPa`), 'rate') / 20e3).toBeCloseTo(1, 3);
  });

  it('says how far a given jet and pressure are from the heat asked', async () => {
    const card = await cardOf('burner 20 kW jet=0.8 mm pressure=100 kPa');
    expect(card.headline).toMatch(/5\d % of what was asked/);
    expect(value(card, 'rate')).toBeLessThan(12e3);
  });

  it('does not double the heat with the gauge: choked flow follows the absolute pressure', async () => {
    const at = async (kPa: number) => value(await cardOf(`burner jet=0.8 mm pressure=${kPa} kPa`), 'rate');
    // (200 + 101.3) / (100 + 101.3)
    expect((await at(200)) / (await at(100))).toBeCloseTo(1.497, 2);
  });

  it('names both heating values', async () => {
    const card = await cardOf('burner 20 kW');
    expect(value(card, 'rate_higher') / value(card, 'rate')).toBeCloseTo(1.086, 2);
  });

  it('chooses a tube for the balanced air: 23 to 32 jets wide, within a quarter', async () => {
    const card = await cardOf('burner 20 kW');
    const ratio = value(card, 'tube') / value(card, 'jet');
    expect(ratio).toBeGreaterThan(23 * 0.75);
    expect(ratio).toBeLessThan(32 * 1.25);
    expect(value(card, 'air')).toBeCloseTo(1, 3);
  });

  it('warns of carbon monoxide first where the tube is too narrow for the jet', async () => {
    const narrow = await cardOf('burner jet=1 mm pressure=100 kPa tube=15 mm');
    expect(value(narrow, 'air')).toBeLessThan(0.8);
    expect(narrow.cautions[0]).toMatchObject({ id: 'rich-flame', leads: true });
    const wide = await cardOf('burner jet=0.8 mm pressure=100 kPa tube=27 mm');
    expect(wide.cautions.map(({ id }) => id)).not.toContain('rich-flame');
    // The same tube and jet hold their air over pressure, as long as the furnace does not push back.
    const air = async (kPa: number) =>
      value(await cardOf(`burner jet=0.8 mm pressure=${kPa} kPa tube=25 mm back=0 Pa`), 'air');
    expect(Math.abs((await air(200)) / (await air(100)) - 1)).toBeLessThan(0.12);
    expect(value(await cardOf('burner jet=0.8 mm pressure=100 kPa tube=25 mm back=100 Pa'), 'air')).toBeLessThan(0.8);
  });

  it('lasts longer fuller, warmer, with more bottles or with less gas', async () => {
    const lasts = async (rest: string) => value(await cardOf(`burner ${rest}`), 'lasts');
    const plain = await lasts('20 kW');
    expect(await lasts('20 kW fill=50%')).toBeLessThan(plain);
    expect(await lasts('20 kW air=0 °C')).toBeLessThan(plain);
    expect(await lasts('20 kW bottles=2')).toBeGreaterThan(2 * plain);
    expect(await lasts('10 kW')).toBeGreaterThan(2 * plain);
    expect(await lasts('20 kW bottle=100 lb')).toBeGreaterThan(plain);
  });

  it('never lasts longer than its fill, and says frost where cold ends it', async () => {
    const card = await cardOf('burner 20 kW air=0 °C');
    expect(value(card, 'lasts')).toBeLessThan(value(card, 'level'));
    expect(card.headline).toContain('until too cold, not empty');
    expect(card.cautions.map(({ id }) => id)).toContain('frosted-cylinder');
    const warm = await cardOf('burner 3 kW air=30 °C');
    expect(value(warm, 'lasts') / value(warm, 'level')).toBeCloseTo(1, 6);
    expect(warm.headline).toContain('until empty');
    expect(warm.cautions.map(({ id }) => id)).not.toContain('frosted-cylinder');
  });

  it('counts melts by what one takes', async () => {
    const card = await cardOf('burner propane=1 kg/h air=25 °C each=0.5 kg');
    expect(value(card, 'melts')).toBeCloseTo(value(card, 'lasts') / 3600 / 0.5, 6);
  });

  it('takes what fuel hands over, and tells the melts of a bottle', async () => {
    const ask = conversation();
    const fuel = await cardOf('fuel propane amount=5 kg metal=aluminium', ask);
    const card = await cardOf('burner for=last', ask);
    expect(value(card, 'propane') * 3600).toBeCloseTo(Number.parseFloat(fuel.handsOver.propane!), 2);
    expect(value(card, 'melts')).toBeGreaterThan(1);
  });

  it('draws the bottle’s pressure from rest, with the need', async () => {
    const card = await cardOf('burner 20 kW');
    const [panel] = card.chart!.panels;
    expect(panel!.series[0]!.points[0]![1]).toBeCloseTo(value(card, 'bottle_pressure'), 6);
    expect(panel!.lines![0]!.at).toBeCloseTo(value(card, 'needed'), 6);
    for (const [, low, high] of panel!.bands?.[0]?.points ?? []) expect(low).toBeLessThanOrEqual(high);
  });

  it.each(['warmed with a torch', 'in a warm water bath', 'with a heat blanket', 'warmed'])(
    'refuses a bottle %s, as a danger',
    async (how) => {
      const ask = conversation();
      const { error, cautions } = await errorOf(`burner 20 kW bottle=20 lb ${how}`, ask);
      expect(error).toMatchObject({ code: 'refused' });
      expect(error.what).toContain('relief valve');
      expect(cautions.map(({ id }) => id)).toContain('propane');
      expect(cautions[0]).toMatchObject({ id: 'warmed-cylinder', leads: true });
      expect((await ask(error.example)).kind).toBe('card');
    },
  );

  it.each([
    'burner 20 kW bottle=20 lb warm=torch',
    'burner warm the bottle with a torch',
    'burner 20 kW bottle=in hot water',
  ])('leads with the danger of a warmed bottle wherever on the line it stands: %s', async (line) => {
    const ask = conversation();
    const { error, cautions } = await errorOf(line, ask);
    expect(cautions[0]?.id).toBe('warmed-cylinder');
    if (!line.includes('warm=')) expect(error.what).toContain('is not to be warmed');
  });

  it('takes heat and a bottle apart for what they are', async () => {
    const { error, cautions } = await errorOf('burner heat 20 kW');
    expect(error.what).not.toContain('is not to be warmed');
    expect(cautions.map(({ id }) => id)).not.toContain('warmed-cylinder');
    expect((await cardOf('burner 20 kW bottle=20 lb')).cautions.map(({ id }) => id)).not.toContain('warmed-cylinder');
  });

  it('refuses more than the bottle has, with both numbers', async () => {
    const ask = conversation();
    const { error } = await errorOf('burner 20 kW pressure=400 kPa air=-20 °C', ask);
    expect(error).toMatchObject({ code: 'impossible' });
    expect(error.what).toMatch(/the bottle holds 1\d\d kPa .* takes 470 kPa/);
    expect((await ask(error.example)).kind).toBe('card');
  });

  it.each([
    ['burner charcoal', 'blast lump-charcoal'],
    ['burner waste oil', 'blast used-motor-oil'],
    ['burner methane', 'flame methane'],
    ['burner 20 kW fuel=coke', 'blast coke'],
    ['burner 5 kg aluminium', 'melt 5 kg aluminium'],
    ['burner propane', 'burner 20 kW'],
  ])('sends %s to %s', async (line, to) => {
    const ask = conversation();
    const { error } = await errorOf(line, ask);
    expect(error.example.replace(/^size /, '')).toBe(to);
    expect((await ask(error.example)).kind).toBe('card');
  });

  it.each([
    ['burner', 'needs a heat rate, or a jet'],
    ['burner pressure=100 kPa', 'needs a heat rate, or a jet'],
    ['burner 20 kW jet=no. 99', 'no drill number'],
    ['burner 20 kW pressure=600 kPa', 'lets out 400 kPa'],
    ['burner 20 kW pressure=150 kPa regulator=adjustable-low', 'lets out 100 kPa'],
    ['burner 300 kW jet=0.5 mm', 'through at most'],
    ['burner 20 kW pressure=10 psi abs', 'drives nothing'],
    ['burner 20 kW bottle=2000 lb', '2000 lb'],
  ])('refuses %s: %s', async (line, what) => {
    const ask = conversation();
    const { error, cautions } = await errorOf(line, ask);
    expect(error.what).toContain(what);
    expect((await ask(error.example)).kind).toBe('card');
    expect(cautions.at(-1)?.id).toBe('local-rules');
  });

  it('answers or refuses any burner on any day, never with a number that is none', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 1, max: 120 }),
        fc.integer({ min: 2, max: 400 }),
        fc.integer({ min: -30, max: 45 }),
        fc.constantFrom('11 lb', '20 lb', '100 lb'),
        fc.integer({ min: 5, max: 100 }),
        async (kW, kPa, air, bottle, fill) => {
          const line = `burner ${kW} kW pressure=${kPa} kPa air=${air} °C bottle=${bottle} fill=${fill}%`;
          const reply = await conversation()(line);
          if (reply.kind === 'error') {
            expect(['impossible', 'out-of-range'], reply.error.what).toContain(reply.error.code);
            return;
          }
          for (const { value: found, range } of reply.card.figures) {
            expect(Number.isFinite(found)).toBe(true);
            if (range) expect(range.low).toBeLessThanOrEqual(range.high);
          }
        },
      ),
      { numRuns: 10 },
    );
  }, 60_000);
});
