import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { daysBetween, plainDay, readDay } from '../../core/dry/calendar.ts';
import { answerLine } from '../answer.ts';
import type { Card } from '../card.ts';
import { inProcessMemory } from '../memory.ts';

const now = new Date('2026-03-01T21:30:00Z');
const conversation = () => {
  const context = { asker: 'a', place: 'p', now, memory: inProcessMemory() };
  return (line: string) => answerLine(line, context);
};

async function cardOf(line: string, ask = conversation()): Promise<Card> {
  const reply = await ask(line);
  if (reply.kind === 'error') throw new Error(`${line}: ${reply.error.what}`);
  return reply.card;
}

async function errorOf(line: string) {
  const reply = await conversation()(line);
  if (reply.kind === 'card') throw new Error(`${line} was answered: ${reply.card.headline}`);
  return reply;
}

const figure = (card: Card, id: string) => card.figures.find((one) => one.id === `dry.${id}`)!;
const ids = (card: Card) => card.cautions.map(({ id }) => id);
const lit = (card: Card) => daysBetween(readDay(card.handsOver.from!), readDay(card.handsOver.lit!));
const days = (card: Card) => figure(card, 'ready').value / 86_400;

describe('dry', () => {
  it('dates the first fire by the late end of the days, in plain words', async () => {
    const card = await cardOf('dry 1.5 in clay-sand from=2026-02-10');
    const late = figure(card, 'ready').range!.high / 86_400;
    expect(lit(card)).toBe(Math.ceil(late));
    expect(card.headline).toContain(`before ${plainDay(readDay(card.handsOver.lit!))}`);
    expect(card.headline).toContain('110 °C');
    expect(card.table!.rows[0]![0]).toBe('Tuesday 10 February 2026');
  });

  it('counts from today where nobody says, and says so', async () => {
    const card = await cardOf('dry 1.5 in clay-sand');
    expect(card.handsOver.from).toBe('2026-03-01');
    expect(card.assumed).toContainEqual({ text: 'rammed today, Sunday 1 March 2026', override: 'from=2026-03-01' });
  });

  it('says so where the late end has passed, and still asks for scale, hand and glass', async () => {
    const card = await cardOf('dry 1.5 in clay-sand from=2025-11-01');
    expect(card.headline).toMatch(/^1.5 in of .* has had its days since .* 2025: lit if scale/);
    expect(card.handsOver.lit).toBe('2026-03-01');
    expect(card.plan?.[0]?.id).toBe('warm');
  });

  it('asks of a castable that it is set, not that it has lost its water', async () => {
    const warm = (await cardOf('dry 50 mm castable')).plan?.find(({ id }) => id === 'warm');
    expect(warm?.holds.join()).toContain('set as its bag says');
    expect(warm?.holds.join()).not.toContain('% a day');
    const aired = (await cardOf('dry 50 mm clay-sand')).plan?.find(({ id }) => id === 'warm');
    expect(aired?.holds.join()).toContain('0.5 % a day');
  });

  it('waits longer for what is thicker, damper, colder, stiller or covered', async () => {
    const plain = days(await cardOf('dry 40 mm clay-sand'));
    for (const slower of [
      'dry 60 mm clay-sand',
      'dry 40 mm clay-sand humidity=80%',
      'dry 40 mm clay-sand air=8 °C',
      'dry 40 mm clay-sand wind=indoors',
      'dry 40 mm clay-sand cover=throughout',
      'dry 40 mm clay-sand; 50 mm perlite-clay',
    ])
      expect(days(await cardOf(slower)), slower).toBeGreaterThan(plain);
    for (const sooner of [
      'dry 25 mm clay-sand',
      'dry 40 mm clay-sand open=both sides',
      'dry 40 mm clay-sand wind=breezy',
    ])
      expect(days(await cardOf(sooner)), sooner).toBeLessThan(plain);
  });

  it('airs no castable: a day moist, then the fire, twice as slow for low cement', async () => {
    const plain = await cardOf('dry 50 mm castable');
    const low = await cardOf('dry 50 mm low-cement castable');
    expect(lit(plain)).toBe(2);
    expect(figure(low, 'fire').value).toBeGreaterThan(1.7 * figure(plain, 'fire').value);
    expect(ids(low)).toContain('caustic');
    expect(ids(low)).not.toContain('portland');
    expect(plain.table!.rows[0]![1]).toContain('wet-covered');
  });

  it('lets no pore be wet above what the weakest such body bears', async () => {
    for (const line of ['dry 40 mm clay-sand', 'dry 40 mm castable', 'dry 60 mm insulating castable']) {
      const card = await cardOf(line);
      const limit_K = figure(card, 'limit').value;
      const [, climb] = card.chart!.panels[0]!.series[0]!.points;
      expect(climb![1], line).toBeLessThanOrEqual(limit_K);
    }
  });

  it('has a version without a thermometer that lasts as long, and carries charcoal’s cautions', async () => {
    const ask = conversation();
    const first = await cardOf('dry 1.5 in clay-sand', ask);
    const card = await cardOf('again heat=charcoal', ask);
    expect(ids(card)).toContain('charcoal');
    expect(card.headline).toBe(first.headline);
    const fires = card.table!.rows.filter(([when]) => when!.startsWith('fire'));
    expect(fires).toHaveLength(4);
    expect(fires[0]![1]).toContain('3 to 5 lit lumps');
    expect(fires.at(-1)![0]).toBe(first.table!.rows.at(-1)![0]);
  });

  it('takes what size, wall and mix hand over', async () => {
    const ask = conversation();
    const sized = await cardOf('size can 20 gal crucible=6 in x 8 in', ask);
    const furnace = await cardOf('dry for=last', ask);
    expect(furnace.given[0]).toContain('from size can');
    expect(furnace.table!.rows.some(([, what]) => what!.includes('Loose fill'))).toBe(true);
    expect(figure(furnace, 'dry_mass').value).toBeGreaterThan(10);
    expect(sized.handsOver.layers).toContain('clay-sand');
    const mixed = await cardOf('dry for=(mix 30 L) thickness=40 mm');
    expect(figure(mixed, 'dry_mass').value).toBeCloseTo(0.03 * 1850, 3);
    const wall = await cardOf('dry for=(wall 40 mm castable; 60 mm perlite)');
    expect(wall.headline).toContain('40 mm of dense castable');
    const unsaid = await cardOf('dry for=(mix 30 L)');
    expect(unsaid.headline).toContain('32 to 65 mm of rammed clay');
    expect(unsaid.assumed.map(({ override }) => override)).toContain('thickness=40 mm');
    // Not said is taken at its late and slow end.
    expect(lit(unsaid)).toBeGreaterThan(lit(mixed));
    expect(figure(unsaid, 'fire').value).toBe(figure(await cardOf('dry 65 mm clay-sand'), 'fire').value);
  });

  it('hands on what wall can take', async () => {
    const ask = conversation();
    await cardOf('dry 1.5 in clay-sand; 2 in vermiculite', ask);
    expect((await cardOf('wall for=last', ask)).given[0]).toContain('from dry');
  });
});

