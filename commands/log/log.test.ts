import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { talk as talkAt } from '../../test/contract/conversation.ts';
import type { Card } from '../card.ts';
import { inProcessMemory } from '../memory.ts';
import type { LogEntry } from '../memory-weeks.ts';

const today = new Date('2026-04-12T15:00:00Z');

const talk = (talker: Parameters<typeof talkAt>[0] = {}) => talkAt({ now: today, ...talker });

/** With a build of that question. */
async function built(question = 'mix 10 L', name = 'pot') {
  const told = talk();
  await told.card(`build save ${name} for=(${question})`);
  return told;
}

const value = (card: Card, id: string) => card.figures.find((one) => one.id === id)?.value;
const range = (card: Card, id: string) => card.figures.find((one) => one.id === id)?.range;
const width = (card: Card, id: string) => {
  const { low, high } = range(card, id)!;
  return high - low;
};
const ids = ({ cautions }: { cautions: Card['cautions'] }) => cautions.map(({ id }) => id);
const byLog = ({ given }: Card) => given.filter((one) => one.startsWith('calibrated by your'));

describe('an entry', () => {
  it('of a burn is kept in SI with its unit in the key, under its day', async () => {
    const { card, memory } = await built();
    await card('log burn 7 lb lump charcoal melted=4 lb aluminium time=50 min shell=150 °F worn=1/8 in on=2026-03-30');
    const [entry] = await memory.entries('ann', 'pot');
    expect(entry).toMatchObject({
      build: 'pot',
      kind: 'burn',
      at: new Date('2026-03-30T12:00:00Z'),
      data: { fuel: 'lump-charcoal', metal: 'aluminium', melts_count: 1, time_s: 3000 },
    });
    expect(entry!.data.fuel_kg).toBeCloseTo(7 * 0.45359237, 9);
    expect(entry!.data.melted_kg).toBeCloseTo(4 * 0.45359237, 9);
    expect(entry!.data.shell_K).toBeCloseTo(338.706, 2);
    expect(entry!.data.worn_m).toBeCloseTo(0.003175, 9);
  });

  it('is of now, of yesterday or of a day that has been; of tomorrow it is refused', async () => {
    const { card, refused, memory } = await built();
    for (const on of ['', ' on=today', ' on=yesterday', ' on=2026-04-12', ' on=2026-01-31'])
      await card(`log weighed 30 kg${on}`);
    const days = (await memory.entries('ann')).map(({ at }) => at.toISOString());
    expect(days).toEqual([
      '2026-01-31T12:00:00.000Z',
      '2026-04-11T12:00:00.000Z',
      ...Array.from({ length: 3 }, () => today.toISOString()),
    ]);
    expect((await refused('log weighed 30 kg on=2026-04-13')).error).toMatchObject({
      code: 'out-of-range',
      option: 'on',
    });
    for (const on of ['2026-02-30', 'soon', '1999-12-31', '12/4/2026']) {
      const { error } = await refused(`log weighed 30 kg on=${on}`);
      await card(error.example);
    }
  });

  it('of yesterday is by the calendar of the asker, where their zone is known', async () => {
    const memory = inProcessMemory();
    await memory.setZone('ann', 'Pacific/Auckland');
    const { card } = talk({ memory });
    await card('build save pot for=(mix 10 L)');
    // At 15:00 UTC it is the 13th there.
    await card('log weighed 30 kg on=yesterday');
    await card('log weighed 30 kg on=2026-04-13');
    expect((await memory.entries('ann')).map(({ at }) => at.toISOString().slice(0, 10))).toEqual([
      '2026-04-12',
      '2026-04-12',
    ]);
  });

  it('goes to the build that is named, else to the one kept last, and says so', async () => {
    const { card, refused, memory } = await built();
    const only = await card('log weighed 30 kg');
    expect(only.assumed.map(({ text }) => text)).not.toContain('pot, the build you kept last');
    // Kept a minute later.
    const later = talk({ memory, now: new Date(today.getTime() + 60_000) });
    await later.card('build save pan for=(mix 5 L)');
    const newest = await later.card('log weighed 12 kg');
    expect(newest.assumed).toContainEqual({ text: 'pan, the build you kept last', override: 'build=pot' });
    await later.card('log weighed 29 kg build=POT');
    expect((await memory.entries('ann', 'pot')).map(({ data }) => data.mass_kg)).toEqual([30, 29]);
    const { error } = await refused('log weighed 30 kg build=pott');
    expect(error).toMatchObject({ code: 'unknown-name', example: 'log weighed 30 kg build=pot' });
  });

  it('without any build is refused with how to keep one', async () => {
    const { refused, card } = talk();
    for (const line of ['log burn 3 kg lump charcoal', 'log list', 'log bucket 5 L mass=9 kg', 'log drying']) {
      const { error } = await refused(line);
      expect(error.code).toBe('nothing-before');
      await card(error.example);
      await card('forget everything');
    }
  });

  it('of another person is neither seen nor used', async () => {
    const { card, memory } = await built();
    await card('log bucket 5 L mass=9.1 kg');
    const ben = talk({ memory, asker: 'ben' });
    await ben.card('build save pot for=(mix 10 L)');
    expect((await ben.card('log list pot')).headline).toContain('Nothing is logged');
    expect(byLog(await ben.card('mix for=pot'))).toEqual([]);
  });

  it('is dropped by its number or its id, and gone from answers', async () => {
    const { card, refused, memory } = await built();
    await card('log bucket 5 L mass=9.1 kg');
    await card('log weighed 30 kg');
    expect((await card('log drop 2')).headline).toContain('weighing of 2026-04-12');
    const [left] = await memory.entries('ann');
    expect(byLog(await card('mix for=pot'))).toHaveLength(1);
    await card(`log drop ${left!.id.toLowerCase()} build=pot`);
    expect(byLog(await card('mix for=pot'))).toEqual([]);
    const { error } = await refused('log drop 1');
    await card(error.example);
  });

  it('is in a log of 500 at most', async () => {
    const { card, refused, memory } = await built();
    for (let count = 0; count < 500; count += 1)
      await memory.addEntry('ann', { build: 'pot', kind: 'weighing', at: today, data: { mass_kg: 30 } });
    const { error } = await refused('log weighed 30 kg');
    expect(error.code).toBe('refused');
    await card(error.example);
    await card('log weighed 30 kg');
  });
});

