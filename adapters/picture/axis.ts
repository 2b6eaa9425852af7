import type { Chart, ChartPanel } from '../../commands/card.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { type Scale, scaleOf } from '../../core/quantity/scale.ts';

/** A value axis in the reader's units, and the same values in the other system where that reads differently. */
export interface Axis {
  readonly name: string;
  readonly unit: string;
  readonly low: number;
  readonly high: number;
  readonly ticks: readonly number[];
  readonly other?: { readonly unit: string; readonly ticks: readonly { readonly at: number; readonly text: string }[] };
  /** The number a tick has in the other system, as text. */
  readonly inOther?: (tick: number) => string;
  /** SI to the reader's units. */
  readonly of: (si: number) => number;
}

type Named = Chart['x'] | ChartPanel['y'];

const onScale = (si: number, { factor, offset }: Scale): number => (si - offset) / factor;
const siOn = (value: number, { factor, offset }: Scale): number => value * factor + offset;

/** `open` lets the axis end at round numbers beyond the values; else it ends where they do. */
export function axisOf(
  { label, unit, shown }: Named,
  values: Iterable<number>,
  units: UnitSystem,
  { open, ticks: count }: { open: boolean; ticks: number },
): Axis {
  let [least, most] = [Infinity, -Infinity];
  for (const value of values) {
    if (!Number.isFinite(value)) continue;
    [least, most] = [Math.min(least, value), Math.max(most, value)];
  }
  if (least > most) [least, most] = [0, 1];
  const size = Math.max(Math.abs(least), Math.abs(most));
  const [scale, otherScale] = [units, units === 'US' ? ('metric' as const) : ('US' as const)].map((system) =>
    scaleOf(size, unit, system, shown),
  ) as [Scale, Scale];
  const of = (si: number) => onScale(si, scale);
  let [low, high] = [of(least), of(most)];
  if (low === high) [low, high] = [low - 1, high + 1];
  // A quantity that comes near nothing is shown from nothing; temperatures have no such end.
  if (open && scale.offset === 0 && low > 0 && low < 0.4 * high) low = 0;
  const step = stepOf(high - low, count, unit === 's' ? clock : round);
  if (open) [low, high] = [Math.floor(low / step + 1e-9) * step, Math.ceil(high / step - 1e-9) * step];
  const axis = { name: label, unit: scale.name, low, high, ticks: ticksOf(low, high, step), of };
  if (otherScale.name === scale.name) return axis;
  const [otherLow, otherHigh] = [low, high].map((end) => onScale(siOn(end, scale), otherScale)) as [number, number];
  const otherStep = stepOf(otherHigh - otherLow, count, round);
  const ticks = ticksOf(otherLow, otherHigh, otherStep).map((value) => ({
    at: of(siOn(value, otherScale)),
    text: tickText(value),
  }));
  const inOther = (tick: number) => formatted(onScale(siOn(tick, scale), otherScale));
  return { ...axis, other: { unit: otherScale.name, ticks }, inOther };
}

const round = [1, 2, 2.5, 5, 10];
/** Minutes and hours are counted in these. */
const clock = [1, 2, 5, 10, 15, 20, 30, 60, 120, 240, 480];

function stepOf(span: number, count: number, digits: readonly number[]): number {
  const rough = span / Math.max(count, 1);
  if (digits === clock && rough > 1) return clock.find((step) => step >= rough) ?? stepOf(span, count, round);
  const ten = 10 ** Math.floor(Math.log10(rough));
  return ten * (round.find((digit) => digit * ten >= rough * (1 - 1e-9)) ?? 10);
}

function ticksOf(low: number, high: number, step: number): readonly number[] {
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, at) =>
    Number(((first + at) * step).toPrecision(12)),
  );
}

const formatted = (value: number): string => tickText(Number(value.toPrecision(3)));

export const tickText = (value: number): string => String(Number(value.toPrecision(6))).replace('-', '−');

/** Everything of a panel that its y axis has to hold. */
export function* valuesOf({ series, bands = [], lines = [] }: ChartPanel): Iterable<number> {
  for (const { points } of series) for (const [, y] of points) yield y;
  for (const { points } of bands) for (const [, low, high] of points) yield* [low, high];
  for (const { at, axis } of lines) if (axis === 'y') yield at;
}

/** Everything of a chart that the x axis has to hold. */
export function* momentsOf({ panels }: Chart): Iterable<number> {
  for (const { series, bands = [], lines = [] } of panels) {
    for (const { points } of [...series, ...bands]) for (const [x] of points) yield x;
    for (const { at, axis } of lines) if (axis === 'x') yield at;
  }
}

/** Series in the order they first appear: the same name has the same sign in every panel. */
export const seriesNames = ({ panels }: Chart): readonly string[] => [
  ...new Set(panels.flatMap(({ series, bands = [] }) => [...series, ...bands].map(({ name }) => name))),
];
