import { describe, expect, it } from 'vitest';
import { AskError } from '../../core/ask-error.ts';
import { answerLine } from '../answer.ts';
import { inProcessMemory } from '../memory.ts';
import { oddsText } from '../settle/words.ts';
import type { Claimed } from './claimed.ts';
import { judge } from './judge.ts';
import { readClaim } from './read.ts';

const lb = 0.45359237;
const K = (celsius: number) => celsius + 273.15;
const F = (fahrenheit: number) => (fahrenheit + 459.67) / 1.8;

type Expected = readonly [lines: readonly string[], figure: string, compare: Claimed['compare'], value: number];

const sentences: readonly (readonly [string, Expected])[] = [
  [
    '3 kg of charcoal melts 6 kg of aluminium',
    [['fuel lump-charcoal amount=6 kg metal=aluminium'], 'fuel.mass', 'at most', 3],
  ],
  [
    'It takes 2 lb of propane to melt 10 lb of brass.',
    [['fuel propane amount=10 lb metal=brass'], 'fuel.mass', 'about', 2 * lb],
  ],
  [
    'You can melt 5 kg of bronze with 4 kg of lump charcoal',
    [['fuel lump-charcoal amount=5 kg metal=bronze'], 'fuel.mass', 'at most', 4],
  ],
  [
    '5 kg of aluminium needs less than 2 kg of charcoal',
    [['fuel lump-charcoal amount=5 kg metal=aluminium'], 'fuel.mass', 'at most', 2],
  ],
  [
    'melting 5 kg of aluminium takes at least 1 kg of propane',
    [['fuel propane amount=5 kg metal=aluminium'], 'fuel.mass', 'at least', 1],
  ],
  [
    '5 kg of aluminium melts in 40 minutes over charcoal',
    [['fuel lump-charcoal amount=5 kg metal=aluminium'], 'fuel.time', 'at most', 2400],
  ],
  [
    'a 20 kW propane burner melts 3 kg of aluminium in under 30 minutes',
    [['fuel propane amount=3 kg metal=aluminium rate=20 kW'], 'fuel.time', 'at most', 1800],
  ],
  [
    'melting 5 kg of aluminium with propane costs $3',
    [['fuel propane amount=5 kg metal=aluminium'], 'fuel.cost', 'about', 3],
  ],
  [
    'charcoal melts 5 kg of aluminium for less than $5',
    [['fuel lump-charcoal amount=5 kg metal=aluminium'], 'fuel.cost', 'at most', 5],
  ],
  ['melting 5 kg of aluminium takes 5 MJ', [['melt 5 kg aluminium'], 'melt.heat', 'about', 5e6]],
  [
    'lump burns 300 °F hotter',
    [['flame lump-charcoal', 'flame charcoal-briquettes'], 'flame.temperature', 'at least', 300 / 1.8],
  ],
  [
    'Lump charcoal burns 300 °F hotter than briquettes!',
    [['flame lump-charcoal', 'flame charcoal-briquettes'], 'flame.temperature', 'at least', 300 / 1.8],
  ],
  [
    'briquettes burns 50 K cooler than coke',
    [['flame coke', 'flame charcoal-briquettes'], 'flame.temperature', 'at least', 50],
  ],
  ['propane burns at 1950 °C', [['flame propane'], 'flame.temperature', 'at least', K(1950)]],
  ['a charcoal fire reaches 3500 °F', [['flame lump-charcoal'], 'flame.temperature', 'at least', F(3500)]],
  [
    'preheating the blast to 400 °C makes charcoal burn 200 °C hotter',
    [['flame lump-charcoal air=400 °C', 'flame lump-charcoal'], 'flame.temperature', 'at least', 200],
  ],
  [
    '30 % excess air makes propane burn 300 °C cooler',
    [['flame propane excess=0%', 'flame propane excess=30 %'], 'flame.temperature', 'at least', 300],
  ],
  [
    'my 60 L drum stays cool to touch for two hours at 1000 °C',
    [['wall for=(size can 60 L) hot=1000 °C hold=2 hours'], 'wall.shell_peak', 'at most', K(43)],
  ],
  [
    '2 inches of perlite behind 1 inch of castable keeps the shell below 60 °C at 1000 °C for an hour',
    [['wall 1 in castable; 2 in perlite hot=1000 °C hold=1 h'], 'wall.shell_peak', 'at most', K(60)],
  ],
  [
    'a wall of 2 in clay-sand; 2 in vermiculite stays below 300 °F',
    [['wall 2 in clay-sand; 2 in vermiculite'], 'wall.shell_peak', 'at most', F(300)],
  ],
  [
    'the shell of 2 in fibre blanket gets hotter than 100 °C at 1100 °C',
    [['wall 2 in fibre blanket hot=1100 °C'], 'wall.shell_peak', 'at least', K(100)],
  ],
  [
    '2 in clay-sand; 2 in vermiculite can be touched 8 hours after the fire',
    [['wall 2 in clay-sand; 2 in vermiculite'], 'wall.touch43', 'at most', 8 * 3600],
  ],
  [
    '4 inches of vermiculite keeps the shell 50 °C cooler than 2 inches',
    [
      ['wall 1.5 in clay-sand lining; 2 in vermiculite', 'wall 1.5 in clay-sand lining; 4 in vermiculite'],
      'wall.shell_peak',
      'at least',
      50,
    ],
  ],
  [
    'a hair dryer gives at least 30 cfm through a 1 in pipe',
    [['blast charcoal blower=hair dryer pipe=1 in x 3 ft'], 'blast.flow', 'at least', 30 * 4.719474432e-4],
  ],
  [
    'a hair dryer is enough for 20 kW',
    [['blast lump-charcoal rate=20 kW blower=hair dryer'], 'blast.cover', 'at least', 1],
  ],
  [
    'at 2000 m a hair dryer gives 20 % less heat',
    [
      ['blast charcoal blower=hair dryer altitude=2000 m', 'blast charcoal blower=hair dryer altitude=0 m'],
      'blast.power',
      'about',
      0.8,
    ],
  ],
  ['30 L of clay-sand lining takes 20 kg of clay', [['mix 30 L recipe=clay-sand'], 'mix.clay_mass', 'about', 20]],
  ['30 L of castable costs over $150', [['mix 30 L recipe=castable'], 'mix.cost', 'at least', 150]],
  ['30 L of clay-sand weighs 60 kg', [['mix 30 L recipe=clay-sand'], 'mix.dry_mass', 'about', 60]],
  ['a 20 gal furnace weighs 100 lb', [['size can 20 gal'], 'size.whole', 'about', 100 * lb]],
];