describe('a burn', () => {
  it('gives efficiency with its range, fuel for each of metal and power, beside what is told', async () => {
    const { card } = await built('size can 20 gal crucible=6 in x 8 in');
    const found = await card('log burn 3.2 kg lump charcoal melted=2 kg aluminium time=50 min');
    expect(value(found, 'log.efficiency')).toBeGreaterThan(0.02);
    expect(value(found, 'log.efficiency')).toBeLessThan(0.03);
    expect(range(found, 'log.efficiency')!.low).toBeLessThan(value(found, 'log.efficiency')!);
    expect(value(found, 'log.fuel_per_metal')).toBeCloseTo(1.6, 12);
    expect(found.notes.join(' ')).toContain('7 % to 19 %');
    expect(found.notes.join(' ')).toContain('Less than is told');
  });

  it('carries hot work, its fuel’s and its metal’s cautions, and so does its mistake', async () => {
    const { card, refused } = await built();
    const found = ids(await card('log burn 3.2 kg lump charcoal melted=2 kg brass'));
    for (const id of ['molten-metal', 'local-rules']) expect(found).toContain(id);
    expect(found.some((id) => /zinc/.test(id))).toBe(true);
    expect(found.some((id) => /charcoal|carbon/.test(id))).toBe(true);
    const reply = await refused('log burn 3.2 kg lump charcoal melted=2 kg unobtainium');
    expect(ids(reply).at(-1)).toBe('local-rules');
    expect(reply.error.option).toBe('melted');
  });

  it.each([
    ['log burn', 'missing', 'fuel'],
    ['log burn lump charcoal', 'missing', 'fuel'],
    ['log burn 3 kg', 'missing', 'fuel'],
    ['log burn melted=2 kg aluminium', 'missing', 'fuel'],
    ['log burn 3 kg lump charcol', 'unknown-name', 'fuel'],
    ['log burn 0.05 kg lump charcoal melted=2 kg aluminium', 'impossible', 'fuel'],
    ['log burn 1.739 kg lump charcoal', 'ambiguous', 'fuel'],
    ['log burn -3 kg lump charcoal', 'missing', 'fuel'],
    ['log burn 9999 kg lump charcoal', 'out-of-range', 'fuel'],
    ['log burn 3 kg lump charcoal melted=aluminium', 'missing', 'melted'],
    ['log burn 3 kg lump charcoal time=50 days', 'out-of-range', 'time'],
    ['log burn 3 kg lump charcoal melted=2 kg aluminium pour=500 °C', 'out-of-range', 'pour'],
  ])('"%s" is refused: %s', async (line, code, option) => {
    const { refused, memory } = await built();
    const { error } = await refused(line);
    expect(error).toMatchObject({ code, option });
    expect(await memory.entries('ann')).toEqual([]);
  });

  it('of magnesium is not logged but refused', async () => {
    const { refused } = await built();
    const reply = await refused('log burn 3 kg lump charcoal melted=2 kg magnesium');
    expect(ids(reply)).toContain('magnesium');
  });
});

