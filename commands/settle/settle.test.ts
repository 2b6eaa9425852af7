import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { talk } from '../../test/contract/conversation.ts';
import type { Card } from '../card.ts';
import { splitOwn } from './read.ts';
import { shelf } from './shelf.ts';
import { support } from './support.ts';

const value = ({ figures }: Card, id: string) => figures.find((one) => one.id === id)?.value ?? Number.NaN;

describe('odds that theory knows', () => {
  it('are even where both sides are the same question, whatever it is', async () => {
    const { card } = talk();
    for (const line of [
      'wall 2 in clay-sand; 2 in vermiculite',
      'mix 30 L',
      'flame charcoal',
      'blast charcoal',
      'melt 5 kg aluminium',
      'size can 20 gal crucible=5 in x 6 in',
      'burner 20 kW',
    ]) {
      const answer = await card(`settle ${line} vs ${line}`);
      expect(value(answer, 'settle.odds'), line).toBe(0.5);
      expect(value(answer, 'settle.difference'), line).toBe(0);
      expect(answer.headline).toContain('too close to call');
      expect(answer.notes.join(' ')).toContain('40 % and 60 %');
    }
  }, 60_000);

  it('are certain where one side is the other and more: what they share cancels', async () => {
    const { card } = talk();
    const more = await card('settle mix 30 L vs mix 30.1 L by=dry_mass');
    expect(value(more, 'settle.odds')).toBe(1);
    // By volume alone: 0.1 L of 30, of the mass of 30 L.
    expect(value(more, 'settle.difference')).toBeCloseTo(value(more, 'settle.one') / 300, 6);
    const hotter = await card(
      'settle wall 2 in clay-sand; 2 in vermiculite vs wall 2 in clay-sand; 2.5 in vermiculite',
    );
    expect(value(hotter, 'settle.odds')).toBe(1);
    expect(hotter.headline).toMatch(/2\.5 in vermiculite is lower/);
  }, 60_000);
});

