import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cardOf, conversation, errorOf } from '../../test/contract/conversation.ts';
import type { Card } from '../card.ts';
import { readBlower, readPipe } from './read.ts';

const value = (card: Card, id: string) => card.figures.find((one) => one.id === `blast.${id}`)?.value ?? Number.NaN;
const plate = 'blower=35 cfm 2 inWC pipe=1.5 in x 5 ft';

describe('what is typed', () => {
  it('reads both ends of a blower, in any order', () => {
    for (const text of ['35 cfm 2 inWC', '2 inWC, 35 cfm', '35 cfm at 2 inWC', '35cfm 2inWC', '35 cfm; 2 inWC']) {
      const { free_m3_s, shut_Pa } = readBlower(text);
      expect(free_m3_s.typical).toBeCloseTo(0.016518, 5);
      expect(shut_Pa.typical).toBeCloseTo(498.2, 1);
    }
    expect(readBlower('shop vac')).toMatchObject({ name: 'a shop vacuum, blowing side', bleed: true });
    expect(() => readBlower('35 cfm')).toThrow(/one end/);
    expect(() => readBlower('toaster')).toThrow(/no blower is called/);
  });

  it('reads a pipe and what it is of', () => {
    const { bore_m, length_m, kind } = readPipe('1.5 in x 5 ft', 'US');
    expect([bore_m, length_m]).toEqual([expect.closeTo(0.0381, 9), expect.closeTo(1.524, 9)]);
    expect(kind).toBe('steel pipe');
    expect(readPipe('40 mm x 1.5 m rusty', 'metric')).toMatchObject({
      bore_m: 0.04,
      length_m: 1.5,
      kind: 'rusty steel pipe',
    });
    expect(readPipe('40 mm by 1.5 m of corrugated hose', 'metric').kind).toBe('corrugated hose');
    expect(readPipe('2" x 3 ft plastic', 'US').kind).toBe('smooth plastic');
    expect(() => readPipe('2 in', 'US')).toThrow(/not a bore and a length/);
    expect(() => readPipe('2 in x 3 ft cheese', 'US')).toThrow(/no pipe is made of/);
  });
});

