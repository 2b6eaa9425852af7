import type { ChartPanel } from '../../commands/card.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { formatBoth } from '../../core/quantity/format.ts';
import type { Axis } from './axis.ts';
import type { Px } from './box.ts';
import { linesOf, widthOf } from './letters.ts';
import { letter_px } from './theme.ts';

/** A level line's name beside the plot: its words, where they begin, and the way of the leader that joins them. */
export interface ColumnLabel {
  readonly rows: readonly string[];
  /** Middle of the left edge of the words. */
  readonly at: Px;
  readonly leader: readonly Px[];
}

const row_px = 1.15 * letter_px;
/** Nearer than this the names of two lines would stand on one another. */
const crowd_px = 1.6 * letter_px;
/** The other scale's numbers stand here, right of the plot; then the leaders slant to their words. */
const scale_px = 105;
const slant_px = 26;
const gap_px = 6;
/** A longer name is broken. */
const longest_px = 275;

type Lines = NonNullable<ChartPanel['lines']>;

/** From the top of a plot. */
const heightOf = (y: Axis, at: number, height: number): number =>
  height - ((y.of(at) - y.low) / (y.high - y.low)) * height;

/** Level lines of a panel, top first. */
export const levelsOf = ({ lines = [] }: ChartPanel): Lines =>
  lines.filter(({ axis }) => axis === 'y').toSorted((a, b) => b.at - a.at);

/** Whether level lines lie too close to be named on the plot: then those of all panels are named beside it. */
export function crowded(panel: ChartPanel, y: Axis, height: number): boolean {
  const tops = levelsOf(panel).map(({ at }) => heightOf(y, at, height));
  return tops.some((top, at) => at > 0 && top - tops[at - 1]! < crowd_px);
}

/** Name above, value in both systems below. */
const rowsOf = ({ name, at }: Lines[number], { y: { unit, shown } }: ChartPanel, units: UnitSystem) => [
  ...linesOf(name, letter_px, longest_px),
  formatBoth(at, unit, units, shown).replace(/ \((.*)\)$/, ' · $1'),
];

/** Room that the names take beside the plot, px. */
export function columnWidth(panel: ChartPanel, units: UnitSystem): number {
  const widths = levelsOf(panel).flatMap((line) => rowsOf(line, panel, units).map((row) => widthOf(row, letter_px)));
  return widths.length === 0 ? 0 : slant_px + 2 * gap_px + Math.max(...widths);
}

/** Moved apart as little as keeps each whole and the order as it is, between nothing and `most`. */
export function spreadOut(wanted: readonly number[], apart: number, most: number): readonly number[] {
  const places = wanted.map((one) => one);
  for (const [at, place] of places.entries()) if (at > 0) places[at] = Math.max(place, places[at - 1]! + apart);
  // What was pushed past the end, and half of every push, goes back up.
  const over = Math.max(0, places.at(-1)! - most, ...places.map((place, at) => (place - wanted[at]!) / 2));
  for (const [at, place] of places.entries()) places[at] = place - (place > wanted[at]! || at === 0 ? over : 0);
  for (let at = places.length - 2; at >= 0; at--) places[at] = Math.min(places[at]!, places[at + 1]! - apart);
  return places;
}

/** Names in a column beside the plot, each joined to its line. */
export function columnLabels(
  levels: Lines,
  panel: ChartPanel,
  { y, size, units }: { y: Axis; size: { readonly width: number; readonly height: number }; units: UnitSystem },
): readonly ColumnLabel[] {
  const tops = levels.map(({ at }) => heightOf(y, at, size.height));
  if (levels.length === 0) return [];
  const rows = Math.max(...levels.map((line) => rowsOf(line, panel, units).length));
  const middles = spreadOut(tops, (rows + 0.2) * row_px, size.height - (rows / 2) * row_px);
  return levels.map((line, at) => {
    const [top, middle] = [tops[at]!, middles[at]!];
    const bend = size.width + scale_px;
    return {
      rows: rowsOf(line, panel, units),
      at: [bend + slant_px + gap_px, middle],
      leader: [
        [size.width, top],
        [bend, top],
        [bend + slant_px, middle],
      ],
    };
  });
}

/** Where the rows of a label stand, from its middle. */
export const rowOffset = (row: number, rows: number): number => (row - (rows - 1) / 2) * row_px;

/** Whether a number of the other scale stands on one of the leaders. */
export const onLeader = (at: number, y: Axis, height: number, levels: Lines): boolean =>
  levels.some((line) => Math.abs(((y.of(line.at) - at) / (y.high - y.low)) * height) < 0.6 * letter_px);
