import { AskError } from '../../core/ask-error.ts';
import { type Fuel, findFuel } from '../../core/fire/fuel/fuel.ts';
import { findPour } from '../../core/materials/catalogue.ts';
import { type Dimension, type Quantity, readQuantity } from '../../core/quantity/parse.ts';
import { readLayers } from '../wall/layers.ts';
import type { Claimed, Comparison } from './claimed.ts';

/**
 * A sentence is read only if one pattern takes every word of it. What is left over may turn its meaning round, so
 * then the asker is asked: a misreading is worse than a question back.
 */
export function readClaim(sentence: string): Claimed {
  const words = plain(sentence);
  if (!/\d/.test(words)) throw noNumber(sentence);
  for (const { pattern, means } of patterns) {
    const groups = pattern.exec(words)?.groups;
    const claimed = groups && tried(() => means(groups));
    if (claimed) return claimed;
  }
  throw notRead(sentence);
}

/** What is no fuel, no metal or no quantity there is no claim of this pattern: another may take it. */
function tried<T>(read: () => T): T | undefined {
  try {
    return read();
  } catch (error) {
    if (error instanceof AskError) return undefined;
    throw error;
  }
}

const numberWords: readonly (readonly [RegExp, string])[] = [
  [/\bhalf an hour\b/g, '30 min'],
  [/\ban hour and a half\b/g, '90 min'],
  [/\b(?:an|one) hour\b/g, '1 h'],
  ...['two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'].map(
    (word, index) => [new RegExp(`\\b${word}\\b`, 'g'), String(index + 2)] as const,
  ),
];

/** Small letters, digits for numbers, and none of the phrases that say who says so. */
function plain(sentence: string): string {
  let words = sentence
    .normalize('NFC')
    .toLowerCase()
    .replace(/[\s\u00a0\u202f]+/g, ' ')
    .replace(/[’‘]/g, "'")
    .replace(/[.!?\s]+$/, '')
    .replace(/^\s*(?:(?:i (?:think|say|heard)|they say|people say|it is said|someone says)(?: that)?,? )/, '')
    .trim();
  for (const [pattern, digits] of numberWords) words = words.replace(pattern, digits);
  return words;
}

const number = String.raw`\d[\d.,/½¼¾]*(?: \d\/\d)?`;
const q = (name: string, units: string) => `(?<${name}>${number} ?(?:${units}))`;
const mass = 'kg|kilos?|g|grams?|lbs?|pounds?|oz|t';
const degrees = '° ?[cf]|degrees? [cf]|k|c|f';
const time = 'h|hours?|hrs?|min|minutes?|s|seconds?';
const volume = 'l|litres?|liters?|gal|gallons?|cu ft|cubic feet';
const length = 'mm|cm|in|inch|inches|"|ft|feet|m';
const power = 'kw|w|btu\\/h';
const more =
  '(?<limit>at most|at least|less than|more than|under|over|below|above|up to|no more than|only|about|around|roughly|some)? ?';
const name = (group: string) => `(?<${group}>[a-z][a-z -]{1,30})`;

const compared: Readonly<Record<string, Comparison>> = {
  'at most': 'at most',
  'less than': 'at most',
  under: 'at most',
  below: 'at most',
  'up to': 'at most',
  'no more than': 'at most',
  only: 'at most',
  'at least': 'at least',
  'more than': 'at least',
  over: 'at least',
  above: 'at least',
};
const compareOf = (limit: string | undefined, otherwise: Comparison): Comparison =>
  limit === undefined ? otherwise : (compared[limit.trim()] ?? 'about');

type Groups = Readonly<Record<string, string | undefined>>;
interface Pattern {
  readonly pattern: RegExp;
  readonly means: (groups: Groups) => Claimed;
}

const whole = (text: string): RegExp => new RegExp(`^(?:${text})$`, 'u');

