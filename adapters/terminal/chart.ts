import type { Card, Chart, ChartPanel } from '../../commands/card.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { formatBoth, formatSi } from '../../core/quantity/format.ts';
import { type Axis, axisOf, momentsOf, seriesNames, tickText, valuesOf } from '../picture/axis.ts';
import { levelsOf, spreadOut } from '../picture/chart-column.ts';
import { type Look, lengthOf, paint, plain, section, wrap } from './text.ts';

const tallest = 13;
/** Of two panels or more, each. */
const lower = 11;
const widest = 66;
/** Below this a curve is a few dots that say nothing. */
const narrowest = 16;

/** One sign a series, told apart without colour. */
const signs = ['●', '○', '▲', '△', '■', '□'];
const tints = ['red', 'blue', 'green', 'magenta', 'yellow', 'cyan'] as const;
const shade = '░';

type Cell = { readonly sign: string; readonly series?: number };
type Canvas = Cell[][];

/** A chart as text: panels over one x axis, curves of signs, limits and moments as named lines, both systems. */
export function chartLines(chart: Chart, units: UnitSystem, look: Look): readonly string[] {
  const names = seriesNames(chart);
  const ys = chart.panels.map((panel) => axisOf(panel.y, valuesOf(panel), units, { open: true, ticks: 4 }));
  const rows = chart.panels.length > 1 ? lower : tallest;
  const left = Math.max(...ys.flatMap((y) => y.ticks.map((tick) => tickText(tick).length)));
  const right = Math.max(0, ...ys.flatMap((y) => y.other?.ticks.map(({ text }) => text.length) ?? []));
  const whole = look.width - left - right - 6;
  const said = [formatBoth, formatSi].map(
    (format): Said =>
      ({ name, at }, { y }) =>
        `${plain(name)} ${format(at, y.unit, units, y.shown)}`,
  );
  const crowd = crowded(chart, ys, rows);
  const beside = crowd
    ? said.map((one) => namesBeside(chart, ys, rows, one)).find((one) => whole - besideWidth(one) >= leastBeside)
    : undefined;
  const width = Math.min(widest, whole - (beside ? besideWidth(beside) : 0));
  if (width < narrowest) return wrap(`${chart.title}: ${chart.alt}`, look.width);
  const x = axisOf(chart.x, momentsOf(chart), units, { open: false, ticks: Math.max(2, Math.floor(width / 7)) });
  const panels = chart.panels.flatMap((panel, at) => {
    const canvas = drawn(panel, { x, y: ys[at]!, width, rows, names, units, named: crowd });
    const under = crowd && !beside ? levelsOf(panel).map((line) => said[0]!(line, panel)) : [];
    return [
      ...headOf(panel, ys[at]!, names, look),
      ...(under.length > 0 ? wrap(`┈ ${under.join(' · ')}`, look.width - 2).map((line) => `  ${line}`) : []),
      ...framed(canvas, ys[at]!, { left, right, beside: beside?.[at] ?? [] }, look),
    ];
  });
  const bands = chart.panels.some((panel) => (panel.bands ?? []).length > 0);
  return [
    ...wrap(chart.title, look.width).map((line) => paint('bold', line, look)),
    ...panels,
    ...underneath(x, { left, width }),
    ...(bands ? wrap(`${shade} the likely range`, look.width - 4).map((line) => `    ${line}`) : []),
  ];
}

/** What pictures there are and how to get them; what they show in words stands in their files. */
export function drawingLines({ drawings = [] }: Card, look: Look): readonly string[] {
  if (drawings.length === 0) return [];
  const patterns = drawings.filter(({ fullSize }) => fullSize).length;
  const titles = drawings.filter(({ fullSize }) => !fullSize).map(({ title }) => title);
  const full = patterns === 0 ? [] : [`${patterns} full-size pattern${patterns === 1 ? '' : 's'}`];
  const how = patterns === 0 ? 'ask with --png FILE' : 'ask with --png FILE; full size on paper: --sheets DIR';
  return section(
    drawings.length === 1 ? 'Picture' : 'Pictures',
    [`${[...titles, ...full].join(' · ')} (${how})`],
    look,
  );
}

/** Axis names and the signs of this panel's series. */
function headOf({ series }: ChartPanel, y: Axis, names: readonly string[], look: Look): readonly string[] {
  const units = [y.unit, y.other?.unit].filter(Boolean).join(' left, ');
  const axis = `${y.name}, ${y.other ? `${units} right` : y.unit}`;
  const keys = series.map(({ name }) => `${signOf(names, name)}\u00a0${name}`);
  return wrap([axis, ...keys].join('   '), look.width - 2).map((line) => `  ${line}`);
}

