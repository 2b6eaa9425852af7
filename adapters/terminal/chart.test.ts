import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Card } from '../../commands/card.ts';
import { sampleChart, sampleDrawing, samplePattern } from '../picture/sample.ts';
import { chartLines, drawingLines } from './chart.ts';
import { renderCard } from './render.ts';
import { sampleCard } from './sample-card.ts';
import { lengthOf } from './text.ts';

const look = { color: false, width: 90 };
const lines = chartLines(sampleChart, 'US', look);
const text = lines.join('\n');

describe('a chart as text', () => {
  test('names curves by their signs, and lines on the plot', () => {
    for (const name of ['● hot face', '○ between the layers', '▲ shell', 'fire out', 'a minute 122 °F']) {
      expect(text.replaceAll('\u00a0', ' ')).toContain(name);
    }
    expect(text).toContain('░ the likely range');
    expect(text).toContain('time since lighting, min');
  });

  test('names level lines that crowd in a column, in both systems where there is room, else above the plot', () => {
    const names = ['burns at once', 'a few seconds', 'a minute', 'bare skin for 10 min'];
    const rowsAt = (width: number) =>
      chartLines(sampleChart, 'US', { color: false, width }).map((line) => line.replaceAll('\u00a0', ' '));
    const [wide, usual, narrow] = [120, 90, 50].map(rowsAt);
    for (const [rows, value] of [
      [wide, /122 °F \(50 °C\)$/],
      [usual, /122 °F$/],
    ] as const) {
      const places = names.map((name) => rows!.findIndex((row) => new RegExp(`[─┌├└] ${name} `).test(row)));
      expect(places).toEqual([0, 1, 2, 3].map((at) => places[0]! + at));
      expect(rows![places[2]!]).toMatch(value);
    }
    const above = narrow!.join(' ').replace(/\s+/g, ' ');
    for (const name of names) expect(above).toContain(name);
    expect(narrow!.some((row) => /[│├].*a minute/.test(row))).toBe(false);
  });

  test('has the reader’s scale at the left and the other at the right', () => {
    expect(text).toContain('in the wall, °F left, °C right');
    expect(text).toMatch(/^ {2}2000 ┤/m);
    expect(text).toMatch(/├ 1000$/m);
    expect(chartLines(sampleChart, 'metric', look).join('\n')).toContain('in the wall, °C left, °F right');
  });

  test('stands where its numbers say: a straight rise is straight', () => {
    const chart = {
      ...sampleChart,
      panels: [
        {
          y: { label: 'power', unit: 'count' as const },
          series: [
            {
              name: 'up',
              points: [
                [0, 0],
                [7200, 10],
              ] as const,
            },
          ],
        },
      ],
    };
    const rows = chartLines(chart, 'metric', look).filter((line) => line.includes('●') && !line.includes('up'));
    const columns = rows.map((row) => row.indexOf('●'));
    // A straight rise falls, read from the top, by as much in every row; a row is 66 / 12 columns.
    expect(rows).toHaveLength(13);
    for (const [at, column] of columns.slice(1, -1).entries()) {
      expect(columns[at]! - column).toBeGreaterThanOrEqual(4);
      expect(columns[at]! - column).toBeLessThanOrEqual(7);
    }
  });

  test('is never wider than asked', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 30, max: 200 }),
        fc.constantFrom('US' as const, 'metric' as const),
        (width, units) => {
          for (const line of chartLines(sampleChart, units, { color: false, width })) {
            expect(lengthOf(line)).toBeLessThanOrEqual(width);
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('in a card', () => {
  const card = { ...sampleCard, chart: sampleChart, drawings: [sampleDrawing] };

  test('stands behind the table and before the notes, and drawings are named there', () => {
    const shown = renderCard(card, look);
    const places = ['7 kg', 'One melt', 'Picture ', 'Squeeze it'].map((part) => shown.indexOf(part));
    expect(places).not.toContain(-1);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    expect(drawingLines(sampleCard, look)).toEqual([]);
  });

  test('a drawing is one line: its title and the way to it, its words are left to its file', () => {
    const said = (drawings: Card['drawings'] & object) =>
      drawingLines({ ...card, drawings }, look)
        .join(' ')
        .replace(/\s+/g, ' ');
    expect(said([sampleDrawing])).toBe(`Picture ${sampleDrawing.title} (ask with --png FILE)`);
    expect(said([sampleDrawing, samplePattern])).toBe(
      `Pictures ${sampleDrawing.title} · 1 full-size pattern (ask with --png FILE; full size on paper: --sheets DIR)`,
    );
    const ten = [sampleDrawing, ...Array.from({ length: 9 }, () => samplePattern)];
    expect(drawingLines({ ...card, drawings: ten }, look).length).toBeLessThan(3);
  });

  test('goes before the first figure does, and after the table', () => {
    const full = renderCard(card, look).split('\n').length;
    const shorter = renderCard(card, { ...look, maxLines: full - 8 });
    expect(shorter).not.toContain('One melt');
    expect(shorter).not.toContain('7 kg');
    expect(shorter).toContain('49 kg');
    expect(renderCard(card, { ...look, maxLines: 1 })).toContain(sampleCard.headline);
  });
});