function read(text: string | undefined, dimension: Dimension): Quantity {
  const typed = (text ?? '')
    .replace(/ ?degrees? ([cf])$/, ' °$1')
    .replace(/(?<=\d) ?([cf])$/, ' °$1')
    .replace(/° ?([cf])/, (_, unit: string) => `°${unit.toUpperCase()}`);
  const spelled = typed
    .replace(/\bkw\b/, 'kW')
    .replace(/\bw\b/, 'W')
    .replace(/\bbtu\b/, 'Btu')
    .replace(/\bmj\b/, 'MJ')
    .replace(/\bkj\b/, 'kJ')
    .replace(/\bkwh\b/, 'kWh')
    .replace(/(?<=\d) ?k$/, ' K')
    .replace(/(?<=\d) ?l$/, ' L');
  return readQuantity(spelled, { dimensions: [dimension], label: 'the claim' });
}

const fuelOf = (text: string | undefined): Fuel =>
  findFuel((text ?? '').replace(/^(?:a|an|the|some) /, '').replace(/ (?:fire|burner|flame|furnace)$/, ''));
const metalOf = (text: string | undefined): string =>
  findPour((text ?? '').replace(/^(?:of|the) /, '')).id.replaceAll('-', ' ');
const typed = ({ text }: Quantity): string => text;
const system = (...all: readonly Quantity[]) => all.find((one) => one.system !== undefined)?.system;

/** What a melt burns, costs or takes. */
function melt(
  figure: 'fuel.mass' | 'fuel.time' | 'fuel.cost',
  { fuel, metal, amount, rate, limit, value }: Groups,
  otherwise: Comparison,
): Claimed {
  const kind = fuelOf(fuel);
  const alloy = metalOf(metal);
  const melted = read(amount, 'mass');
  const dimension = ({ 'fuel.mass': 'mass', 'fuel.time': 'time', 'fuel.cost': 'money' } as const)[figure];
  const claimed = read(value, dimension);
  const fired = rate === undefined ? undefined : read(rate, 'power');
  return {
    lines: [`fuel ${kind.id} amount=${typed(melted)} metal=${alloy}${fired ? ` rate=${typed(fired)}` : ''}`],
    figure,
    of: `${{ 'fuel.mass': 'the fuel burned', 'fuel.time': 'the time to the pour', 'fuel.cost': 'the cost of the fuel' }[figure]} for ${typed(melted)} of ${alloy} over ${kind.name}, from a cold furnace`,
    compare: compareOf(limit, otherwise),
    kind: 'value',
    value: claimed.si,
    unit: ({ 'fuel.mass': 'kg', 'fuel.time': 's', 'fuel.cost': 'USD' } as const)[figure],
    system: system(claimed, melted),
    assumed: [{ text: 'the usual small furnace of the fuel card', override: 'for=club furnace' }],
  };
}

function flames(
  one: string,
  other: string,
  of: string,
  { by, way }: Groups,
  assumed: Claimed['assumed'] = [],
): Claimed {
  const difference = read(by, 'temperature-difference');
  const cooler = way === 'cooler' || way === 'colder';
  return {
    lines: cooler ? [other, one] : [one, other],
    figure: 'flame.temperature',
    of,
    compare: 'at least',
    kind: 'difference',
    value: difference.si,
    unit: 'dK',
    system: system(difference),
    assumed: [{ text: 'flames at their upper bound, both as far below it in fact' }, ...assumed],
  };
}

/** A hand may rest on it as long as it likes: the first limit that `touch` and `wall` know. */
const touch_K = 316.15;
const usualWall = '1.5 in clay-sand lining; 2 in vermiculite';

/** Of a wall: at what face, for how long. */
function wallLine(layers: string, { hot, hold }: Groups): string {
  return `wall ${layers}${hot === undefined ? '' : ` hot=${typed(read(hot, 'temperature'))}`}${hold === undefined ? '' : ` hold=${typed(read(hold, 'time'))}`}`;
}

/** What is said of how it is fired, told back. */
const conditionText = ({ hot, hold }: Groups): string =>
  `${hot === undefined ? '' : `, fired to ${typed(read(hot, 'temperature'))}`}${hold === undefined ? '' : `, held for ${typed(read(hold, 'time'))}`}`;