describe('a list', () => {
  it('shows every entry, the lining’s life, and from two melts on a chart with the known range', async () => {
    const { card } = await built('size can 20 gal crucible=6 in x 8 in');
    expect((await card('log list')).headline).toBe('Nothing is logged of pot yet.');
    await card('log burn 3.2 kg lump charcoal melted=2 kg aluminium time=50 min on=2026-03-01');
    expect((await card('log list')).chart).toBeUndefined();
    await card('log burn 2 kg briquettes time=3 h on=2026-03-02');
    await card('log burn 2.6 kg lump charcoal melted=2 kg aluminium worn=1 mm on=2026-03-03');
    await card('log shell 65 °C at=1 h on=2026-03-03');
    const list = await card('log list pot');
    expect(list.headline).toMatch(
      /^Log of pot: 4 entries, 3 burns; metal got 2\.\d % of the fuel’s heat on average\.$/,
    );
    expect(list.table?.rows.map(([number, day]) => [number, day])).toEqual([
      ['1', '2026-03-01'],
      ['2', '2026-03-02'],
      ['3', '2026-03-03'],
      ['4', '2026-03-03'],
    ]);
    expect(value(list, 'log.burns')).toBe(3);
    expect(value(list, 'log.hot')).toBe(50 * 60 + 3 * 3600);
    expect(value(list, 'log.wear')).toBeCloseTo(0.001 / 3, 9);
    // A third of the usual 40 mm, at a third of a millimetre a burn, less the three that were.
    expect(value(list, 'log.left')).toBe(37);
    const { panels } = list.chart!;
    expect(panels[0]!.series[0]!.points.map(([burn]) => burn)).toEqual([1, 3]);
    expect(panels[0]!.lines?.map(({ at }) => at)).toEqual([0.07, 0.19]);
    expect(panels[1]!.series[0]!.points.map(([, kg]) => kg)).toEqual([1.6, 1.3]);
    expect(list.chart!.alt).toContain('7 % to 19 %');
    expect(ids(list).at(-1)).toBe('local-rules');
  });

  it('bears entries of other kinds and of things that are gone', async () => {
    const { card, memory } = await built();
    for (const [kind, data] of [
      ['painting', { colour: 'black' }],
      ['burn', { fuel: 'unobtainium', fuel_kg: 3 }],
      ['burn', {}],
      ['bucket', { material: 'gone', mass_kg: 'much' }],
    ] as const)
      await memory.addEntry('ann', { build: 'pot', kind, at: today, data });
    expect((await card('log list')).table?.rows.map(([, , what]) => what)).toEqual([
      'painting',
      'burn',
      'burn',
      'bucket',
    ]);
    expect(byLog(await card('mix for=pot'))).toEqual([]);
  });
});

