import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findPour, pours } from '../../core/materials/catalogue.ts';
import { readQuantity } from '../../core/quantity/parse.ts';
import { answerLine } from '../answer.ts';
import type { Card } from '../card.ts';
import { inProcessMemory } from '../memory.ts';

const talk = () => {
  const context = { asker: 'ann', place: 'shed', now: new Date(0), memory: inProcessMemory() };
  return (line: string) => answerLine(line, context);
};

async function cardOf(line: string, ask = talk()): Promise<Card> {
  const reply = await ask(line);
  if (reply.kind === 'error') throw new Error(`${line}: ${reply.error.what}`);
  return reply.card;
}

async function refusalOf(line: string) {
  const reply = await talk()(line);
  if (reply.kind === 'card') throw new Error(`${line} was answered: ${reply.card.headline}`);
  return reply;
}

const value = (card: Card, id: string) => card.figures.find((one) => one.id === `melt.${id}`)?.value ?? Number.NaN;
const leads = (cautions: Card['cautions']) => cautions.filter((one) => one.leads).map(({ id }) => id);

describe('how much of which metal', () => {
  it.each([
    ['melt 5 kg aluminium', 'aluminium', 5],
    ['melt 5kg of Aluminum', 'aluminium', 5],
    ['melt aluminium 5 kg', 'aluminium', 5],
    ['melt 5 aluminium', 'aluminium', 5],
    ['melt 10 lb brass', 'brass', 4.5359237],
    ['melt 1 1/2 lb tin', 'tin', 0.680388555],
    ['melt 8 oz pewter', 'tin', 0.226796185],
    ['melt 5 kg metal=bronze', 'bronze', 5],
    ['melt 3 kg ounce metal', 'red brass', 3],
    ['melt 2000 g C36000', 'brass cuzn39pb3', 2],
  ])('"%s"', async (line, metal, mass_kg) => {
    const card = await cardOf(line);
    expect(card.handsOver.metal).toBe(metal);
    expect(value(card, 'mass')).toBeCloseTo(mass_kg, 9);
  });

  it('by volume is liquid of that volume', async () => {
    const card = await cardOf('melt 2 L bronze');
    expect(value(card, 'volume')).toBeCloseTo(0.002, 9);
    expect(value(card, 'mass')).toBeCloseTo(0.002 * findPour('bronze').liquid_density_kg_m3.typical, 9);
    expect(card.figures.find(({ id }) => id === 'melt.mass')?.range).toBeDefined();
  });

  it('takes the form of the scrap from the words', async () => {
    const cans = await cardOf('melt 5 kg aluminium cans');
    expect(value(cans, 'lost')).toBeGreaterThan(3 * value(await cardOf('melt 5 kg aluminium'), 'lost'));
    expect(value(await cardOf('melt 5 kg aluminium scrap=cans'), 'lost')).toBe(value(cans, 'lost'));
  });

  it('is answered for every metal and name of the catalogue', async () => {
    for (const { id, name, aliases } of pours)
      for (const said of [id, name, ...aliases]) {
        const card = await cardOf(`melt 3 kg ${said}`);
        expect(findPour(card.handsOver.metal ?? '').id, said).toBe(id);
        expect(card.figures.every((one) => Number.isFinite(one.value))).toBe(true);
      }
  });
});