function shell(
  line: string,
  of: string,
  compare: Comparison,
  temp: string | undefined,
  assumed: Claimed['assumed'] = [],
): Claimed {
  const limit = temp === undefined ? undefined : read(temp, 'temperature');
  return {
    lines: [line],
    figure: 'wall.shell_peak',
    of,
    compare,
    kind: 'value',
    value: limit?.si ?? touch_K,
    unit: 'K',
    system: limit?.system,
    ...(compare === 'at most' ? { careful: true } : {}),
    assumed: [
      ...(limit ? [] : [{ text: 'cool to touch: at most 43 °C (109 °F), where a hand may rest as long as it likes' }]),
      { text: 'its hottest, which comes after the fire is out' },
      ...assumed,
    ],
  };
}

const layersOf = (text: string | undefined): string => {
  const said = (text ?? '').replace(/(\d) (inches|inch)\b/g, '$1 in').replace(/\b(in|mm|cm) of\b/g, '$1');
  readLayers(said, 'US');
  return said;
};

const cool = 'stays? (?:cool|cold)(?: enough)? to (?:the )?touch';
const atHot = `(?: (?:at|with) ${q('hot', degrees)}(?: inside)?)?`;
const forHold = `(?: for ${q('hold', time)})?`;
const conditions = `(?:${atHot}${forHold}|${forHold}${atHot.replaceAll('<hot>', '<hot2>')})`;
const conditionsOf = (groups: Groups): Groups => ({
  hot: groups.hot ?? groups.hot2,
  hold: groups.hold ?? groups.hold2,
});
const both = conditions.replace('(?<hold>', '(?<hold2>');