const signOf = (names: readonly string[], name: string): string => signs[names.indexOf(name) % signs.length]!;

/** A plot is at least this wide beside the names of its lines. */
const leastBeside = 40;

/** Of each panel, what stands in each row right of its plot. */
type Beside = readonly (readonly string[])[];
type Level = ReturnType<typeof levelsOf>[number];
type Said = (line: Level, panel: ChartPanel) => string;

/** Whether two level lines of a panel are too near for names on the plot. */
function crowded({ panels }: Chart, ys: readonly Axis[], rows: number): boolean {
  return panels.some((panel, at) => {
    const places = levelsOf(panel).map((line) => rowOf(ys[at]!, ys[at]!.of(line.at), rows));
    return places.some((row, index) => index > 0 && row - places[index - 1]! < 2);
  });
}

/** Names of level lines in a column right of the plots, a bracket at those that belong together. */
const namesBeside = ({ panels }: Chart, ys: readonly Axis[], rows: number, said: Said): Beside =>
  panels.map((panel, at) => {
    const y = ys[at]!;
    const levels = levelsOf(panel);
    const column = Array.from({ length: rows }, () => '');
    if (levels.length === 0) return column;
    const wanted = levels.map((line) => rowOf(y, y.of(line.at), rows));
    const places = spreadOut(wanted, 1, rows - 1).map(Math.round);
    for (const [index, line] of levels.entries()) {
      const place = places[index]!;
      const above = places[index - 1] === place - 1;
      const below = places[index + 1] === place + 1;
      const bracket = above ? (below ? '├' : '└') : below ? '┌' : '─';
      column[place] = `${bracket} ${said(line, panel)}`;
    }
    return column;
  });

const besideWidth = (columns: Beside): number => 1 + Math.max(...columns.flat().map((text) => text.length));

interface Plot {
  readonly x: Axis;
  readonly y: Axis;
  readonly width: number;
  readonly rows: number;
  /** Level lines are named beside the plot. */
  readonly named: boolean;
  readonly names: readonly string[];
  readonly units: UnitSystem;
}

function drawn(panel: ChartPanel, { x, y, width, rows, named, names, units }: Plot): Canvas {
  const canvas: Canvas = Array.from({ length: rows }, () => Array.from({ length: width }, () => ({ sign: ' ' })));
  const column = (si: number) => Math.round(((x.of(si) - x.low) / (x.high - x.low)) * (width - 1));
  const row = (si: number) => rowOf(y, y.of(si), rows);
  const put = (c: number, r: number, cell: Cell) => {
    if (canvas[r]?.[c]) canvas[r][c] = cell;
  };
  for (const { points } of panel.bands ?? []) {
    eachColumn(
      points.map(([at, low]) => [column(at), row(low)] as const),
      (c, low) => {
        const high = valueAt(
          points.map(([at, , most]) => [column(at), row(most)] as const),
          c,
        );
        for (let r = Math.round(high); r <= Math.round(low); r++) put(c, r, { sign: shade });
      },
    );
  }
  const lines = panel.lines ?? [];
  for (const { at, axis } of lines) {
    if (axis === 'x') for (let r = 0; r < rows; r++) put(column(at), r, { sign: '┊' });
    else for (let c = 0; c < width; c++) put(c, row(at), { sign: '┈' });
  }
  for (const { name, points } of panel.series) {
    const series = names.indexOf(name);
    let before: number | undefined;
    eachColumn(
      points.map(([at, value]) => [column(at), row(value)] as const),
      (c, exact) => {
        const r = Math.round(exact);
        // A steep curve fills its column, so that it stays one curve.
        const [from, to] =
          before === undefined
            ? [r, r]
            : [Math.min(r, before + Math.sign(r - before)), Math.max(r, before + Math.sign(r - before))];
        for (let each = from; each <= to; each++) put(c, each, { sign: signOf(names, name), series });
        before = r;
      },
    );
  }
  for (const { name, at, axis } of lines) {
    if (axis === 'y' && named) continue;
    if (axis === 'y') write(canvas, row(at), ` ${plain(name)} ${formatBoth(at, panel.y.unit, units, panel.y.shown)} `);
    else writeBeside(canvas, column(at), plain(name));
  }
  return canvas;
}

const rowOf = (y: Axis, value: number, rows: number): number =>
  Math.round((1 - (value - y.low) / (y.high - y.low)) * (rows - 1));