describe('dry, by the scale', () => {
  const at = (weighed: string, more = '') =>
    `dry 40 mm clay-sand amount=15 L from=2026-02-01 weighed=${weighed}${more}`;

  it('says dry where nothing is lost over long enough, and may be lit from today on', async () => {
    const card = await cardOf(at('29.0 kg day 10; 29.0 kg day 18'));
    expect(card.headline).toMatch(/^Dry by the scale/);
    expect(days(card)).toBe(18);
    expect(card.handsOver.lit).toBe('2026-03-01');
    expect(ids(card)).not.toContain('lining-water-left');
  });

  it('says wet where it goes on losing, with the danger and a later day', async () => {
    const card = await cardOf(at('30 kg day 5; 29.3 kg day 8'));
    expect(card.headline).toMatch(/^Still wet: 0.8/);
    expect(lit(card)).toBeGreaterThan(8);
    expect(ids(card)).toContain('lining-water-left');
    expect(figure(card, 'left').range!.high).toBeGreaterThan(figure(card, 'left').value);
    expect(card.table!.rows.every(([when]) => !when!.includes('1 February'))).toBe(true);
  });

  it('reads days and dates, pounds and kilograms', async () => {
    const [days, dates] = [
      await cardOf(at('30 kg day 5; 29.3 kg day 8')),
      await cardOf(at('30 kg on 2026-02-06; 29.3 kg 2026-02-09')),
    ];
    expect(dates.headline).toBe(days.headline);
    const pounds = await cardOf(at('66.1387 lb day 5; 64.5955 lb day 8', ' units=metric'));
    expect(figure(pounds, 'loss').value).toBeCloseTo(figure(days, 'loss').value, 4);
  });

  it('does not take "dry" for an answer where the weighings say wet', async () => {
    const { error, cautions } = await errorOf(at('30 kg day 5; 29.3 kg day 8', ' happened=dry'));
    expect(error.code).toBe('unfit');
    expect(error.what).toContain('0.84 % of its dry mass a day');
    expect(cautions.map(({ id }) => id)).toContain('damp-lining');
  });

  it('believes an unweighed "dry" only from the late end on', async () => {
    const early = await cardOf('dry 1.5 in clay-sand from=2026-02-20 happened=dry');
    expect(lit(early)).toBeGreaterThan(9);
    expect(ids(early)).toContain('lining-water-left');
    const late = await cardOf('dry 1.5 in clay-sand from=2025-12-01 happened=dry');
    expect(ids(late)).not.toContain('lining-water-left');
  });
});