const patterns: readonly Pattern[] = [
  // Fuel of a melt.
  {
    pattern: whole(
      `${more}${q('value', mass)}(?: of)? ${name('fuel')} (?:melts|will melt|can melt|is enough (?:to melt|for)|does) ${q('amount', mass)}(?: of)? ${name('metal')}`,
    ),
    means: (groups) => melt('fuel.mass', groups, 'at most'),
  },
  {
    pattern: whole(
      `(?:it takes|you need) ${more}${q('value', mass)}(?: of)? ${name('fuel')} to melt ${q('amount', mass)}(?: of)? ${name('metal')}`,
    ),
    means: (groups) => melt('fuel.mass', groups, 'about'),
  },
  {
    pattern: whole(
      `(?:i|you|we) (?:can )?melt ${q('amount', mass)}(?: of)? ${name('metal')} (?:with|on|over) ${more}${q('value', mass)}(?: of)? ${name('fuel')}`,
    ),
    means: (groups) => melt('fuel.mass', groups, 'at most'),
  },
  {
    pattern: whole(
      `(?:melting )?${q('amount', mass)}(?: of)? ${name('metal')} (?:needs|takes|burns|uses) ${more}${q('value', mass)}(?: of)? ${name('fuel')}`,
    ),
    means: (groups) => melt('fuel.mass', groups, 'about'),
  },
  // Time of a melt.
  {
    pattern: whole(
      `${q('amount', mass)}(?: of)? ${name('metal')} melts in ${more}${q('value', time)} (?:over|with|on) ${name('fuel')}`,
    ),
    means: (groups) => melt('fuel.time', groups, 'at most'),
  },
  {
    pattern: whole(
      `(?:a )?${q('rate', power)} (?:of )?${name('fuel')} melts ${q('amount', mass)}(?: of)? ${name('metal')} in ${more}${q('value', time)}`,
    ),
    means: (groups) => melt('fuel.time', groups, 'at most'),
  },
  // Cost of a melt.
  {
    pattern: whole(
      `melting ${q('amount', mass)}(?: of)? ${name('metal')} (?:with|over|on) ${name('fuel')} costs ${more}(?<value>\\$ ?${number})`,
    ),
    means: (groups) => melt('fuel.cost', groups, 'about'),
  },
  {
    pattern: whole(
      `${name('fuel')} melts ${q('amount', mass)}(?: of)? ${name('metal')} for ${more}(?<value>\\$ ?${number})`,
    ),
    means: (groups) => melt('fuel.cost', groups, 'at most'),
  },
  // Heat of a melt.
  {
    pattern: whole(
      `(?:melting )?${q('amount', mass)}(?: of)? ${name('metal')} (?:needs|takes) ${more}${q('value', 'mj|kj|kwh|btu')}(?: of heat)?`,
    ),
    means: ({ amount, metal, limit, value }) => {
      const melted = read(amount, 'mass');
      const claimed = read(value, 'energy');
      return {
        lines: [`melt ${typed(melted)} ${metalOf(metal)}`],
        figure: 'melt.heat',
        of: `the heat in ${typed(melted)} of ${metalOf(metal)} at its pour, without furnace and crucible`,
        compare: compareOf(limit, 'about'),
        kind: 'value',
        value: claimed.si,
        unit: 'J',
        system: system(melted),
        assumed: [],
      };
    },
  },
  // Flames.
  {
    pattern: whole(
      `${name('fuel')} burns (?:at )?(?:least )?${q('by', degrees)} (?<way>hotter|cooler|colder) than ${name('other')}`,
    ),
    means: (groups) => {
      const [one, other] = [fuelOf(groups.fuel), fuelOf(groups.other)];
      return flames(
        `flame ${one.id}`,
        `flame ${other.id}`,
        `the flame of ${one.name}, less or more than that of ${other.name}`,
        groups,
      );
    },
  },
  {
    // What lump is held against in every such talk; of other fuels it would be a guess.
    pattern: whole(`(?<fuel>lump(?: charcoal)?) burns ${q('by', degrees)} (?<way>hotter)`),
    means: (groups) =>
      flames(
        'flame lump-charcoal',
        'flame charcoal-briquettes',
        'the flame of lump charcoal over that of briquettes',
        groups,
        [
          {
            text: 'hotter than briquettes, which lump is held against',
            override: 'lump burns 300 °F hotter than propane',
          },
        ],
      ),
  },
  {
    pattern: whole(
      `(?:preheating|warming|heating) the (?:blast|air) to ${q('air', degrees)} makes ${name('fuel')} burn ${q('by', degrees)} (?<way>hotter)`,
    ),
    means: (groups) => {
      const fuel = fuelOf(groups.fuel);
      return flames(
        `flame ${fuel.id} air=${typed(read(groups.air, 'temperature'))}`,
        `flame ${fuel.id}`,
        `the flame of ${fuel.name} in warmed air over that in air from outside`,
        groups,
      );
    },
  },
  {
    pattern: whole(
      `(?<excess>${number} ?%) (?:of )?excess air makes ${name('fuel')} burn ${q('by', degrees)} (?<way>cooler|colder|hotter)`,
    ),
    means: (groups) => {
      const fuel = fuelOf(groups.fuel);
      return flames(
        `flame ${fuel.id} excess=${typed(read(groups.excess, 'fraction'))}`,
        `flame ${fuel.id} excess=0%`,
        `the flame of ${fuel.name} with that excess, beside one with just enough air`,
        groups,
      );
    },
  },
  {
    pattern: whole(`${name('fuel')} (?:burns at|reaches|gets to) ${more}${q('value', degrees)}`),
    means: ({ fuel, limit, value }) => {
      const kind = fuelOf(fuel);
      const claimed = read(value, 'temperature');
      return {
        lines: [`flame ${kind.id}`],
        figure: 'flame.temperature',
        of: `the flame of ${kind.name} at its upper bound`,
        compare: compareOf(limit, 'at least'),
        kind: 'value',
        value: claimed.si,
        unit: 'K',
        system: system(claimed),
        assumed: [{ text: 'an upper bound: a real flame stays 100 to 400 K below' }],
      };
    },
  },
  // Shells.
  {
    pattern: whole(`(?:my|a|the) ${q('can', volume)} (?:drum|can|furnace|bucket) ${cool}${both}`),
    means: (groups) => {
      const can = typed(read(groups.can, 'volume'));
      return shell(
        wallLine('', conditionsOf(groups)).replace('wall ', `wall for=(size can ${can})`),
        `the shell of a furnace in a ${can} can${conditionText(conditionsOf(groups))}`,
        'at most',
        undefined,
        [{ text: `the lining that a ${can} can is sized with`, override: 'for=club furnace' }],
      );
    },
  },
  {
    pattern: whole(
      `(?<fill>[\\d].*?) behind (?<lining>[\\d].*?) keeps the shell (?<limit>below|under|at most) ${q('value', degrees)}${both}`,
    ),
    means: (groups) => {
      const layers = `${layersOf(groups.lining)}; ${layersOf(groups.fill)}`;
      return shell(
        wallLine(layers, conditionsOf(groups)),
        `the shell of ${layers}${conditionText(conditionsOf(groups))}`,
        'at most',
        groups.value,
      );
    },
  },
  {
    pattern: whole(`(?<fill>[\\d].*?) behind (?<lining>[\\d].*?) ${cool}${both}`),
    means: (groups) => {
      const layers = `${layersOf(groups.lining)}; ${layersOf(groups.fill)}`;
      return shell(
        wallLine(layers, conditionsOf(groups)),
        `the shell of ${layers}${conditionText(conditionsOf(groups))}`,
        'at most',
        undefined,
      );
    },
  },
  {
    pattern: whole(
      `(?:(?:a wall|the shell|a shell) (?:of|behind) )?(?<layers>[\\d].*?) (?:stays|keeps) (?:below|under) ${q('value', degrees)}(?: outside)?${both}`,
    ),
    means: (groups) => {
      const layers = layersOf(groups.layers);
      return shell(
        wallLine(layers, conditionsOf(groups)),
        `the shell of ${layers}${conditionText(conditionsOf(groups))}`,
        'at most',
        groups.value,
      );
    },
  },
  {
    pattern: whole(
      `(?:the shell (?:of|behind) )?(?<layers>[\\d].*?) gets (?:hotter than|above|over) ${q('value', degrees)}(?: outside)?${both}`,
    ),
    means: (groups) => {
      const layers = layersOf(groups.layers);
      return shell(
        wallLine(layers, conditionsOf(groups)),
        `the shell of ${layers}${conditionText(conditionsOf(groups))}`,
        'at least',
        groups.value,
      );
    },
  },
  {
    pattern: whole(
      `(?<layers>[\\d].*?) can be touched (?<after>${number} ?(?:${time})) after the fire(?: is out)?${both}`,
    ),
    means: (groups) => {
      const layers = layersOf(groups.layers);
      return {
        lines: [wallLine(layers, conditionsOf(groups))],
        figure: 'wall.touch43',
        of: `the time after the fire until a hand may rest on the shell of ${layers}${conditionText(conditionsOf(groups))}`,
        compare: 'at most',
        kind: 'value',
        value: read(groups.after, 'time').si,
        unit: 's',
        system: undefined,
        careful: true,
        assumed: [],
      };
    },
  },
  {
    pattern: whole(
      `${q('one', length)} of ${name('fill')} keeps the shell ${q('by', degrees)} cooler than ${q('other', length)}${both}`,
    ),
    means: (groups) => {
      const wall = (thick: string | undefined) =>
        wallLine(`1.5 in clay-sand lining; ${layersOf(`${thick} ${groups.fill}`)}`, conditionsOf(groups));
      const by = read(groups.by, 'temperature-difference');
      return {
        lines: [wall(groups.other), wall(groups.one)],
        figure: 'wall.shell_peak',
        of: `the shell behind ${groups.other} of ${groups.fill} over that behind ${groups.one}${conditionText(conditionsOf(groups))}`,
        compare: 'at least',
        kind: 'difference',
        value: by.si,
        unit: 'dK',
        system: system(by),
        assumed: [{ text: `both behind ${usualWall.split(';')[0]}` }],
      };
    },
  },
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
      if (money !== (what === 'costs') || (part === undefined) !== (what !== 'takes'))
        throw notRead(`${what} ${value}`);
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

const example = 'claim 3 kg of charcoal melts 6 kg of aluminium';

const noNumber = (sentence: string) =>
  new AskError({
    code: 'missing',
    what: `"${sentence.slice(0, 60)}" has no number to hold against ours`,
    expected: 'how much, how hot, how long or how many; without a number settle weighs two sides',
    example,
    option: 'statement',
  });

const notRead = (sentence: string) =>
  new AskError({
    code: 'unreadable',
    what: `"${sentence.slice(0, 80)}" could be meant in more than one way, or has a part that is not understood`,
    expected:
      'one figure and one number: so much fuel melts so much metal, a wall stays below a temperature, a fuel burns so much hotter than another; or figure= and is= with the question in for=(…)',
    example: 'claim figure=shell is=below 60 °C for=(wall 2 in clay-sand; 2 in vermiculite)',
    option: 'statement',
  });