describe('a wrong question is turned to the right one', () => {
  it.each([
    ['melt 5 kg charcoal', 'unfit', /is a fuel/],
    ['melt propane', 'unfit', /is a fuel/],
    ['melt aluminium', 'missing', /how much aluminium/],
    ['melt 3 kg', 'missing', /does not say of which metal/],
    ['melt 5 kg alumunium', 'unknown-name', /no metal/],
    ['melt 5 kg gold', 'unknown-name', /no metal/],
    ['melt 5 kg steel', 'unfit', /1500 °C/],
    ['melt 0 kg aluminium', 'out-of-range', /0 g/],
    ['melt 5 m aluminium', 'wrong-dimension', /length/],
    ['melt 2,000 g copper', 'ambiguous', /2 kg/],
    ['melt 900 kg aluminium', 'out-of-range', /200 L/],
    ['melt 5 kg aluminium pour=500 °C', 'out-of-range', /615 °C/],
    ['melt 5 kg aluminium from=700 °C', 'out-of-range', /600 °C/],
    ['melt 5 kg aluminium crucible=A6', 'unreadable', /maker/],
    ['melt 5 kg aluminium scrap=swraf', 'unknown-name', /no form/],
    ['melt 5 kg brass material=steel', 'unfit', /1070 °C.*847 °C/],
  ])('"%s"', async (line, code, says) => {
    const { error } = await refusalOf(line);
    expect(error.code).toBe(code);
    expect(error.what).toMatch(says);
    const again = await talk()(error.example);
    if (again.kind === 'error') expect.fail(`"${error.example}": ${again.error.what}`);
  });

  it('names the nearest metal for a slip, and none for a word far off', async () => {
    expect((await refusalOf('melt 5 kg alumunium')).error.example).toBe('melt 5 kg aluminium');
    expect((await refusalOf('melt 5 kg gold')).error.example).not.toContain('lead');
  });
});

describe('what is never melted', () => {
  it.each([
    ['melt 2 kg magnesium', 'magnesium'],
    ['melt 2 kg magnesium wheels', 'magnesium'],
    ['melt 1 kg beryllium copper', 'beryllium'],
    ['melt 5 kg aluminium aerosol cans', 'closed-scrap'],
    ['melt 5 kg shock absorbers', 'closed-scrap'],
    ['melt 5 kg sealed scrap', 'closed-scrap'],
    ['melt 1 kg cadmium', 'cadmium'],
  ])('"%s" is refused, the danger first', async (line, danger) => {
    const { error, cautions } = await refusalOf(line);
    expect(error.code).toBe('refused');
    expect(leads(cautions)).toContain(danger);
    expect(cautions.at(-1)?.id).toBe('local-rules');
  });

  it.each(['melt 3 kg brass place=indoors', 'melt 3 kg gunmetal place=garage', 'melt 3 kg lead place=my shed'])(
    '"%s": fume in a room leads',
    async (line) => {
      const { error, cautions } = await refusalOf(line);
      expect(error.code).toBe('refused');
      expect(leads(cautions)).toContain('fume-indoors');
    },
  );

  it('warns of aluminium indoors, and leads with nothing outdoors', async () => {
    expect(leads((await cardOf('melt 5 kg aluminium place=indoors')).cautions)).toContain('fire-indoors');
    expect(leads((await cardOf('melt 5 kg brass place=outside')).cautions)).toEqual([]);
  });
});

describe('fume and lead', () => {
  it('of every alloy with lead in it are said with the limit, each time', async () => {
    for (const { id, composition } of pours) {
      const card = await cardOf(`melt 3 kg ${id}`);
      const says = card.notes.join(' ');
      expect(says.includes('50 µg/m³'), id).toBe((composition.Pb ?? 0) > 0);
      expect(
        card.cautions.some((one) => one.id === 'lead-alloy'),
        id,
      ).toBe((composition.Pb ?? 0) > 0);
      const zinc = card.cautions.some((one) => one.id.startsWith('zinc'));
      expect(zinc, id).toBe((composition.Zn ?? 0) > 0);
    }
  });

  it('of zinc turn to a danger where the pour is above its boil', async () => {
    const ids = async (line: string) => (await cardOf(line)).cautions.map(({ id }) => id);
    expect(await ids('melt 3 kg brass')).toContain('zinc-melt-too-hot');
    expect(await ids('melt 3 kg zinc')).toContain('zinc-alloy');
  });
});

describe('the crucible', () => {
  it('takes several pours where it is too small', async () => {
    const card = await cardOf('melt 4 kg aluminium crucible=4 in x 5 in');
    expect(value(card, 'pours')).toBeGreaterThan(1);
    expect(value(card, 'pours') * value(card, 'holds')).toBeGreaterThanOrEqual(4);
    expect(card.headline).toContain('pours of');
  });

  it('of steel says what aluminium does to it', async () => {
    const card = await cardOf('melt 3 kg aluminium crucible=6 in x 8 in material=steel');
    expect(card.notes.join(' ')).toContain('iron makes it brittle');
  });
});

