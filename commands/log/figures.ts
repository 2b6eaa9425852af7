import type { Burned } from '../../core/build/log-burn.ts';
import type { Tally } from '../../core/build/log-tally.ts';
import type { Range } from '../../core/doubt/sample.ts';
import type { Figure } from '../../core/quantity/figure.ts';
import { toldOf } from './words.ts';

export const logFigures = {
  'log.efficiency': 'heat that the metal got, of the heat of the fuel',
  'log.fuel_per_metal': 'fuel over metal, by mass',
  'log.power': 'heat of the fuel over the time it burned',
  'log.burns': 'burns of this build so far',
  'log.hot': 'time hot so far, of the burns that were timed',
  'log.life': 'burns that such a hot face stands, judged',
  'log.wear': 'depth lost a burn',
  'log.left': 'burns left until a third of the hot face is gone',
  'log.density': 'dry density, by the bucket',
  'log.expected': 'what the catalogue has for it',
  'log.mass': 'the lining as weighed',
  'log.loss': 'lost a day since the weighing before, of its mass',
} as const;

export type LogFigure = keyof typeof logFigures;

type More = Partial<Pick<Figure, 'note' | 'shown'>> & {
  readonly range?: Range;
  readonly rangeBasis?: Figure['rangeBasis'];
};

export function figure(
  id: LogFigure,
  label: string,
  value: number,
  unit: Figure['unit'],
  { range, rangeBasis = 'sampled', ...more }: More = {},
): Figure {
  return range && range.high > range.low
    ? { id, label, value, unit, range: { low: range.low, high: range.high }, rangeBasis, ...more }
    : { id, label, value, unit, rangeBasis: 'none', ...more };
}

export function burnFigures(found: Burned): readonly Figure[] {
  const { efficiency, fuel_per_metal, power_W } = found;
  return [
    ...(efficiency
      ? [
          figure('log.efficiency', 'metal got, of the fuel’s heat', efficiency.value, '1', {
            range: efficiency.range,
            shown: 'percent',
            note: `told: ${toldOf(found)}`,
          }),
        ]
      : []),
    ...(fuel_per_metal === undefined
      ? []
      : [figure('log.fuel_per_metal', 'fuel for each of metal', fuel_per_metal, 'count', { note: 'by weight' })]),
    ...(power_W === undefined ? [] : [figure('log.power', 'fired on average at', power_W, 'W')]),
  ];
}

export function lifeFigures({ burns, hot_s, timed, life, wear_m, left_burns }: Tally): readonly Figure[] {
  return [
    figure('log.burns', 'burns so far', burns, 'count'),
    ...(timed > 0
      ? [
          figure('log.hot', 'hot so far', hot_s, 's', {
            shown: 'hours',
            ...(timed < burns ? { note: `${timed} of ${burns} burns timed` } : {}),
          }),
        ]
      : []),
    figure('log.life', 'such a hot face stands', life.typical, 'count', {
      range: { low: life.low, high: life.high },
      rangeBasis: 'judged',
      note: 'burns, judged',
    }),
    ...(wear_m === undefined ? [] : [figure('log.wear', 'wears a burn', wear_m, 'm')]),
    ...(left_burns === undefined
      ? []
      : [figure('log.left', 'burns to a third gone', Math.floor(left_burns), 'count', { note: 'at this wear' })]),
  ];
}