describe('dry, when something comes between', () => {
  const line = 'dry 1.5 in clay-sand from=2026-02-10';

  it('starts the air anew after rain', async () => {
    const ask = conversation();
    const before = lit(await cardOf(line, ask));
    const card = await cardOf('again happened=rained on=2026-02-22', ask);
    expect(lit(card)).toBe(before + 12);
    expect(card.headline).toMatch(/^Rain puts it back/);
    expect(card.table!.rows[0]!.slice(0, 2)).toEqual(['Sunday 22 February 2026', expect.stringContaining('No heat')]);
    expect(ids(card)).toContain('lining-water-left');
  });

  it('holds where it steams, with the danger', async () => {
    const card = await cardOf(`${line} happened=steams on=2026-03-01`);
    expect(card.headline).toMatch(/^Steam: do not go hotter/);
    expect(ids(card)).toContain('lining-water-left');
    expect(lit(card)).toBe(20);
  });

  it('moves what is late, and drops what is past', async () => {
    const card = await cardOf(`${line} happened=late on=2026-06-01`);
    expect(card.handsOver.lit).toBe('2026-06-01');
    expect(card.table!.rows[0]![1]).toContain('drying fire');
  });

  it('leads with the danger where the time is short, and refuses where no schedule fits', async () => {
    const card = await cardOf(`${line} within=26 h`);
    expect(card.cautions[0]).toMatchObject({ id: 'damp-lining-fast', leads: true });
    expect((await errorOf(`${line} within=8 h`)).error.what).toContain('its quickest schedule takes 24 h');
  });
});

describe('dry refuses', () => {
  it.each([
    ['dry', 'missing', 'what the lining is'],
    ['dry ramming plastic', 'missing', 'how thick'],
    ['dry 0 mm clay-sand', 'out-of-range', '0 mm'],
    ['dry 200 mm clay-sand', 'out-of-range', '200 mm'],
    ['dry 40 mm clay-sand humidity=120%', 'out-of-range', '120 %'],
    ['dry 40 mm clay-sand humidity=100%', 'unfit', '100 %'],
    ['dry 40 mm clay-sand air=2 °C', 'unfit', 'frost'],
    ['dry 40 mm castable air=30 °F', 'unfit', 'frost'],
    ['dry 40 mm gypsum plaster', 'unfit', 'no lining'],
    ['dry 40 mm vermiculite', 'unfit', 'put in dry'],
    ['dry 40 mm jelly', 'unknown-name', 'jelly'],
    ['dry 40 mm clay-sand thickness=50 mm', 'ambiguous', '50 mm'],
    ['dry 40 mm clay-sand recipe=castable', 'ambiguous', 'dense castable'],
    ['dry 40 mm clay-sand from=1/3/2026', 'unreadable', '1/3/2026'],
    ['dry 40 mm clay-sand from=2026-03-01 happened=late on=2026-02-01', 'impossible', 'before it was rammed'],
    ['dry 40 mm clay-sand on=2026-04-01', 'missing', 'not what'],
    ['dry 40 mm clay-sand weighed=30 kg day 5', 'missing', 'one weighing'],
    ['dry 40 mm clay-sand weighed=30 kg; 29 kg', 'unreadable', '30 kg'],
    ['dry 40 mm clay-sand weighed=30 kg day 5; 29 kg day 4', 'unreadable', 'day 4'],
    ['dry 40 mm clay-sand hot=60 °C', 'impossible', 'drying hold'],
  ])('%s: %s', async (line, code, what) => {
    const { error, cautions } = await errorOf(line);
    expect(error.code).toBe(code);
    expect(error.what).toContain(what);
    expect(cautions.map(({ id }) => id)).toContain('damp-lining');
    expect(cautions.at(-1)?.id).toBe('local-rules');
    const again = await conversation()(error.example);
    if (again.kind === 'error') expect.fail(`"${error.example}": ${again.error.what}`);
  });
});

describe('any dry', () => {
  it('answers in finite numbers, in order, with water as the greatest care', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 5, max: 140 }),
        fc.constantFrom(
          'clay-sand',
          'castable',
          'low-cement castable',
          'insulating castable',
          'perlite-clay',
          'ramming plastic',
        ),
        fc.integer({ min: 8, max: 35 }),
        fc.integer({ min: 20, max: 70 }),
        fc.constantFrom('', ' heat=charcoal', ' where=sun', ' where=indoors', ' open=both sides'),
        async (mm, lining, air, humidity, more) => {
          const line = `dry ${mm} mm ${lining} air=${air} °C humidity=${humidity}%${more}`;
          const reply = await conversation()(line);
          if (reply.kind === 'error') {
            expect(reply.error.code).toBe('unfit');
            return;
          }
          const { card } = reply;
          for (const { value, range, id } of card.figures) {
            expect(Number.isFinite(value), `${line}: ${id}`).toBe(true);
            if (!range) continue;
            expect(range.low, id).toBeLessThanOrEqual(value * (1 + 1e-9));
            expect(range.high, id).toBeGreaterThanOrEqual(value * (1 - 1e-9));
          }
          for (const { gives, inputs } of card.working)
            expect([...Object.values(gives), ...Object.values(inputs)].every(Number.isFinite)).toBe(true);
          expect(ids(card)).toContain('damp-lining');
          expect(ids(card).at(-1)).toBe('local-rules');
          expect(card.headline.length).toBeLessThan(400);
        },
      ),
      { numRuns: 40 },
    );
  });
});
