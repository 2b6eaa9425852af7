import {
  compareOf,
  fuelOf,
  length,
  mass,
  more,
  name,
  number,
  type Pattern,
  power,
  q,
  read,
  system,
  typed,
  volume,
  whole,
} from './words.ts';

export const makingClaims: readonly Pattern[] = [
  // Air.
  {
    pattern: whole(
      `(?:a|an|my) ${name('blower')} (?:gives|moves|blows) ${more}${q('value', 'cfm|m3\\/h|l\\/s')}(?: through (?:a )?(?<pipe>${number} ?(?:${length})) (?:pipe|tube))?`,
    ),
    means: ({ blower, limit, value, pipe }) => {
      const flow = read(value, 'flow');
      const bore = pipe === undefined ? undefined : read(pipe, 'length');
      return {
        lines: [`blast charcoal blower=${blower}${bore ? ` pipe=${typed(bore)} x 3 ft` : ''}`],
        figure: 'blast.flow',
        of: `the air a ${blower} gets through pipe and bed`,
        compare: compareOf(limit, 'at least'),
        kind: 'value',
        value: flow.si,
        unit: 'm3/s',
        system: system(flow),
        assumed: [{ text: 'three feet of pipe, and a bed of charcoal to blow through' }],
      };
    },
  },
  {
    pattern: whole(`(?:a|an|my) ${name('blower')} is enough for ${q('rate', power)}(?: of ${name('fuel')})?`),
    means: ({ blower, rate, fuel }) => {
      const wanted = read(rate, 'power');
      const kind = fuelOf(fuel ?? 'charcoal');
      return {
        lines: [`blast ${kind.id} rate=${typed(wanted)} blower=${blower}`],
        figure: 'blast.cover',
        of: `the air a ${blower} gets through, of what ${typed(wanted)} of ${kind.name} needs`,
        compare: 'at least',
        kind: 'value',
        value: 1,
        unit: '1',
        system: system(wanted),
        assumed: fuel === undefined ? [{ text: 'a charcoal fire' }] : [],
      };
    },
  },
  {
    pattern: whole(
      `at ${q('high', 'm|ft|feet|metres|meters')} (?:a|my) ${name('blower')} gives (?<share>${number} ?%) less (?<what>heat|air)`,
    ),
    means: ({ high, blower, share, what }) => {
      const altitude = read(high, 'length');
      const less = read(share, 'fraction');
      return {
        lines: [
          `blast charcoal blower=${blower} altitude=${typed(altitude)}`,
          `blast charcoal blower=${blower} altitude=0 m`,
        ],
        figure: what === 'air' ? 'blast.flow' : 'blast.power',
        of: `${what === 'air' ? 'the air, by volume,' : 'the heat set free'} at ${typed(altitude)} over that at sea level`,
        compare: 'about',
        kind: 'share',
        value: 1 - less.si,
        unit: '1',
        system: system(altitude),
        assumed: [],
      };
    },
  },
  // Mixes.
  {
    pattern: whole(
      `${q('amount', volume)}(?: of)? (?<recipe>clay-sand|castable|dense castable)(?: lining)? (?<what>takes|costs|weighs) ${more}(?<value>\\$ ?${number}|${number} ?(?:${mass}))(?: of (?<part>clay|sand|castable))?(?<dry> dry)?`,
    ),
    means: ({ amount, recipe, what, limit, value, part }) => {
      const filled = read(amount, 'volume');
      const money = value?.startsWith('$') ?? false;
      if (money !== (what === 'costs') || (part === undefined) !== (what !== 'takes')) return undefined;
      const claimed = read(value, money ? 'money' : 'mass');
      return {
        lines: [`mix ${typed(filled)} recipe=${recipe === 'clay-sand' ? 'clay-sand' : 'castable'}`],
        figure: money ? 'mix.cost' : part === undefined ? 'mix.dry_mass' : `mix.${part}_mass`,
        of: `the ${money ? 'cost' : part === undefined ? 'dry weight' : part} of ${typed(filled)} of ${recipe}`,
        compare: compareOf(limit, 'about'),
        kind: 'value',
        value: claimed.si,
        unit: money ? 'USD' : 'kg',
        system: system(filled, claimed),
        assumed: [{ text: 'a tenth more, as spare', override: 'spare=0%' }],
      };
    },
  },
  // Whole furnaces.
  {
    pattern: whole(`(?:a|my) ${q('can', volume)} (?:furnace|can|drum) weighs ${more}${q('value', mass)}`),
    means: ({ can, limit, value }) => {
      const [vessel, weight] = [read(can, 'volume'), read(value, 'mass')];
      return {
        lines: [`size can ${typed(vessel)}`],
        figure: 'size.whole',
        of: `the weight of a furnace in a ${typed(vessel)} can, dry and without crucible`,
        compare: compareOf(limit, 'about'),
        kind: 'value',
        value: weight.si,
        unit: 'kg',
        system: system(vessel, weight),
        assumed: [],
      };
    },
  },
];