describe('a bucket', () => {
  it('narrows the mix of its build, says by what and by how much, and shows it in why', async () => {
    const { card } = await built();
    const before = await card('mix for=pot');
    expect(byLog(before)).toEqual([]);
    await card('log bucket 5 L mass=9.1 kg');
    const after = await card('mix for=pot');
    expect(byLog(after)).toHaveLength(1);
    expect(byLog(after)[0]).toMatch(
      /^calibrated by your bucket of 2026-04-12: 1820 kg\/m3 read instead of 17\d0 to 19\d0 kg\/m3 expected, now taken as 17\d0 to 1[89]\d0 kg\/m3, 60 % as wide$/,
    );
    expect(width(after, 'mix.dry_mass')).toBeLessThan(width(before, 'mix.dry_mass'));
    expect(value(after, 'mix.dry_mass')).toBeLessThan(value(before, 'mix.dry_mass')!);
    expect(after.working[0]!.formula).toContain('calibrated by the bucket of 2026-04-12');
    expect(after.sources).toContain('whitaker-hamill-2002');
    const why = await card('why');
    expect(why.attachment?.text).toContain('calibrated by the bucket of 2026-04-12');
  });

  it('of a build calibrates only what takes that build up; again keeps it, another question does not', async () => {
    const { card } = await built();
    await card('log bucket 5 L mass=9.1 kg');
    expect(byLog(await card('mix 10 L'))).toEqual([]);
    await card('mix for=pot');
    expect(byLog(await card('again spare=5%'))).toHaveLength(1);
    expect(byLog(await card('mix for=last'))).toHaveLength(1);
    expect(byLog(await card('build show pot'))).toHaveLength(1);
    expect(byLog(await card('mix for=pot recipe=castable'))).toEqual([]);
    expect(byLog(await card('mix 12 L'))).toEqual([]);
    expect(byLog(await card('again spare=5%'))).toEqual([]);
    await card('mix for=pot');
    await card('build save pan');
    expect(byLog(await card('mix for=pan'))).toEqual([]);
  });

  it('narrows the weights of a size, loose fill too', async () => {
    const { card } = await built('size can 20 gal crucible=6 in x 8 in');
    const before = await card('build show pot');
    await card('log bucket 5 L mass=9.1 kg');
    await card('log bucket 20 L mass=2.2 kg of=vermiculite');
    const after = await card('build show pot');
    expect(byLog(after)).toHaveLength(2);
    for (const id of ['size.whole', 'size.insulation_mass']) {
      if (range(before, id) === undefined) continue;
      expect(width(after, id)).toBeLessThan(width(before, id));
    }
    expect(range(before, 'size.whole')).toBeDefined();
  });

  it('that contradicts says by how much and changes nothing', async () => {
    const { card } = await built();
    const before = await card('mix for=pot');
    await card('log bucket 5 L mass=7 kg');
    const after = await card('mix for=pot');
    expect(byLog(after)).toEqual([]);
    expect(after.notes[0]).toMatch(
      /^Your bucket of 2026-04-12 \(1400 kg\/m3\) contradicts the model by \d(\.\d)? σ: .*Nothing was narrowed/,
    );
    expect(after.figures).toEqual(before.figures);
    expect(after.working).toEqual(before.working);
  });

  it.each([
    ['log bucket 5 L mass=30 kg', 'impossible', 'mass'],
    ['log bucket 5 L mass=1 kg', 'impossible', 'mass'],
    ['log bucket 5 L mass=2 kg empty=2 kg', 'impossible', 'mass'],
    ['log bucket 5 L', 'missing', 'mass'],
    ['log bucket 5 kg mass=9 kg', 'wrong-dimension', 'volume'],
    ['log bucket 5 L mass=9 kg of=unobtainium', 'unknown-name', 'of'],
    ['log bucket 5 L mass=9 kg damp=300%', 'out-of-range', 'damp'],
  ])('"%s" is refused: %s, with a line that works', async (line, code, option) => {
    const { card, refused } = await built();
    const { error } = await refused(line);
    expect(error).toMatchObject({ code, option });
    if (option === 'mass') await card(error.example);
  });

  it('of fresh mix counts its water, and one weighed with its bucket counts that', async () => {
    const { card } = await built();
    expect(value(await card('log bucket 5 L mass=9.1 kg'), 'log.density')).toBeCloseTo(1820, 9);
    expect(value(await card('log bucket 5 L mass=9.1 kg damp=7%'), 'log.density')).toBeCloseTo(1820 / 1.07, 9);
    expect(value(await card('log bucket 5 L mass=9.5 kg empty=0.4 kg'), 'log.density')).toBeCloseTo(1820, 9);
  });
});