describe('a sentence', () => {
  it.each(sentences)('"%s" is read', (sentence, [lines, figure, compare, value]) => {
    const claimed = readClaim(sentence);
    expect(claimed).toMatchObject({ lines, figure, compare });
    expect(claimed.value).toBeCloseTo(value, 6);
  });

  it('is read in at least twenty-five ways of saying it', () => {
    expect(sentences.length).toBeGreaterThanOrEqual(25);
  });

  it.each([
    // No number, or none of a claim.
    ['lump burns hotter', 'missing'],
    ['perlite is better than vermiculite', 'missing'],
    // A number without its unit, its fuel or its metal.
    ['lump burns 300 hotter than briquettes', 'unreadable'],
    ['3 kg melts 6 kg of aluminium', 'unreadable'],
    ['3 kg of sugar melts 6 kg of aluminium', 'unreadable'],
    ['3 kg of charcoal melts 6 kg of chocolate', 'unreadable'],
    ['propane burns 300 °F hotter', 'unreadable'],
    // What no figure of ours says.
    ['perlite insulates 20 % better than vermiculite', 'unreadable'],
    ['a furnace lasts 100 melts', 'unreadable'],
    ['it is safe to melt indoors with 2 windows open', 'unreadable'],
    // A word that turns the meaning round.
    ['3 kg of charcoal never melts 6 kg of aluminium', 'unreadable'],
    ['3 kg of charcoal melts 6 kg of aluminium unless it is damp', 'unreadable'],
    ['3 kg of charcoal melts 6 kg of aluminium and 2 kg of brass', 'unreadable'],
    ['my 60 L drum stays cool to touch for two hours at 1000 °C with the lid off', 'unreadable'],
    ['a 60 L drum does not stay cool to touch at 1000 °C', 'unreadable'],
    ['30 L of castable costs 20 kg', 'unreadable'],
  ])('"%s" is asked back', (sentence, code) => {
    expect(() => readClaim(sentence)).toThrow(AskError);
    try {
      readClaim(sentence);
    } catch (error) {
      expect((error as AskError).code).toBe(code);
      expect((error as AskError).example).toMatch(/^claim /);
    }
  });
});