describe('blast', () => {
  it('says enough, probably, or too little by how many samples meet the need', async () => {
    expect((await cardOf(`blast charcoal rate=35 kW ${plate}`)).headline).toMatch(
      /^Enough: .*met in 100 % of the cases/,
    );
    const little = await cardOf(`blast charcoal rate=90 kW ${plate}`);
    expect(little.headline).toMatch(/^Too little: .*What would help most/);
    expect(value(little, 'cover')).toBeLessThan(0.8);
  });

  it('says first that a blower is far more than the fire needs, and what to do about it', async () => {
    const { headline } = await cardOf(`blast charcoal rate=5 kW ${plate}`);
    expect(headline).toMatch(
      /^Enough, and far more than the fire needs: .*Throttle or bleed it: left open it feeds \d/,
    );
    expect((await cardOf('blast charcoal rate=5 kW blower=shop vac')).headline).toMatch(/ Bleed it: /);
    const near = await cardOf(`blast charcoal rate=35 kW ${plate}`);
    expect(value(near, 'cover')).toBeLessThan(2);
    expect(near.headline).not.toMatch(/far more|Throttle/);
  });

  it('needs as much air for a heat as for the fuel that holds it', async () => {
    const byRate = await cardOf(`blast lump charcoal rate=16389 W ${plate}`);
    // 2 kg/h of 29.5 MJ/kg, lower heating value.
    const byFuel = await cardOf(`blast 2 kg/h lump charcoal ${plate}`);
    expect(value(byRate, 'need') / value(byFuel, 'need')).toBeCloseTo(1, 3);
    expect((await cardOf(`blast 4.409 lb/h lump charcoal ${plate}`)).headline).toContain('needs');
  });

  it('takes what fuel hands over, and comes to the same air', async () => {
    const lines = ['charcoal', 'briquettes co=20%', 'coke excess=30%', 'diesel excess=25%'];
    for (const rest of lines) {
      const ask = conversation();
      const fuel = await cardOf(`fuel ${rest} amount=5 kg metal=aluminium`, ask);
      const card = await cardOf('blast for=last', ask);
      const dry_kg_s = value(card, 'need') * (card.working[0]?.gives.dry_density_kg_m3 ?? Number.NaN);
      // Handed over with four digits.
      expect((dry_kg_s * 3600) / Number.parseFloat(fuel.handsOver.flow!)).toBeCloseTo(1, 2);
    }
  });

  it('takes air as asked, by volume or by mass', async () => {
    expect(value(await cardOf(`blast charcoal flow=30 m3/h ${plate}`), 'need')).toBeCloseTo(30 / 3600, 9);
    const byMass = value(await cardOf(`blast charcoal flow=36 kg/h ${plate}`), 'need');
    expect(byMass * 3600).toBeGreaterThan(29.9);
    expect(byMass * 3600).toBeLessThan(31);
  });

  it('burns less fuel and gives less heat high up, through the same pipe', async () => {
    const low = await cardOf(`blast charcoal ${plate}`);
    const high = await cardOf(`blast charcoal ${plate} altitude=3000 m`);
    // Fan and losses both follow density: the volume stays, the oxygen does not.
    expect(value(high, 'flow') / value(low, 'flow')).toBeCloseTo(1, 1);
    expect(value(high, 'power') / value(low, 'power')).toBeLessThan(0.75);
  });

  it('gives less through bends, a longer or a narrower pipe', async () => {
    const plain = value(await cardOf(`blast charcoal ${plate}`), 'flow');
    expect(value(await cardOf(`blast charcoal ${plate} bends=4`), 'flow')).toBeLessThan(plain);
    for (const pipe of ['1.5 in x 15 ft', '1 in x 5 ft', '1.5 in x 5 ft hose'])
      expect(value(await cardOf(`blast charcoal blower=35 cfm 2 inWC pipe=${pipe}`), 'flow')).toBeLessThan(plain);
  });

  it('wants a wider pipe where the pipe takes the pressure, and a blower where it does not', async () => {
    const narrow = await cardOf('blast charcoal blower=100 cfm 2 inWC pipe=1 in x 6 ft');
    expect(narrow.headline).toContain('a pipe half as wide again');
    const wide = await cardOf('blast charcoal blower=20 cfm 2 inWC pipe=3 in x 3 ft');
    expect(wide.headline).toContain('a blower of twice the free flow');
    expect(wide.notes.join(' ')).toContain('A wider pipe would hardly help');
    // What the table promises is what comes of asking again.
    const gain = Number(/(\d+) % more air/.exec(narrow.headline)![1]) / 100;
    const again = await cardOf('blast charcoal blower=100 cfm 2 inWC pipe=1.5 in x 6 ft');
    expect(value(again, 'flow') / value(narrow, 'flow') - 1).toBeCloseTo(gain, 2);
  });

  it('tells what a valve takes, and to bleed a vacuum cleaner', async () => {
    const gate = await cardOf(`blast charcoal rate=8 kW ${plate}`);
    expect(value(gate, 'valve')).toBeGreaterThan(0);
    expect(gate.notes.join(' ')).toContain('a gate that takes');
    const vacuum = await cardOf('blast charcoal rate=8 kW blower=vacuum cleaner pipe=2 in x 5 ft');
    expect(vacuum.notes.join(' ')).toContain('by a bleed hole');
  });

  it('sums the losses to the pressure at the blower', async () => {
    const card = await cardOf(`blast charcoal ${plate} back=10 Pa`);
    const lost = value(card, 'pipe_loss') + value(card, 'tuyere_loss') + value(card, 'bed_loss') + 10;
    expect(lost / value(card, 'pressure')).toBeCloseTo(1, 6);
  });

  it('comes near the handbook’s cubic foot for 100 Btu where all carbon burns', async () => {
    const card = await cardOf(`blast charcoal co=0% ${plate}`);
    expect(value(card, 'handbook') / value(card, 'flow')).toBeGreaterThan(0.9);
    expect(value(card, 'handbook') / value(card, 'flow')).toBeLessThan(1.1);
  });

  it('warns of a stopped blower and of carbon monoxide', async () => {
    const card = await cardOf(`blast charcoal ${plate}`);
    expect(card.cautions.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['charcoal', 'blower-off', 'mains-blower', 'local-rules']),
    );
    expect(card.notes.join(' ')).toContain('Blower off');
  });

  it('takes the bore of a furnace that was sized', async () => {
    const ask = conversation();
    await cardOf('size can 31 gal fuel=charcoal', ask);
    const card = await cardOf('blast for=last', ask);
    expect(card.given.join(' ')).toMatch(/from size can: .*bore/);
  });

  it.each([
    ['blast propane', 'burner 20 kW'],
    ['blast natural gas', 'flame natural-gas'],
    ['blast 5 kg aluminium', 'melt 5 kg aluminium'],
  ])('sends %s to %s', async (line, to) => {
    const ask = conversation();
    const { error } = await errorOf(line, ask);
    expect(error.example.replace(/^size /, '')).toBe(to);
    expect((await ask(error.example)).kind).toBe('card');
  });

  it.each([
    ['blast charcoal blower=35 cfm', 'one end'],
    ['blast charcoal blower=toaster', 'no blower'],
    ['blast charcoal pipe=2 in', 'not a bore and a length'],
    ['blast charcoal blower=hair dryer back=900 Pa', 'no air goes in'],
    ['blast 3 furlongs charcoal', 'no fuel'],
    ['blast charcoal bends=90', '90'],
    ['blast 900 kg/h charcoal', '900 kg/h'],
    ['blast charcoal blower=shop vac pipe=0.5 in x 6 ft', 'more than a tenth'],
  ])('refuses %s: %s', async (line, what) => {
    const ask = conversation();
    const { error, cautions } = await errorOf(line, ask);
    expect(error.what).toContain(what);
    expect((await ask(error.example)).kind).toBe('card');
    expect(cautions.at(-1)?.id).toBe('local-rules');
  });

  it('answers or refuses any blower on any pipe, never with a number that is none', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom('charcoal', 'wood', 'coke', 'diesel', 'briquettes'),
        fc.integer({ min: 5, max: 300 }),
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 8, max: 120 }),
        fc.integer({ min: 0, max: 8 }),
        async (fuel, cfm, inWC, bore, bends) => {
          const line = `blast ${fuel} rate=15 kW blower=${cfm} cfm ${inWC} inWC pipe=${bore} mm x 2 m bends=${bends}`;
          const reply = await conversation()(line);
          if (reply.kind === 'error') {
            expect(reply.error.example).not.toBe('');
            return;
          }
          for (const { value: found, range } of reply.card.figures) {
            expect(Number.isFinite(found)).toBe(true);
            if (range) expect(range.low).toBeLessThanOrEqual(range.high);
          }
          for (const { series } of reply.card.chart!.panels)
            for (const { points } of series) expect(points.length).toBeGreaterThan(1);
        },
      ),
      { numRuns: 10 },
    );
  }, 60_000);
});
