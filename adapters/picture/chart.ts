import type { TopLevelSpec } from 'vega-lite';
import type { Chart, ChartPanel } from '../../commands/card.ts';
import { type Axis, axisOf, momentsOf, seriesNames, tickText, valuesOf } from './axis.ts';
import { type ColumnLabel, columnLabels, columnWidth, crowded, levelsOf, onLeader, rowOffset } from './chart-column.ts';
import { chartLabels } from './chart-labels.ts';
import { linesOf, sans, widthOf } from './letters.ts';
import { named, short } from './svg.ts';
import { type Colours, coloursOf, heading_px, layout_px, letter_px, type PictureLook } from './theme.ts';

/** Room beside the plot for numbers and names of both axes, px. */
const beside_px = 250;
const heights_px = [420, 320, 250];

/** Known apart without colour. */
const dashes: readonly (readonly number[])[] = [
  [1, 0],
  [14, 7],
  [3, 6],
  [18, 6, 3, 6],
  [8, 4],
  [24, 8],
];

type Layer = Record<string, unknown>;

/** A chart as a specification: panels over one x axis, every curve and line named beside it, both systems of units. */
export function chartSpec(chart: Chart, { units, theme }: Omit<PictureLook, 'width_px'>): TopLevelSpec {
  const colours = coloursOf(theme);
  const x = axisOf(chart.x, momentsOf(chart), units, { open: false, ticks: 8 });
  const height = heights_px[chart.panels.length - 1] ?? heights_px.at(-1)!;
  const names = seriesNames(chart);
  const signs = new Map(
    names.map((name, at) => [
      name,
      { color: colours.series[at % colours.series.length]!, dash: dashes[at % dashes.length]! },
    ]),
  );
  const beside = chart.panels.some((panel) => crowded(panel, yOf(panel, height, units), height));
  const column_px = beside ? Math.max(...chart.panels.map((panel) => columnWidth(panel, units))) : 0;
  const size = { width: layout_px - beside_px - column_px, height };
  const shaded = chart.panels.some(({ bands = [] }) => bands.length > 0);
  const look = { font: sans, labelColor: colours.ink, titleColor: colours.ink };
  return {
    $schema: 'https://vega.github.io/schema/vega-lite/v6.json',
    background: colours.page,
    padding: 20,
    title: {
      text: [...linesOf(chart.title, heading_px, layout_px - 60, { bold: true })],
      ...(shaded ? { subtitle: 'shaded: the likely range' } : {}),
      anchor: 'start',
      frame: 'bounds',
      font: sans,
      fontSize: heading_px,
      subtitleFont: sans,
      subtitleFontSize: letter_px,
      color: colours.ink,
      subtitleColor: colours.faint,
      offset: 18,
    },
    spacing: 26,
    vconcat: chart.panels.map((panel, at) =>
      panelSpec(panel, { x, size, beside, colours, signs, units, last: at === chart.panels.length - 1 }),
    ),
    resolve: { scale: { x: 'shared' } },
    config: {
      font: sans,
      view: { stroke: colours.faint },
      axis: {
        ...look,
        labelFontSize: letter_px,
        titleFontSize: letter_px,
        titleFontWeight: 'normal',
        gridColor: colours.ink,
        gridOpacity: 0.13,
        tickColor: colours.faint,
        domainColor: colours.faint,
        titlePadding: 12,
        labelLimit: 400,
        titleLimit: 1000,
      },
    },
  } as unknown as TopLevelSpec;
}

interface PanelLook {
  readonly x: Axis;
  readonly size: { readonly width: number; readonly height: number };
  /** Level lines are named beside the plot. */
  readonly beside: boolean;
  readonly colours: Colours;
  readonly signs: ReadonlyMap<string, { readonly color: string; readonly dash: readonly number[] }>;
  readonly units: PictureLook['units'];
  readonly last: boolean;
}

const yOf = (panel: ChartPanel, height: number, units: PictureLook['units']): Axis =>
  axisOf(panel.y, valuesOf(panel), units, { open: true, ticks: Math.round(height / 60) });

