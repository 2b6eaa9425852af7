import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cardOf, conversation, errorOf } from '../../test/contract/conversation.ts';
import type { Card } from '../card.ts';

const figure = (card: Card, id: string) => card.figures.find((one) => one.id === `flame.${id}`);
const value = (card: Card, id: string) => figure(card, id)?.value ?? Number.NaN;

describe('flame', () => {
  it('calls its temperature an upper bound, and says what real flames have of it', async () => {
    const card = await cardOf('flame propane excess=0%');
    // 2267 K at 25 °C; the card's air is 5 K colder and holds some water.
    expect(value(card, 'temperature')).toBeGreaterThan(2235);
    expect(value(card, 'temperature')).toBeLessThan(2270);
    expect(figure(card, 'temperature')?.label).toContain('upper bound');
    expect(figure(card, 'real')?.range?.high).toBeCloseTo(value(card, 'temperature') - 100, 9);
    expect(card.headline).toContain('at most, 100 to 400 K less in fact');
  });

  it('leaves less in the furnace with more air and with a hotter flue, more with warm air', async () => {
    const plain = value(await cardOf('flame propane excess=10% flue=1000 °C'), 'left');
    expect(value(await cardOf('flame propane excess=50% flue=1000 °C'), 'left')).toBeLessThan(plain - 0.1);
    expect(value(await cardOf('flame propane excess=10% flue=1200 °C'), 'left')).toBeLessThan(plain);
    expect(value(await cardOf('flame propane excess=10% flue=1000 °C air=400 °C'), 'left')).toBeGreaterThan(plain);
  });

  it('names both heating values', async () => {
    const card = await cardOf('flame propane');
    expect(card.headline).toMatch(/of its lower heating value \(\d+ % of the higher\)/);
    expect(value(card, 'higher_heat') / value(card, 'lower_heat')).toBeCloseTo(1.086, 2);
    expect(value(card, 'left_higher')).toBeLessThan(value(card, 'left'));
  });

  it('turns a reading into excess air, with the meter’s doubt', async () => {
    const card = await cardOf('flame propane reads=4%');
    // e = 0.916 × 4 / (20.95 − 4), a hair off for the water in the air.
    expect(value(card, 'excess')).toBeCloseTo((0.916 * 0.04) / (0.2095 - 0.04), 2);
    expect(figure(card, 'excess')?.range?.low).toBeLessThan(value(card, 'excess'));
    expect(value(card, 'oxygen')).toBeCloseTo(0.04, 6);
  });

  it('puts carbon monoxide first where the flame is short of air, and only there', async () => {
    const rich = await cardOf('flame propane excess=-10%');
    expect(rich.cautions[0]).toMatchObject({ id: 'rich-flame', severity: 'danger', leads: true });
    expect(value(rich, 'carbon_monoxide')).toBeGreaterThan(0.02);
    expect((await cardOf('flame propane excess=10%')).cautions.map(({ id }) => id)).not.toContain('rich-flame');
  });

  it('gives a range where ash and water are not known, and names how to find out', async () => {
    const card = await cardOf('flame wood');
    const range = figure(card, 'temperature')!.range!;
    expect(range.high - range.low).toBeGreaterThan(100);
    expect(card.doubt).toMatch(/water in the fuel .*weigh 200 g/);
    const known = figure(await cardOf('flame wood moisture=20%'), 'temperature')!.range!;
    expect(known.high - known.low).toBeLessThan(range.high - range.low);
    // Of charcoal it is the heating value, and that nobody measures at home.
    expect((await cardOf('flame briquettes')).doubt).toContain('no way at home');
  });

  it('names what is doubted most and how to measure it, of a gas that is known too', async () => {
    for (const line of ['flame propane', 'flame methane excess=30% flue=1100 °C', 'flame charcoal']) {
      const { doubt } = await cardOf(line);
      expect(doubt, line).toMatch(/:/);
      expect(doubt, line).not.toContain('nothing that was sampled');
      expect(doubt, line).toMatch(/reads?|thermocouple|meter|weigh|states?/);
    }
  });

  it('is enriched by oxygen', async () => {
    const air = value(await cardOf('flame propane'), 'temperature');
    expect(value(await cardOf('flame propane oxygen=23%'), 'temperature')).toBeGreaterThan(air + 50);
  });

  it('draws the same numbers that it says', async () => {
    const card = await cardOf('flame propane excess=0%');
    const [flame] = card.chart!.panels[0]!.series;
    const nearest = flame!.points.reduce((best, point) => (Math.abs(point[0]) < Math.abs(best[0]) ? point : best));
    expect(Math.abs(nearest[1] - value(card, 'temperature'))).toBeLessThan(20);
  });

  it('burns with the air and the flue that fuel burned with', async () => {
    const ask = conversation();
    await cardOf('fuel propane amount=2 kg layers=2 in fibre blanket flue=900 °C', ask);
    const card = await cardOf('flame for=last', ask);
    expect(value(card, 'excess')).toBeCloseTo(0.15, 9);
    expect(card.headline).toContain('at a flue of 900 °C');
  });

  it('hands its fuel over', async () => {
    const ask = conversation();
    await cardOf('flame briquettes reads=5%', ask);
    expect((await cardOf('blast for=last', ask)).headline).toContain('charcoal briquettes');
  });

  it.each([
    ['flame 5 kg aluminium', 'melt'],
    ['flame brass', 'melt'],
  ])('sends %s to %s', async (line, to) => {
    const ask = conversation();
    const { error, cautions } = await errorOf(line, ask);
    expect(error.example).toMatch(new RegExp(`^(size )?${to} `));
    expect((await ask(error.example)).kind).toBe('card');
    expect(cautions.at(-1)?.id).toBe('local-rules');
  });

  it.each([
    ['flame plutonium', 'no fuel is called'],
    ['flame propane excess=10% reads=3%', 'both excess air (10%) and an oxygen reading (3%)'],
    ['flame propane ash=5%', 'is a gas'],
    ['flame coke excess=-58%', 'smokes'],
    ['flame propane oxygen=15% reads=16%', 'holds as much as the air'],
    ['flame wood ash=50% moisture=50%', 'leave'],
    ['flame propane excess=-100%', '-100'],
  ])('refuses %s: %s', async (line, what) => {
    const ask = conversation();
    const { error } = await errorOf(line, ask);
    expect(error.what).toContain(what);
    expect((await ask(error.example)).kind).toBe('card');
  });

  it('answers or refuses any mixture of its options, never with a number that is none', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(
          'propane',
          'wood',
          'lump charcoal',
          'briquettes',
          'coke',
          'diesel',
          'used motor oil',
          'methane',
        ),
        fc.integer({ min: -60, max: 300 }),
        fc.integer({ min: -30, max: 1000 }),
        fc.integer({ min: 15, max: 100 }),
        async (fuel, excess, air, oxygen) => {
          const reply = await conversation()(`flame ${fuel} excess=${excess}% air=${air} °C oxygen=${oxygen}%`);
          if (reply.kind === 'error') {
            expect(reply.error.example).not.toBe('');
            return;
          }
          for (const { value: found, range } of reply.card.figures) {
            expect(Number.isFinite(found)).toBe(true);
            if (range) expect(range.low).toBeLessThanOrEqual(range.high);
          }
        },
      ),
      { numRuns: 12 },
    );
  }, 60_000);
});