describe('a shell', () => {
  const wall = 'wall 40 mm clay-sand lining; 60 mm vermiculite hot=900 °C ramp=40 min hold=1 h';

  it('read cooler than expected narrows the wall and cools it', async () => {
    const { card } = await built(wall);
    const before = await card('wall for=pot');
    await card('log shell 45 °C at=1 h hot=900 °C air=15 °C');
    const after = await card('wall for=pot');
    expect(byLog(after)).toHaveLength(1);
    expect(value(after, 'wall.shell_peak')).toBeLessThan(value(before, 'wall.shell_peak')!);
    expect(width(after, 'wall.shell_peak')).toBeLessThan(width(before, 'wall.shell_peak'));
    const { low, high } = range(after, 'wall.shell_peak')!;
    expect(low).toBeLessThan(value(after, 'wall.shell_peak')!);
    expect(high).toBeGreaterThan(value(after, 'wall.shell_peak')!);
  }, 60_000);

  it('of a burn counts as well, and one that cannot be is told to contradict', async () => {
    const { card } = await built(wall);
    await card('log burn 2 kg lump charcoal time=1 h shell=75 °C hot=900 °C');
    expect(byLog(await card('wall for=pot'))).toHaveLength(1);
    await card('log drop 1');
    await card('log shell 300 °C at=1 h hot=900 °C');
    const against = await card('wall for=pot');
    expect(byLog(against)).toEqual([]);
    expect(against.notes[0]).toContain('contradicts the model by');
  }, 60_000);

  it('of a dry firing says nothing of a damp wall', async () => {
    const { card } = await built(wall);
    await card('log shell 70 °C at=1 h');
    expect(byLog(await card('wall for=pot damp=6% ramp=6 h'))).toEqual([]);
  }, 60_000);

  it.each([
    ['log shell 65 °C', 'missing', 'at'],
    ['log shell 65 °C at=1 h hot=200 °F', 'out-of-range', 'hot'],
    ['log shell 500 °C at=1 h hot=400 °C', 'impossible', 'hot'],
    ['log shell 5 °C at=1 h air=20 °C', 'impossible', 'air'],
    ['log shell 900 °C at=1 h', 'out-of-range', 'shell'],
  ])('"%s" is refused: %s', async (line, code, option) => {
    const { refused } = await built();
    const { error, cautions } = await refused(line);
    expect(error).toMatchObject({ code, option });
    expect(cautions.at(-1)?.id).toBe('local-rules');
  });
});

describe('burns', () => {
  const fuel = 'fuel lump charcoal amount=3 kg metal=aluminium';

  it('narrow the fuel of their build toward what they took; of another fuel they say nothing', async () => {
    const { card } = await built(fuel);
    const before = await card('fuel for=pot fuel=lump charcoal');
    const typical = value(before, 'fuel.mass')!;
    await card(`log burn ${(1.2 * typical).toFixed(2)} kg lump charcoal melted=3 kg aluminium`);
    const after = await card('fuel for=pot fuel=lump charcoal');
    expect(byLog(after)).toHaveLength(1);
    expect(value(after, 'fuel.mass')).toBeGreaterThan(typical);
    expect(value(after, 'fuel.mass')).toBeLessThan(1.25 * typical);
    expect(width(after, 'fuel.mass')).toBeLessThan(0.8 * width(before, 'fuel.mass'));
    expect(byLog(await card('fuel for=pot fuel=propane'))).toEqual([]);
  }, 120_000);
});

describe('drying', () => {
  const dry = 'log drying 47.003 kg 2025-10-01; 47.002 kg 2025-11-05; 47.002 kg 2025-12-20 rammed=2025-09-01';

  it('is logged where the weighings stand still, and not where the lining still loses water', async () => {
    const { card, refused, memory } = await built('size can 20 gal crucible=6 in x 8 in');
    const wet = await refused('log drying 50.0 kg 2026-04-01; 49.5 kg 2026-04-08 rammed=2026-03-28');
    expect(wet.error.what).toContain('lost');
    expect(ids(wet)).toContain('damp-lining');
    expect(await memory.entries('ann')).toEqual([]);
    await card(dry);
    const entries = await memory.entries('ann', 'pot');
    expect(entries.map(({ kind }) => kind)).toEqual(['weighing', 'weighing', 'weighing', 'drying']);
  });

  it('goes by what was weighed before, day by day', async () => {
    const { card, refused } = await built('size can 20 gal crucible=6 in x 8 in');
    expect((await refused('log drying')).error.code).toBe('missing');
    await card('log weighed 47.003 kg on=2025-10-01');
    expect((await refused('log drying')).error.what).toContain('one weighing');
    await card('log weighed 47.002 kg on=2025-11-05');
    const last = await card('log weighed 47.002 kg on=2025-12-20');
    expect(value(last, 'log.loss')).toBeCloseTo(0, 12);
    expect((await card('log drying rammed=2025-09-01')).headline).toContain('by 3 weighings');
  });

  it.each([
    ['log drying 30 kg day 3; 29 kg day 5', 'unreadable'],
    ['log drying 30 kg 2026-05-01; 29 kg 2026-05-05', 'unreadable'],
    ['log drying 30 kg', 'unreadable'],
    ['log drying 30 kg 2026-04-01', 'missing'],
    ['log drying 30 kg 2026-04-01; 29 kg 2026-04-09 rammed=2026-04-05', 'impossible'],
  ])('"%s" is refused: %s, with its cautions', async (line, code) => {
    const { refused } = await built('size can 20 gal crucible=6 in x 8 in');
    const reply = await refused(line);
    expect(reply.error.code).toBe(code);
    expect(ids(reply)).toContain('damp-lining');
  });

  it('is never logged by weighings that lose more than practice calls dry', async () => {
    const { ask } = await built('size can 20 gal crucible=6 in x 8 in');
    await fc.assert(
      fc.asyncProperty(
        fc.double({ min: 10, max: 60, noNaN: true }),
        fc.double({ min: 0.002, max: 0.05, noNaN: true }),
        fc.integer({ min: 1, max: 30 }),
        async (mass_kg, loss, days) => {
          const first = new Date(today.getTime() - days * 86_400_000).toISOString().slice(0, 10);
          const after_kg = mass_kg * (1 - loss * days);
          fc.pre(after_kg > 1);
          const reply = await ask(`log drying ${mass_kg.toFixed(4)} kg ${first}; ${after_kg.toFixed(4)} kg 2026-04-12`);
          expect(reply.kind).toBe('error');
        },
      ),
      { numRuns: 40 },
    );
  });
});