function conversation() {
  const context = { asker: 'ann', place: 'shed', now: new Date(0), memory: inProcessMemory() };
  return async (line: string) => {
    const reply = await answerLine(line, context);
    if (reply.kind === 'error') throw new Error(`${line}: ${reply.error.what}`);
    return reply.card;
  };
}

describe('the judgement', () => {
  const side = (value: number, doubted?: (x: number) => number) =>
    ({
      name: 'it',
      ask: { command: 'toy', options: {}, asker: 'a', place: 'p' },
      command: { name: 'toy' },
      card: { figures: [{ id: 'toy.y', label: 'y', value, unit: 'kg', rangeBasis: 'none' }] },
      doubted: doubted && {
        inputs: { x: { low: 0, typical: 0.5, high: 1 } },
        units: { x: 'kg' },
        samples: 1000,
        model: ({ x }: { x: number }) => ({ 'toy.y': doubted(x) }),
      },
    }) as unknown as Parameters<typeof judge>[1][number];
  const claimed = (more: Partial<Claimed>): Claimed => ({
    lines: ['toy'],
    figure: 'toy.y',
    of: 'y',
    compare: 'at most',
    kind: 'value',
    value: 10,
    unit: 'kg',
    system: undefined,
    assumed: [],
    ...more,
  });

  it('fits, or not, where every sample does, or none', () => {
    expect(judge(claimed({ value: 12 }), [side(10.5, (x) => 10 + x)])).toMatchObject({ finding: 'fits', holds: 1 });
    expect(judge(claimed({ value: 9 }), [side(10.5, (x) => 10 + x)])).toMatchObject({
      finding: 'does not fit',
      holds: 0,
    });
  });

  it('fits only if, between, and turns where algebra says', () => {
    const found = judge(claimed({ value: 10.4 }), [side(10.5, (x) => 10 + x)]);
    expect(found.finding).toBe('fits only if');
    // Below 0.4 of a symmetric triangle on 0 … 1 lie 2 · 0.4².
    expect(found.holds).toBeCloseTo(0.32, 2);
    expect(found.turnings[0]?.flips).toBeCloseTo(0.4, 2);
  });

  it('holds what a hand depends on to the adverse end', () => {
    // 95 % of the triangle lie below 1 − √(0.05 / 2).
    const value = 10 + 1 - Math.sqrt(0.025);
    expect(judge(claimed({ value }), [side(10.5, (x) => 10 + x)]).finding).toBe('fits');
    expect(judge(claimed({ value, careful: true }), [side(10.5, (x) => 10 + x)]).finding).toBe('fits only if');
  });

  it('takes differences and shares of two, what they share cancelling', () => {
    const [one, other] = [side(12, (x) => 12 + x - 0.5), side(10, (x) => 10 + x - 0.5)];
    const difference = claimed({ kind: 'difference', compare: 'at least', value: 1.9, lines: ['toy', 'toy'] });
    expect(judge(difference, [one, other])).toMatchObject({ finding: 'fits', holds: 1, value: 2 });
    expect(judge({ ...difference, value: 2.1 }, [one, other]).finding).toBe('does not fit');
    const share = claimed({ kind: 'share', compare: 'about', value: 0.8, lines: ['toy', 'toy'] });
    expect(judge(share, [side(8, (x) => 8 * (x + 0.5)), side(10, (x) => 10 * (x + 0.5))]).finding).toBe('fits');
    expect(
      judge({ ...share, value: 0.5 }, [side(8, (x) => 8 * (x + 0.5)), side(10, (x) => 10 * (x + 0.5))]).finding,
    ).toBe('does not fit');
  });

  it('goes by typical values where nothing can be sampled', () => {
    expect(judge(claimed({}), [side(9)])).toMatchObject({ finding: 'fits', holds: undefined });
    expect(judge(claimed({}), [side(11)]).finding).toBe('does not fit');
    expect(judge(claimed({ compare: 'about' }), [side(10.9)]).finding).toBe('fits');
    expect(judge(claimed({ compare: 'about' }), [side(11.1)]).finding).toBe('does not fit');
  });
});

