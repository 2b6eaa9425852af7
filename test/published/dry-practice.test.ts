import { describe, expect, it } from 'vitest';
import { answerLine } from '../../commands/answer.ts';
import type { Card } from '../../commands/card.ts';
import { inProcessMemory } from '../../commands/memory.ts';
import { airDrying } from '../../core/dry/air-drying.ts';
import { outside } from './outside.ts';

/**
 * What is told of a pot of clay and sand with a wall of 1.5 in, "common practice, no source": about three weeks in cool
 * shade, lightly covered; a small fire of eight to nine hours at two weeks; a first burn raised slowly with scrap wood.
 * And of a rammed lining of 25 mm: three to seven days at 20 °C and 50 %, two and a half times that at 40 mm.
 */
const practice = 'common practice, no source';
const day_s = 86_400;

async function ask(line: string): Promise<Card> {
  const context = { asker: 'a', place: 'p', now: new Date('2026-03-01T12:00:00Z'), memory: inProcessMemory() };
  const reply = await answerLine(line, context);
  if (reply.kind === 'error') throw new Error(`${line}: ${reply.error.what}`);
  return reply.card;
}

function days(card: Card) {
  const { value, range } = card.figures.find(({ id }) => id === 'dry.ready')!;
  if (!range) throw new Error('no range of days');
  return { typical: value / day_s, low: range.low / day_s, high: range.high / day_s };
}

const shade = 'air=15 °C humidity=65% where=shade cover=throughout';

describe('three weeks in cool shade, lightly covered', () => {
  it('are within our range for a pot out of its mould, open on both sides, and near its middle', async () => {
    const { low, typical, high } = days(await ask(`dry 1.5 in clay-sand ${shade} open=both sides`));
    expect(low).toBeLessThan(21);
    expect(high).toBeGreaterThan(21);
    outside({
      subject: 'pot of clay and sand, 1.5 in, cool shade, cloth on, both sides open',
      quantity: 'time until air-dry',
      ours: typical,
      theirs: 21,
      unit: 'd',
      source: practice,
      tolerance: (high - low) / 2,
      reason: 'half of our own central 95 % range',
    });
  });

  it('are within our range in its can too, but earlier than most of it: there the scale should speak', async () => {
    const { low, typical, high } = days(await ask(`dry 1.5 in clay-sand ${shade}`));
    expect(low).toBeLessThan(21);
    expect(typical).toBeGreaterThan(21);
    expect(high).toBeGreaterThan(42);
  });
});

describe('a small fire of eight to nine hours at two weeks', () => {
  it('is as long as the climb to the first hold and that hold', async () => {
    const hold = (await ask('dry 1.5 in clay-sand air=15 °C')).figures.find(({ id }) => id === 'dry.first_hold')!;
    outside({
      subject: 'clay and sand, 1.5 in, drying fire',
      quantity: 'time to the end of the first hold',
      ours: hold.value / 3600,
      theirs: 8.5,
      unit: 'h',
      source: practice,
      tolerance: (hold.range!.high - hold.range!.low) / 2 / 3600,
      reason: 'half of the range from the quickest to the slowest that our schedule allows',
    });
  });

  it('meets a lining that still holds more than 1 %: it is the fire that dries it, not the one that follows', () => {
    const pot = airDrying({
      thickness_m: 0.0381,
      open_sides: 2,
      dry_kg_m2: 0.0381 * 1850,
      free_kg_m2: 0.0381 * 1850 * 0.055,
      diffusivity_m2_s: 2e-9,
      activation_J_mol: 25e3,
      access: 0.8 * 0.4,
      covered_s: 1.5 * day_s,
      air_K: 288.15,
      humidity: 0.65,
      exchange_W_m2K: 4,
      sun_W_m2: 0,
      until: { left: 0.01, loss_per_day: 0.005 },
    });
    expect(pot.leftAt(14 * day_s)).toBeGreaterThan(0.01);
    expect(pot.leftAt(14 * day_s)).toBeLessThan(0.03);
  });
});

describe('a first burn raised slowly with scrap wood', () => {
  it('is the third of our four coal stages, before any blast', async () => {
    const card = await ask('dry 1.5 in clay-sand heat=charcoal');
    const fires = card.table!.rows.filter(([when]) => when!.startsWith('fire'));
    expect(fires.map(([, what]) => /scrap wood/.test(what!))).toEqual([false, false, true, false]);
    expect(fires.map(([, what]) => /no blast|natural draught|lowest blast/.test(what!))).toEqual([
      true,
      true,
      true,
      true,
    ]);
  });
});

describe('three to seven days for 25 mm at 20 °C and 50 %', () => {
  const inAir = 'air=20 °C humidity=50% where=shade open=both sides';

  it('overlap our range for a piece open on both sides, and are at its early end for a lining in its can', async () => {
    const free = days(await ask(`dry 25 mm clay-sand ${inAir}`));
    expect(free.low).toBeLessThan(7);
    expect(free.high).toBeGreaterThan(3);
    expect(free.typical).toBeLessThan(7);
    const canned = days(await ask(`dry 25 mm clay-sand ${inAir} open=bore only`.replace('open=both sides ', '')));
    expect(canned.low).toBeLessThan(7);
    expect(canned.typical).toBeGreaterThan(5);
  });

  it('become two and a half times as many at 40 mm by the square law; ours lie between that and the plain law', async () => {
    const time = (thickness_m: number) =>
      airDrying({
        thickness_m,
        open_sides: 1,
        dry_kg_m2: thickness_m * 1850,
        free_kg_m2: thickness_m * 1850 * 0.055,
        diffusivity_m2_s: 2e-9,
        activation_J_mol: 25e3,
        access: 0.6,
        covered_s: 0,
        air_K: 293.15,
        humidity: 0.5,
        exchange_W_m2K: 4,
        sun_W_m2: 0,
        until: { left: 0.01, loss_per_day: 0.005 },
      }).time_s;
    const ratio = time(0.04) / time(0.025);
    expect(ratio).toBeGreaterThan(40 / 25);
    expect(ratio).toBeLessThan((40 / 25) ** 2);
  });
});