describe('whatever is logged', () => {
  const number = fc.oneof(
    fc.double({ min: 0.01, max: 50, noNaN: true }),
    fc.double({ min: 250, max: 2000, noNaN: true }),
    fc.constantFrom(0, -1, 1e-12, 3600, 1e12, Number.MAX_VALUE, 'much'),
  );
  const metal = fc.constantFrom('aluminium', 'bronze', 'zinc-alloy', 'gone');
  const fuel = fc.constantFrom('lump-charcoal', 'propane', 'gone');
  const data = {
    burn: fc.record(
      {
        fuel,
        fuel_kg: number,
        metal,
        melted_kg: number,
        melts_count: number,
        time_s: number,
        pour_K: number,
        hot_K: number,
        shell_K: number,
        worn_m: number,
      },
      { requiredKeys: ['fuel', 'fuel_kg', 'metal', 'melted_kg'] },
    ),
    shell: fc.record(
      { shell_K: number, after_s: number, out_s: number, hot_K: number, air_K: number },
      { requiredKeys: ['shell_K', 'after_s'] },
    ),
    bucket: fc.record({
      material: fc.constantFrom('clay-sand-lining', 'vermiculite', 'silica-sand', 'gone'),
      how: fc.constantFrom('rammed', 'loose', ''),
      volume_m3: fc.oneof(fc.constant(0.005), number),
      mass_kg: number,
      damp: number,
    }),
  };
  const entry = fc.oneof(
    ...(['burn', 'shell', 'bucket'] as const).map((kind) =>
      fc.record({ kind: fc.constant(kind), data: data[kind] as fc.Arbitrary<LogEntry['data']> }),
    ),
  );

  const never = (question: string, asked: string, numRuns: number) =>
    fc.assert(
      fc.asyncProperty(fc.array(entry, { maxLength: 4 }), async (entries) => {
        const { ask, memory } = await built(question);
        for (const one of entries) await memory.addEntry('ann', { build: 'pot', at: today, ...one });
        for (const line of ['log list', asked]) {
          const reply = await ask(line);
          if (reply.kind === 'error') expect.fail(`${line}: ${reply.error.what}`);
          for (const { value: shown, range: ends } of reply.card.figures) {
            expect(Number.isFinite(shown)).toBe(true);
            if (ends) expect(ends.low <= ends.high).toBe(true);
          }
        }
      }),
      { numRuns },
    );

  it.each([
    ['mix 10 L', 'mix for=pot', 60],
    ['size can 20 gal crucible=6 in x 8 in', 'size can 20 gal for=pot', 10],
    ['wall 40 mm clay-sand lining; 60 mm vermiculite hot=900 °C', 'wall for=pot', 4],
    ['fuel lump charcoal amount=3 kg', 'fuel lump charcoal for=pot', 6],
  ])(
    '"%s" is answered all the same',
    async (question, asked, runs) => {
      await never(question, asked, runs);
    },
    240_000,
  );
});
