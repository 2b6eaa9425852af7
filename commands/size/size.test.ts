import { describe, expect, it } from 'vitest';
import { answerLine } from '../answer.ts';
import type { Card, Reply } from '../card.ts';
import { inProcessMemory } from '../memory.ts';

const asker = () => ({ asker: 'ann', place: 'shed', now: new Date(0), memory: inProcessMemory() });
const ask = (line: string, context = asker()) => answerLine(line, context);
const inch = 0.0254;

function cardOf(reply: Reply): Card {
  if (reply.kind === 'error') throw new Error(JSON.stringify(reply.error));
  return reply.card;
}

function errorOf(reply: Reply) {
  if (reply.kind === 'card') throw new Error(`expected an error, got: ${reply.card.headline}`);
  return reply.error;
}

const value = (card: Card, id: string) => card.figures.find((one) => one.id === id)?.value;
const story = 'size can 20 gal crucible=6 in x 8 in';

describe('size can', () => {
  it('says at once whether it fits, and gives every number a builder needs', async () => {
    const card = cardOf(await ask(story));
    expect(card.headline).toMatch(/^Fits/);
    expect(card.units).toBe('US');
    expect(value(card, 'size.bore')).toBeCloseTo(6 * inch + 0.08, 9);
    for (const noun of [
      'bore lining_bottom floor height insulation_bottom insulation_top lid lid_thickness vent rate velocity plinth',
      'tuyere invert tuyere_height offset tilt spill invert_outside sleeve sleeve_round tabs tongs headroom mix_volume',
      'insulation_volume insulation_loose bags_large bags_small pot_dry pot_wet lid_dry lid_wet insulation_mass whole lift people',
    ].flatMap((line) => line.split(' '))) {
      expect(value(card, `size.${noun}`), noun).toSatisfy(Number.isFinite);
    }
    const range = card.figures.find(({ id }) => id === 'size.insulation_bottom')?.range;
    // ±2 % of the can's inside radius.
    expect((range?.high ?? 0) - (range?.low ?? 0)).toBeCloseTo(0.04 * 7.625 * inch, 6);
    expect(card.table?.rows.map(([name]) => name)).toContain('hole in the shell');
  });

  it('stands in groups, what goes where first, each in one piece', async () => {
    for (const line of [story, 'size can 31 gal fuel=charcoal', `${story} form=card`]) {
      const groups = cardOf(await ask(line)).figures.map(({ group }) => group);
      expect(groups.filter((group, at) => group !== groups[at - 1])).toEqual([
        'what goes where',
        'air and fire',
        'buy',
        'weigh',
      ]);
    }
  });

  it('cuts by a tape: sixteenths of an inch beside whole millimetres, the typed units first', async () => {
    const sizes = async (line: string) =>
      cardOf(await ask(line))
        .table?.rows.map((row) => row.at(-1))
        .join('; ') ?? '';
    const US = await sizes(story);
    expect(US).toMatch(/a rectangle 28 5\/8 in \(727 mm\) by 12 5\/16 in \(313 mm\)/);
    expect(US).not.toMatch(/mm \(|\d\.\d+ in/);
    const metric = await sizes('size crucible 2 L');
    expect(metric).toMatch(/\d mm \([\d /]+ in\)/);
    expect(metric).not.toMatch(/in \(/);
  });

  it('draws section and plan first, then the patterns to cut', async () => {
    const { drawings = [] } = cardOf(await ask(story));
    expect(drawings.slice(0, 2).map(({ id }) => id)).toEqual(['section', 'plan']);
    expect(drawings.filter(({ fullSize }) => fullSize).length).toBeGreaterThan(2);
    const card = cardOf(await ask(`${story} form=card`));
    expect(card.drawings?.map(({ id }) => id)).toEqual(['section', 'plan', 'sleeve']);
  });

  it('names each rule that it used with the option that overrides it, and drops it when it is typed', async () => {
    const overrides = (card: Card) => card.assumed.map(({ override }) => override?.split('=')[0]);
    const card = cardOf(await ask(story));
    for (const option of ['fuel', 'gap', 'wall', 'floor', 'lid', 'plinth', 'tuyere', 'tilt', 'rate', 'taper', 'behind'])
      expect(overrides(card)).toContain(option);
    expect(overrides(cardOf(await ask(`${story} wall=1 1/2 in tilt=15`)))).not.toContain('wall');
    for (const { override } of card.assumed) {
      if (override === undefined || override.startsWith('vessel')) continue;
      const again = await ask(`${story} ${override}`);
      expect(again.kind, override).toBe('card');
    }
  });

  it('says what to change, and each change can be sent and then fits', async () => {
    const context = asker();
    const line = 'size can 20 gal crucible=6 in x 8 in wall=46 mm';
    const card = cardOf(await ask(line, context));
    expect(card.headline).toMatch(/^Does not fit.*insulation at the narrowest.*Smallest change: a thinner wall, wall=/);
    const mending = card.next.filter(({ line: next }) => /^again (wall|gap|crucible|vessel)=/.test(next));
    expect(mending.length).toBeGreaterThan(0);
    for (const { line: next } of mending) {
      const again = asker();
      await ask(line, again);
      expect(cardOf(await ask(next, again)).headline, next).toMatch(/^Fits/);
    }
  });

  it('reads sizes as people type them', async () => {
    const heights = async (line: string) => value(cardOf(await ask(line)), 'size.crucible_height');
    for (const typed of ['6 in x 8 in', '6 x 8 in', '6" x 8"', '6″×8″', '6 in by 8 in', '6inx8in'])
      expect(await heights(`size can 20 gal crucible=${typed}`), typed).toBeCloseTo(8 * inch, 9);
    expect(await heights('size can 20 gal crucible=150 x 200 mm')).toBeCloseTo(0.2, 9);
    expect(await heights('size can 20 gal crucible=6 in')).toBeCloseTo(7.5 * inch, 9);
    const bottom = async (line: string) => value(cardOf(await ask(line)), 'size.insulation_bottom') ?? 0;
    const straight = await bottom('size can 15 in x 22 in crucible=6 in x 8 in');
    expect(await bottom('size can 15" / 17" x 22" crucible=6 in x 8 in')).toBeGreaterThan(straight);
    expect(await bottom('size can 15 / 17 x 22 in crucible=6 in x 8 in')).toBeGreaterThan(straight);
    expect(await bottom('size can 14 1/2 in x 22 in crucible=6 in x 8 in')).toBeLessThan(straight);
  });

  it('takes a given firing rate as exact, and a given vent as it is', async () => {
    const card = cardOf(await ask(`${story} rate=60000 Btu/h vent=3 in`));
    expect(card.figures.find(({ id }) => id === 'size.rate')?.range).toBeUndefined();
    expect(value(card, 'size.vent')).toBeCloseTo(3 * inch, 9);
    expect(card.figures.find(({ id }) => id === 'size.velocity')?.note).toMatch(/right/);
    const small = cardOf(await ask(`${story} rate=60000 Btu/h vent=1 in`));
    expect(small.figures.find(({ id }) => id === 'size.velocity')?.note).toMatch(/too fast/);
  });

  it.each([
    ['vent=1/4 in', /But a vent of .* m\/s is right: the fire is smothered/],
    ['vent=9 in', /heat leaves through it unused.* leaves .* of lid over the bore/],
    ['tilt=45', /But the tuyere rises 45°, where 5 to 20° is usual/],
  ])('says beside "Fits" that %s is outside its rule', async (more, says) => {
    const { headline } = cardOf(await ask(`${story} ${more}`));
    expect(headline).toMatch(/^Fits/);
    expect(headline).toMatch(says);
  });

  it('says nothing of sizes inside their rules, typed or not', async () => {
    for (const more of ['', 'tilt=15', 'vent=2 3/4 in'])
      expect(cardOf(await ask(`${story} ${more}`)).headline).not.toContain('But');
  });

  it('says when a spill would run out, and what would keep it in', async () => {
    const card = cardOf(await ask(`${story} tilt=2`));
    expect(card.notes.join(' ')).toMatch(/spilled crucible would run out .* Rise 1\d°/);
    expect(cardOf(await ask(`${story} tilt=15°`)).notes.join(' ')).not.toMatch(/would run out/);
  });
});

describe('what is bought', () => {
  it.each([
    ['size can 31 gal fuel=charcoal units=us', 0.0254],
    ['size can 20 gal units=us', 0.0254],
    ['size can 20 gal units=metric', 0.01],
  ])('is never less than what is cut: %s', async (line, step_m) => {
    const card = cardOf(await ask(line));
    const roll = card.drawings?.find(({ id }) => id === 'roll')?.shapes ?? [];
    const ends = roll.flatMap((shape) => (shape.kind === 'area' ? shape.outline.map(([x]) => x) : []));
    const mesh_m = value(card, 'size.mesh') ?? Number.NaN;
    expect(mesh_m).toBeGreaterThanOrEqual(Math.max(...ends) - Math.min(...ends) - 1e-9);
    expect(mesh_m / step_m).toBeCloseTo(Math.round(mesh_m / step_m), 6);
  });
});

describe('what hurts', () => {
  const ids = (reply: Reply) => (reply.kind === 'card' ? reply.card : reply).cautions.map(({ id }) => id);

  it('the zinc of a galvanised shell whose heat is not known; none of bare steel', async () => {
    expect(ids(await ask(story))).toContain('zinc-shell-unknown');
    expect(ids(await ask('size can 30 gal drum crucible=6 in x 8 in'))).not.toContain('zinc-shell-unknown');
  });

  it('leads with the cylinder and the closed drum', async () => {
    const cylinder = cardOf(await ask('size can propane tank'));
    expect(cylinder.cautions[0]).toMatchObject({ id: 'cylinder-cutting', leads: true });
    expect(cylinder.cautions[0]?.text).toMatch(/open-head drum.*valve out, filled with water.*unknown gas/);
    expect(cardOf(await ask('size can 55 gal tight-head drum')).cautions[0]?.id).toBe('sealed-vessel');
  });

  it.each([
    'helium cylinder',
    'acetylene tank',
    'freon tank',
    'old fire extinguisher',
    'air compressor tank',
    'oxygen bottle',
    'gas bottle 13 kg',
    'argon-cylinder',
    'scuba tank',
    '40 lb propane tank',
    'R134a can',
    '12 in x 20 in propane tank',
    '12 in x 20 in cylinder',
  ])('leads with the danger where a "%s" is to become a shell, and sends to an open vessel', async (vessel) => {
    for (const line of [`size can ${vessel} crucible=4 in x 5 in`, `size crucible 4 in x 5 in vessel=${vessel}`]) {
      const reply = await ask(line);
      const error = errorOf(reply);
      expect(reply.kind === 'error' && reply.cautions[0]).toMatchObject({ id: 'cylinder-cutting', leads: true });
      expect(error.what).toMatch(/never cut or opened/);
      expect(error.expected).toMatch(/open-head steel drum or a can/);
      expect(`${error.expected} ${error.example}`).not.toMatch(/propane-cylinder|pail-10l/);
      expect((await ask(error.example)).kind).toBe('card');
    }
  });

  it('keeps the danger where another option is wrong, or has no such name', async () => {
    for (const wrong of ['crucible=0 in x 8 in', 'wall=abc', 'walls=2 in', 'tilt=-5']) {
      const reply = await ask(`size can 20 lb cylinder ${wrong}`);
      expect(errorOf(reply).what, wrong).not.toBe('');
      expect(ids(reply)[0], wrong).toBe('cylinder-cutting');
    }
    expect(ids(await ask('size can beer keg'))[0]).toBe('sealed-vessel');
  });

  it('offers no cylinder to somebody who named something else', async () => {
    const { expected, example } = errorOf(await ask('size can 100 lb anvil'));
    expect(`${expected} ${example}`).not.toMatch(/cylinder|tight/);
  });

  it('goes with the fuel and the metal', async () => {
    expect(ids(await ask(`${story} fuel=charcoal`))).toContain('charcoal');
    expect(ids(await ask('size melt 5 kg brass'))).toEqual(
      expect.arrayContaining(ids(await ask('size melt 5 kg brass'))),
    );
    expect(ids(await ask('size melt 5 kg brass')).some((id) => id.includes('zinc'))).toBe(true);
  });

  it('takes the lift for that of a furnace, not of a pot in tongs', async () => {
    const found = ids(await ask('size melt 5 kg bronze'));
    expect(found).toContain('two-people');
    expect(found.some((id) => id.startsWith('pot-lift'))).toBe(false);
  });

  it('reaches a line that stops after "size"', async () => {
    const reply = await ask('size');
    expect(errorOf(reply).expected).toContain('size can, size crucible, size melt');
    expect(ids(reply).at(-1)).toBe('local-rules');
    expect((await ask(errorOf(await ask('size 20 gal')).example)).kind).toBe('card');
  });
});

describe('size crucible and size melt', () => {
  it('name a vessel that, asked for, gives the same furnace', async () => {
    const proposed = cardOf(await ask('size crucible 6 in x 8 in'));
    const mirrored = cardOf(await ask('size can 30 gal drum crucible=6 in x 8 in'));
    expect(proposed.headline).toContain('steel drum, 30 US gal');
    expect(mirrored.figures).toEqual(proposed.figures);
    expect(mirrored.handsOver).toEqual(proposed.handsOver);
  });

  it('come to one crucible from a melt and from its volume', async () => {
    const melt = cardOf(await ask('size melt 4.76 kg aluminium'));
    const volume = cardOf(await ask('size crucible 2 L'));
    expect(value(melt, 'size.crucible')).toBeCloseTo(value(volume, 'size.crucible') ?? Number.NaN, 6);
    expect(value(cardOf(await ask('size melt 11 lb of bronze')), 'size.working')).toBeCloseTo(
      (11 * 0.45359237) / 7900,
      9,
    );
  });

  it('make a vessel to measure where none is large enough', async () => {
    const card = cardOf(await ask('size crucible 600 mm x 800 mm'));
    expect(card.headline).toMatch(/needs a vessel .* none in the catalogue/);
  });
});

describe('hands on', () => {
  it('the mix for wall, floor and lid', async () => {
    const context = asker();
    const card = cardOf(await ask(story, context));
    const mix = cardOf(await ask('mix for=last', context));
    expect(value(mix, 'mix.volume')).toBeCloseTo(value(card, 'size.mix_volume') ?? Number.NaN, 6);
    expect(cardOf(await ask('mix for=(size crucible 2 L)')).units).toBe('metric');
  });

  it('the fire it was sized for: fuel, rate and tuyere', async () => {
    const context = asker();
    cardOf(await ask(story, context));
    const burner = cardOf(await ask('burner for=last', context));
    expect(burner.notes[0]).toMatch(/hole for a tube of 1\.57 in .* size again with tuyere=/);
    const [, tuyere = ''] = /tuyere=([\d.]+ in)/.exec(burner.notes[0]!) ?? [];
    const mended = cardOf(await ask(`burner for=(${story} tuyere=${tuyere})`));
    expect(mended.notes.join(' ')).not.toContain('hole for a tube');
    const gas = cardOf(await ask(`fuel for=(${story}) amount=2 lb`));
    expect(gas.headline).toMatch(/^Propane/);
    expect(gas.notes.join(' ')).not.toContain('was sized for');
    // Judged of the bore, as fuel itself would: no better known for being handed over.
    expect(gas.assumed.map(({ text }) => text).join(' ')).toMatch(/fired at .* for its bore/);
    const other = cardOf(await ask(`fuel lump charcoal for=(${story}) amount=2 lb`));
    expect(other.notes[0]).toMatch(/was sized for gas: lump charcoal wants .* fuel=charcoal/);
    expect(cardOf(await ask(`blast charcoal for=(${story})`)).notes[0]).toContain('was sized for gas');
    const exact = cardOf(await ask(`fuel for=(${story} rate=25 kW) amount=2 lb`));
    expect(exact.figures.find(({ id }) => id === 'fuel.power')?.value).toBeCloseTo(25e3, 0);
  }, 60_000);

  it('takes the name of any fuel for its kind', async () => {
    expect(cardOf(await ask(`${story} fuel=propane`)).handsOver.sized).toBe('gas');
    expect(cardOf(await ask(`${story} fuel=lump charcoal`)).handsOver.sized).toBe('charcoal');
    expect(errorOf(await ask(`${story} fuel=hope`)).what).toContain("can't be");
  });

  it('the wall', async () => {
    const reply = cardOf(await ask('wall for=(size can 20 gal crucible=6 in x 8 in)'));
    expect(reply.given.join(' ')).toMatch(/^from size can: layers,.* finish/);
  });
});

describe('refused, with the number that says why and a line that works', () => {
  it.each([
    [
      'a crucible wider than the can',
      'size can 20 gal crucible=20 in x 8 in',
      /20 in \(508 mm\) .* 15.5 in \(394 mm\)/,
    ],
    ['walls that leave no bore', `${story} wall=6 in`, /leave a bore of 3.51 in \(89 mm\)/],
    ['a tube that falls outward', `${story} tilt=-5`, /falls 5° outward is a drain/],
    ['a lid that hits the rim', `${story} lid=6 in`, /6 in \(152 mm\).*5.18 in \(132 mm\)/],
    ['a taper beyond a cone', 'size can 5 in / 45 in x 10 in', /5 in \(127 mm\).*45 in/],
    ["a maker's number", 'size can 20 gal crucible=#6', /maker's number/],
    ["a maker's letter and number", 'size crucible A8', /maker's number/],
    ['a sheet gauge', `${story} wall=16 gauge`, /sheet gauge/],
    ['two thousand or two', 'size melt 2,000 kg aluminium', /2,000.* can be read as/],
    ['three sizes of a crucible', 'size crucible 6 in x 8 in x 9 in', /no crucible/],
    ['a range', `${story} wall=1 to 2 in`, /range/],
    ['no insulation', `${story} insulation=kaolin`, /no insulation/],
    ['too small a can', 'size can paint can', /bore of \d+ mm/],
    ['a melt without a metal', 'size melt 5 kg', /does not say of which metal/],
    ['a melt too large for its can', 'size melt 300 kg aluminium vessel=20 gal', /across/],
  ])('%s', async (_what, line, says) => {
    const error = errorOf(await ask(line));
    expect(error.what).toMatch(says);
    expect((await ask(error.example)).kind).toBe('card');
  });
});