function panelSpec(panel: ChartPanel, { x, size, beside, colours, signs, units, last }: PanelLook): Layer {
  const { height } = size;
  const y = yOf(panel, height, units);
  const levels = beside ? levelsOf(panel) : [];
  const xChannel = {
    field: 'x',
    type: 'quantitative',
    scale: { domain: [x.low, x.high], nice: false, zero: false },
    axis: { values: [...x.ticks], title: last ? bothOf(x) : null, labels: last, labelExpr: rowsOf(x) },
  };
  const yScale = { domain: [y.low, y.high], nice: false, zero: false };
  const left = {
    values: [...y.ticks],
    title: titleOf(y),
    labelExpr: exprOf(y.ticks.map((at) => ({ at, text: tickText(at) }))),
  };
  const yChannel = { field: 'y', type: 'quantitative', scale: yScale, axis: left };
  const right = y.other && {
    orient: 'right',
    values: y.other.ticks.map(({ at }) => at),
    labelExpr: exprOf(
      y.other.ticks
        .filter(({ at }) => !onLeader(at, y, height, levels))
        .map(({ at, text }) => ({ at, text: `${text} ${y.other!.unit}`.trim() })),
    ),
    title: null,
    grid: false,
  };
  const bands = (panel.bands ?? []).map(
    ({ name, points }): Layer => ({
      data: { values: points.map(([at, low, high]) => ({ x: x.of(at), y: y.of(low), y2: y.of(high) })) },
      mark: { type: 'area', color: signs.get(name)?.color, opacity: 0.22 },
      encoding: { x: xChannel, y: yChannel, y2: { field: 'y2' } },
    }),
  );
  const lines = (panel.lines ?? []).map(
    ({ at, axis }): Layer => ({
      data: { values: [axis === 'x' ? { x: x.of(at) } : { y: y.of(at) }] },
      mark: { type: 'rule', color: colours.limit, strokeWidth: 2, strokeDash: [2, 5], strokeCap: 'round' },
      encoding: axis === 'x' ? { x: xChannel } : { y: yChannel },
    }),
  );
  const curves = panel.series.map(
    ({ name, points }): Layer => ({
      data: { values: points.map(([at, value]) => ({ x: x.of(at), y: y.of(value) })) },
      mark: {
        type: 'line',
        color: signs.get(name)?.color,
        strokeDash: signs.get(name)?.dash,
        strokeWidth: 3.5,
      },
      encoding: { x: xChannel, y: yChannel },
    }),
  );
  const words = chartLabels(panel, { x, y, size, units, beside: levels }).flatMap(({ text, at, series }) => {
    const color = (series === undefined ? undefined : signs.get(series)?.color) ?? colours.limit;
    const base = { type: 'text', font: sans, fontSize: letter_px, align: 'center', baseline: 'middle' };
    const encoding = { x: { value: at[0] }, y: { value: at[1] }, text: { value: text } };
    // A rim of the page's colour under the letters keeps them off the lines behind.
    const rim = { ...base, stroke: colours.page, strokeWidth: 6, strokeJoin: 'round', color: colours.page };
    return [rim, { ...base, color }].map((mark): Layer => ({ data: { values: [{}] }, mark, encoding }));
  });
  const column = columnLabels(levels, panel, { y, size, units }).flatMap((label) => besidePlot(label, colours));
  const scaleOnTheRight: readonly Layer[] = right
    ? [
        {
          data: { values: [{ y: y.low }] },
          mark: { type: 'point', opacity: 0 },
          encoding: { y: { ...yChannel, axis: right } },
        },
      ]
    : [];
  return {
    ...size,
    layer: [{ layer: [...bands, ...lines, ...curves, ...words, ...column] }, ...scaleOnTheRight],
    resolve: { axis: { y: 'independent' } },
  };
}

/** Words beside the plot and the leader to their line. */
function besidePlot({ rows, at: [x, y], leader }: ColumnLabel, { limit }: Colours): readonly Layer[] {
  const strokes = leader.slice(1).map((to, at): Layer => {
    const from = leader[at]!;
    const ends = { x: { value: from[0] }, y: { value: from[1] }, x2: { value: to[0] }, y2: { value: to[1] } };
    return {
      data: { values: [{}] },
      mark: { type: 'rule', color: limit, strokeWidth: 1.5, opacity: 0.7 },
      encoding: ends,
    };
  });
  const text = { type: 'text', font: sans, fontSize: letter_px, align: 'left', baseline: 'middle', color: limit };
  const words = rows.map((row, at): Layer => {
    const place = { x: { value: x }, y: { value: y + rowOffset(at, rows.length) } };
    return { data: { values: [{}] }, mark: text, encoding: { ...place, text: { value: row } } };
  });
  return [...strokes, ...words];
}

const titleOf = ({ name, unit }: Axis): string => (unit === '' ? name : `${name}, ${unit}`);

const bothOf = (axis: Axis): string => (axis.other ? `${titleOf(axis)} · ${axis.other.unit}` : titleOf(axis));

/** Ticks are few and their text is ours: looked up, not formatted again. Rows stand below one another. */
const exprOf = (ticks: readonly { at: number; text: string | readonly string[] }[]): string =>
  ticks.reduceRight(
    (rest, { at, text }) => `abs(datum.value - ${at}) < 1e-6 ? ${JSON.stringify(text)} : ${rest}`,
    '""',
  );

/** Where the other system reads differently, its numbers stand in a second row. */
const rowsOf = ({ ticks, inOther }: Axis): string =>
  exprOf(ticks.map((at) => ({ at, text: inOther ? [tickText(at), inOther(at)] : tickText(at) })));

/** The chart as SVG. The libraries behind it are loaded when the first chart is drawn. */
export async function chartSvg(chart: Chart, look: PictureLook): Promise<string> {
  const [{ compile }, vega] = await Promise.all([import('vega-lite'), import('vega')]);
  const { parse, View } = vega;
  // Without a canvas the library guesses widths; the font is known here. Its types leave this export out.
  Object.assign((vega as unknown as { textMetrics: object }).textMetrics, {
    width: ({ fontSize = letter_px }: { fontSize?: number }, text: unknown) => widthOf(String(text), fontSize),
  });
  const drawn = await new View(parse(compile(chartSpec(chart, look)).spec), { renderer: 'none' }).toSVG();
  const { width_px = layout_px } = look;
  const [, width = 1, height = 1] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(drawn)?.map(Number) ?? [];
  return drawn
    .replace(
      / width="[\d.]+" height="[\d.]+"/,
      ` width="${width_px}" height="${short((height * width_px) / width)}" role="img"`,
    )
    .replace(/<svg[^>]*>/, (open) => `${open}${named(chart.title, chart.alt)}`);
}