describe('a question of its own', () => {
  it('is answered with odds, a difference with its range, the inputs in order, a chart and the cautions of both', async () => {
    const { card } = talk();
    const answer = await card(
      'settle wall 2" clay-sand; 2" perlite vs wall 2" clay-sand; 2" vermiculite by=shell, stored at=hold 1 h, hot 1000 °C',
    );
    expect(value(answer, 'settle.odds')).toBeGreaterThan(0.6);
    const difference = answer.figures.find(({ id }) => id === 'settle.difference');
    expect(difference).toMatchObject({ unit: 'dK', rangeBasis: 'sampled' });
    expect(answer.figures.map(({ id }) => id)).toContain('settle.odds2');
    expect(answer.chart?.panels[0]?.series).toHaveLength(2);
    const shares = answer.table?.rows.map((row) => Number.parseInt(row[1] ?? '', 10)) ?? [];
    expect(shares.length).toBeGreaterThan(1);
    expect(shares).toEqual(shares.toSorted((a, b) => b - a));
    expect(answer.table?.rows[0]?.[0]).toMatch(/conducts/);
    expect(answer.cautions.at(-1)?.id).toBe('local-rules');
    // Perlite's side warns of its limit and vermiculite's of its dust: each side's, once.
    expect(answer.cautions.length).toBe(new Set(answer.cautions.map(({ id }) => id)).size);
    expect(answer.units).toBe('US');
    expect(answer.notes.join(' ')).toContain('heat-transient');
  }, 30_000);

  it('says how many samples there were, whether they settled, and how far off the model itself may be', async () => {
    const { card } = talk();
    const { notes } = await card('settle flame charcoal vs waste oil by=flame');
    const [told] = notes.filter((note) => note.includes('one standard error'));
    expect(told).toMatch(/^\d[\d,]* samples, settled: the ends of a range are good to [1-5] % of its width, odds to /);
    const [itself, ...more] = notes.filter((note) => note.startsWith('The model itself'));
    expect(itself).toMatch(/the flame lower by .* \(judged from 3 comparisons/);
    expect(more).toEqual([]);
  });

  it('says by typical values only where a side has no range, and why', async () => {
    const { card } = talk();
    const answer = await card('settle wall 2 in clay-sand; 2 in vermiculite vs wall 1 in castable; 3 in perlite');
    expect(answer.headline).toContain('typical values only');
    expect(answer.figures.some(({ id }) => id === 'settle.odds')).toBe(false);
    expect(answer.notes.join(' ')).toMatch(/perlite/);
    const sizes = await card('settle size can 20 gal crucible=6 in x 8 in vs 31 gal crucible=6 in x 8 in by=bore');
    expect(sizes.headline).toContain('typical');
    expect(sizes.figures.some(({ id }) => id === 'settle.odds')).toBe(false);
  }, 30_000);

  it('weighs melts, sizes and burners under one doubt', async () => {
    const { card } = talk();
    const melts = await card('settle melt 5 kg aluminium vs melt 5 kg brass by=heat');
    // Aluminium takes about twice the heat of brass by weight, beyond any doubt of either.
    expect(melts.headline).toContain('brass is lower');
    expect(value(melts, 'settle.odds')).toBe(1);
    const sizes = await card('settle size can 20 gal crucible=5 in x 6 in vs 31 gal crucible=5 in x 6 in by=weight');
    expect(value(sizes, 'settle.odds')).toBeGreaterThan(0.5);
    const burners = await card('settle burner jet=0.8 mm pressure=15 psi vs burner jet=1 mm pressure=15 psi by=power');
    expect(burners.headline).toContain('jet=1 mm');
    expect(value(burners, 'settle.odds')).toBe(1);
  }, 60_000);

  it('weighs two fuels in one fire: the cheapest split is never dearer than its better fuel alone', async () => {
    const { card } = talk();
    const answer = await card(
      'settle fuel briquettes then lump amount=10 lb vs fuel lump charcoal amount=10 lb by=cost',
    );
    // Where lump alone is the cheapest split they tie, but for rounding.
    expect(answer.figures.find(({ id }) => id === 'settle.difference')!.range!.low).toBeGreaterThan(-1e-9);
    expect(value(answer, 'settle.odds')).toBeGreaterThan(0.6);
    expect(answer.headline).toContain('briquettes then lump amount=10 lb is lower');
  }, 60_000);

  it('takes up to four sides, and the command of the first for those that name none', async () => {
    const { card } = talk();
    const answer = await card('settle mix 30 L vs 31 L vs 32 L vs 29 L by=dry_mass');
    expect(answer.headline).toMatch(/29 L is lower than 30 L/);
    expect(answer.headline).toContain('best of 4');
    expect(value(answer, 'settle.fourth')).toBeLessThan(value(answer, 'settle.one'));
  });

  it('finds the value of an option that turns the verdict', async () => {
    const { card } = talk();
    // An amount that costs the same either way is none; a hold that warms a thick dense wall through is one.
    const line = 'settle wall 6 in dense castable vs wall 2 in fibre blanket by=shell';
    const answer = await card(`${line} flip=hold 10 min to 12 h`);
    const turns_s = value(answer, 'settle.flip');
    expect(turns_s).toBeGreaterThan(600);
    expect(turns_s).toBeLessThan(12 * 3600);
    const shell = async (wall: string, hold_s: number) =>
      value(await card(`wall ${wall} hold=${hold_s} s`), 'wall.shell_peak');
    // The flip is bisected on the coarse walls of the samples, within 1 K of the fine ones.
    const [dense, light] = [await shell('6 in dense castable', turns_s), await shell('2 in fibre blanket', turns_s)];
    expect(Math.abs(dense - light)).toBeLessThan(3);
  }, 60_000);

  it('puts the same conditions and the same furnace on all sides', async () => {
    const { card } = talk();
    await card('build save club lining for=(wall 2 in clay-sand; 2 in vermiculite hot=900 °C)');
    const answer = await card('settle fuel lump charcoal vs fuel propane by=fuel for=club lining');
    const alone = await card('fuel lump charcoal for=club lining');
    expect(value(answer, 'settle.one')).toBeCloseTo(value(alone, 'fuel.mass'), 9);
  }, 60_000);

  it('keeps what was asked for again, with another figure or another side', async () => {
    const { card } = talk();
    await card('settle mix 30 L vs mix 30 L recipe=castable by=cost');
    const answer = await card('again by=dry_mass');
    expect(answer.headline).toContain('weight');
    expect((await card('again other=mix 31 L')).headline).toContain('31 L');
  });

  it.each([
    ['settle', 'missing'],
    ['settle wall 2 in perlite', 'unknown-name'],
    ['settle mix 30 L vs', 'missing'],
    ['settle mix 30 L vs 31 L vs 32 L vs 33 L vs 34 L', 'too-long'],
    ['settle mix 30 L vs mix 31 L by=colour', 'unknown-name'],
    ['settle mix 30 L vs mix 31 L at=breezy', 'unreadable'],
    ['settle mix 30 L vs mix 31 L flip=taste', 'unreadable'],
    ['settle mix 30 L vs mix ten', 'unreadable'],
    ['settle help vs help', 'unfit'],
    ['settle mix 30 L vs wall 1 in castable by=cost', 'unknown-name'],
    ['settle mix 30 L vs mix 31 L by=a, b, c, d, e', 'too-long'],
  ])('refuses "%s" as %s', async (line, code) => {
    const { refused } = talk();
    expect((await refused(line)).error.code).toBe(code);
  });

  it('names the nearest figure where there is none of that name', async () => {
    const { refused } = talk();
    const { example } = (await refused('settle mix 30 L vs mix 31 L by=dri_mass')).error;
    expect(example).toContain('dry_mass');
  });
});

describe('splitOwn', () => {
  it('leaves the sides their own options and takes settle’s', () => {
    expect(splitOwn('fuel lump amount=5 kg vs fuel propane amount=5 kg by=cost at=rate 20 kW')).toEqual({
      rest: 'fuel lump amount=5 kg vs fuel propane amount=5 kg',
      own: { by: 'cost', at: 'rate 20 kW' },
    });
  });
  it('takes for= for all sides where it stands once at the end, and leaves each its own where there are several', () => {
    expect(splitOwn('fuel lump vs fuel propane for=club').own).toEqual({ for: 'club' });
    expect(splitOwn('fuel lump for=a vs fuel lump for=b').own).toEqual({});
    expect(splitOwn('fuel lump for=a vs fuel lump').own).toEqual({});
  });
});

describe('the shelf', () => {
  it('has at least twenty, each with its own name, question and two or more sides', () => {
    expect(shelf.length).toBeGreaterThanOrEqual(20);
    const names = shelf.flatMap(({ name, aliases }) => [name, ...aliases]);
    expect(new Set(names).size).toBe(names.length);
    for (const { question, sides } of shelf) {
      expect(question.endsWith('?')).toBe(true);
      expect(sides.length).toBeGreaterThanOrEqual(2);
    }
  });

  it.each(shelf.map(({ name }) => [name]))(
    'computes "%s" when asked',
    async (name) => {
      const { card } = talk();
      const answer = await card(`settle ${name}`);
      expect(answer.headline.startsWith(shelf.find((one) => one.name === name)!.question)).toBe(true);
      expect(answer.notes.join(' ')).toContain('Left out here');
      expect(answer.notes.join(' ')).toContain('Held against the world outside');
      expect(answer.cautions.at(-1)?.id).toBe('local-rules');
      expect(answer.figures.every((figure) => Number.isFinite(figure.value))).toBe(true);
      const odds = value(answer, 'settle.odds');
      if (!Number.isNaN(odds)) expect(odds).toBeGreaterThanOrEqual(0);
    },
    60_000,
  );

  it('lists them, finds them either way round, and takes other inputs', async () => {
    const { card, refused } = talk();
    expect((await card('settle list')).table?.rows).toHaveLength(shelf.length);
    expect((await card('settle propane or charcoal')).headline).toContain('Charcoal or propane');
    const more = await card('settle clay-sand or castable, the price amount=60 L');
    const usual = await card('settle clay-sand or castable, the price');
    expect(value(more, 'settle.one2') / value(usual, 'settle.one2')).toBeCloseTo(2, 6);
    expect((await refused('settle perlite or vermiculit')).error.example).toBe('settle perlite or vermiculite');
  }, 30_000);

  it('names outside checks that are there', () => {
    const tests = join(import.meta.dirname, '../../test/published');
    for (const { checks } of Object.values(support))
      for (const name of checks) expect(existsSync(join(tests, `${name}.test.ts`)), name).toBe(true);
  });
});