describe('claim', () => {
  it('shows back what it understood, with the conditions, and judges it', async () => {
    const card = await conversation()('claim my 60 L drum stays cool to touch for two hours at 1000 °C');
    expect(card.headline).toMatch(
      /^Does not fit\. Understood as: the shell of a furnace in a 60 L can, fired to 1000 °C, held for 2 hours/,
    );
    expect(card.given.join(' ')).toContain('hot=1000 °C hold=2 hours');
    expect(card.cautions.at(-1)?.id).toBe('local-rules');
  }, 30_000);

  it('takes any figure of any question by options', async () => {
    const ask = conversation();
    const card = await ask('claim figure=dry_mass is=above 50 kg for=(mix 30 L)');
    expect(card.headline).toMatch(/^Fits\./);
    await ask('build save club lining for=(mix 30 L)');
    expect((await ask('claim figure=dry_mass is=below 50 kg for=club lining')).headline).toMatch(/^Does not fit/);
    await expect(ask('claim figure=shell is=below 50 kg for=(mix 30 L)')).rejects.toThrow('no figure');
    await expect(ask('claim figure=shell')).rejects.toThrow('not said what is claimed');
  });

  it('leads in the units of the claim', async () => {
    expect((await conversation()('claim propane burns at 3600 °F')).headline).toContain('at least 3600 °F');
  }, 30_000);

  it('can be about a build of one’s own', async () => {
    const ask = conversation();
    await ask('build save club lining for=(wall 2 in clay-sand; 2 in vermiculite)');
    const card = await ask('claim 3 kg of charcoal melts 6 kg of aluminium for=club lining');
    const alone = await ask('fuel lump-charcoal amount=6 kg metal=aluminium for=club lining');
    const value = (id: string, of: typeof card) => of.figures.find((one) => one.id === id)?.value;
    expect(value('claim.value', card)).toBe(value('fuel.mass', alone));
  }, 30_000);
});

describe('the odds', () => {
  it.each([
    [1, 'every one of 600 samples'],
    [0.997, 'over 99 % of 600 samples'],
    [0.5, '50 % of 600 samples'],
    [0.003, 'under 1 % of 600 samples'],
    [0, 'none of 600 samples'],
  ])('%d are told as %s: never as all that is not all, nor as none that is some', (share, told) =>
    expect(oddsText(share, 600)).toBe(told),
  );

  it('of a headline are those of its figure', async () => {
    const here = { asker: 'ann', place: 'shed', now: new Date(0), memory: inProcessMemory() };
    const reply = await answerLine('claim 3 kg of charcoal melts 6 kg of aluminium', here);
    if (reply.kind === 'error') throw new Error(reply.error.what);
    const { headline, figures } = reply.card;
    const { value = Number.NaN } = figures.find(({ id }) => id === 'claim.odds') ?? {};
    expect(value).toBeLessThan(1);
    expect(headline).toMatch(/holds in over 99 % of [\d,]+ samples/);
  });
});