/** Every column a curve passes, with the row it is in there. */
function eachColumn(
  points: readonly (readonly [number, number])[],
  visit: (column: number, row: number) => void,
): void {
  const [first, last] = [points[0]?.[0] ?? 0, points.at(-1)?.[0] ?? -1];
  for (let column = first; column <= last; column++) visit(column, valueAt(points, column));
}

function valueAt(points: readonly (readonly [number, number])[], column: number): number {
  const next = points.findIndex(([at]) => at >= column);
  const [to, from] = [points[next] ?? points.at(-1)!, points[next - 1]];
  if (!from || to[0] === from[0]) return to[1];
  return from[1] + ((to[1] - from[1]) * (column - from[0])) / (to[0] - from[0]);
}

/** Words on a level line where they hide least of a curve, and no other words. */
function write(canvas: Canvas, r: number, text: string): void {
  const line = canvas[r];
  if (!line) return;
  const letters = [...text].slice(0, line.length);
  let best = { start: 0, hides: Infinity };
  for (let start = line.length - letters.length; start >= 0; start--) {
    const hides = line
      .slice(start, start + letters.length)
      .reduce((sum, { sign, series }) => sum + (series === undefined ? ('┈┊░ '.includes(sign) ? 0 : 9) : 1), 0);
    if (hides < best.hides) best = { start, hides };
  }
  for (const [at, sign] of letters.entries()) line[best.start + at] = { sign };
}

/** Words at the right of an upright line, or at its left where there is no room, in the first row that is free. */
function writeBeside(canvas: Canvas, c: number, text: string): void {
  const letters = [...text];
  const start = c + 2 + letters.length <= (canvas[0]?.length ?? 0) ? c + 2 : c - 1 - letters.length;
  if (start < 0) return;
  const free = canvas.find((line) =>
    line.slice(start, start + letters.length).every(({ sign }) => '┈┊░ '.includes(sign)),
  );
  for (const [at, sign] of letters.entries()) if (free?.[start + at]) free[start + at] = { sign };
}

/** Numbers of both systems at the sides of the plot. */
function framed(
  canvas: Canvas,
  y: Axis,
  { left, right, beside }: { left: number; right: number; beside: readonly string[] },
  look: Look,
): readonly string[] {
  const rows = canvas.length;
  const lefts = new Map(y.ticks.map((tick) => [rowOf(y, tick, rows), tickText(tick)]));
  const rights = new Map(y.other?.ticks.map(({ at, text }) => [rowOf(y, at, rows), text]));
  return canvas.map((cells, r) => {
    const line = cells.map(({ sign, series }) =>
      series === undefined ? sign : paint(tints[series % tints.length]!, sign, look),
    );
    const lead = (lefts.get(r) ?? '').padStart(left);
    const rest = y.other ? `${rights.has(r) ? '├' : '│'} ${(rights.get(r) ?? '').padEnd(right)}` : '';
    return `  ${lead} ${lefts.has(r) ? '┤' : '│'}${line.join('')}${rest} ${beside[r] ?? ''}`.trimEnd();
  });
}

/** The x axis: numbers in the reader's units and, where they differ, the other system's below. */
function underneath(x: Axis, { left, width }: { left: number; width: number }): readonly string[] {
  const rule = Array.from({ length: width }, () => '─');
  const numbers = Array.from({ length: left + 4 + width }, () => ' ');
  const others = [...numbers];
  for (const tick of x.ticks) {
    const at = Math.round(((tick - x.low) / (x.high - x.low)) * (width - 1));
    rule[at] = '┬';
    place(numbers, left + 4 + at, tickText(tick));
    if (x.inOther) place(others, left + 4 + at, x.inOther(tick));
  }
  const indent = ' '.repeat(left + 3);
  const name = [x.name, [x.unit, x.other?.unit].filter(Boolean).join(' and ')].filter(Boolean).join(', ');
  return [
    `${indent}└${rule.join('')}`,
    numbers.join('').trimEnd(),
    ...(x.inOther ? [others.join('').trimEnd()] : []),
    ...wrap(name, width).map(
      (line) => indent + ' '.repeat(Math.max(0, Math.floor((width - lengthOf(line)) / 2))) + line,
    ),
  ];
}

function place(line: string[], centre: number, text: string): void {
  const start = Math.min(centre - Math.floor(text.length / 2), line.length - text.length);
  for (const [at, letter] of [...text].entries()) line[start + at] = letter;
}
