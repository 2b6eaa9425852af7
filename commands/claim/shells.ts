import { readLayers } from '../wall/layers.ts';
import type { Claimed, Comparison } from './claimed.ts';
import {
  degrees,
  type Groups,
  length,
  name,
  number,
  type Pattern,
  q,
  read,
  system,
  time,
  typed,
  volume,
  whole,
} from './words.ts';

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

export const shellClaims: readonly Pattern[] = [
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
];