describe('a chain of questions', () => {
  const furnace = ['layers', 'bore', 'height', 'vent', 'finish', 'shell', 'lid', 'floor'] as const;

  it('carries the furnace on, with metal, amount, pour, heat and crucible', async () => {
    const ask = talk();
    const size = await cardOf('size can 20 gal crucible=6 in x 8 in', ask);
    const card = await cardOf('melt 5 kg aluminium for=last', ask);
    for (const name of [...furnace, 'crucible']) expect(card.handsOver[name], name).toBe(size.handsOver[name]);
    expect(card.handsOver).toMatchObject({ metal: 'aluminium', amount: '5 kg' });
    const read = (name: string, dimension: 'energy' | 'temperature') =>
      readQuantity(card.handsOver[name] ?? '', { dimensions: [dimension] }).si;
    // Six digits of heat, a tenth of a degree.
    expect(read('heat', 'energy') / value(card, 'heat')).toBeCloseTo(1, 5);
    expect(read('pour', 'temperature')).toBeCloseTo(value(card, 'pour'), 0);
  });

  it('hands on numbers that can be read one way only, whatever their size', async () => {
    for (const said of [
      '100 g tin',
      '3 lb tin',
      '10 lb tin',
      '90 lb bronze',
      '130 kg bronze',
      '0.7 L brass',
      '2 gal brass',
    ]) {
      const { heat = '', amount = '' } = (await cardOf(`melt ${said}`)).handsOver;
      expect(readQuantity(heat, { dimensions: ['energy'] }).si, said).toBeGreaterThan(1e3);
      expect(readQuantity(amount, { dimensions: ['mass'] }).si, said).toBeGreaterThan(0.05);
    }
  });

  it('is the same asked again through what it hands over', async () => {
    const card = await cardOf('melt 5 kg brass section=thin');
    const { metal, amount, pour, crucible } = card.handsOver;
    const again = await cardOf(`melt ${amount} ${metal} pour=${pour} crucible=${crucible}`);
    expect(value(again, 'heat')).toBeCloseTo(value(card, 'heat'), -2);
  });

  it('hears where it is melted in the words, as in an option', async () => {
    const reply = await talk()('melt 2 kg brass in the garage');
    expect(reply.kind === 'error' && reply.error.what).toMatch(/brass is not melted indoors/i);
    expect(reply.kind === 'error' && reply.error.example).toBe('melt 2 kg brass in the garage place=outdoors');
    expect(reply.kind === 'error' && reply.cautions[0]?.severity).toBe('danger');
    expect((await cardOf('melt 2 kg aluminium in my garage')).headline).toContain('aluminium');
  });

  it('lets the wall of that furnace be asked next', async () => {
    const ask = talk();
    await cardOf('melt 5 kg bronze for=(size can 20 gal crucible=6 in x 8 in)', ask);
    const card = await cardOf('wall for=last', ask);
    expect(card.given.join(' ')).toMatch(/from melt: metal, layers/);
  });
});

describe('the chart', () => {
  it('rises to the heat of the card, in words too', async () => {
    for (const { id } of pours) {
      const card = await cardOf(`melt 3 kg ${id}`);
      const points = card.chart?.panels[0]?.series[0]?.points ?? [];
      for (const [index, [x, y]] of points.entries()) {
        const before = points[index - 1];
        if (!before) continue;
        expect(x).toBeGreaterThan(before[0]);
        expect(y).toBeGreaterThan(before[1]);
      }
      expect(points.at(-1)?.[1]).toBeCloseTo(value(card, 'heat'), 0);
      expect(card.chart?.alt).toMatch(/°C.*°F|°F.*°C/);
    }
  });
});

it('answers or refuses whatever is typed, and never breaks', async () => {
  const word = fc.oneof(
    fc.constantFrom('5', 'kg', 'lb', 'L', 'of', 'aluminium', 'brass', 'cans', 'scrap', 'bronze', '-3', '1/0', '½', 'x'),
    fc.string({ maxLength: 8 }),
  );
  await fc.assert(
    fc.asyncProperty(fc.array(word, { maxLength: 6 }), async (words) => {
      const reply = await talk()(`melt ${words.join(' ')}`);
      if (reply.kind === 'error') expect(reply.error.example).not.toBe('');
    }),
    { numRuns: 200 },
  );
});
