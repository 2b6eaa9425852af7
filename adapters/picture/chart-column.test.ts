import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Chart } from '../../commands/card.ts';
import { axisOf, valuesOf } from './axis.ts';
import { chartSvg } from './chart.ts';
import { columnLabels, crowded, levelsOf, spreadOut } from './chart-column.ts';

const levels_C = [43, 50, 60, 70];
const panelTo = (top_K: number, levels: readonly number[] = levels_C): Chart['panels'][number] => ({
  y: { label: 'shell', unit: 'K' },
  series: [
    {
      name: 'shell',
      points: [
        [0, 293],
        [7200, top_K],
      ],
    },
  ],
  lines: levels.map((level) => ({ name: `${level} degrees`, at: level + 273.15, axis: 'y' })),
});
const chartTo = (top_K: number): Chart => ({
  title: 'a',
  alt: 'a',
  x: { label: 'time', unit: 's', shown: 'hours' },
  panels: [panelTo(top_K)],
});
const size = { width: 600, height: 320 };
const yOf = (panel: Chart['panels'][number]) => axisOf(panel.y, valuesOf(panel), 'US', { open: true, ticks: 5 });

describe('level lines that crowd', () => {
  it('are known by their nearness on the plot', () => {
    expect(crowded(panelTo(500), yOf(panelTo(500)), 320)).toBe(true);
    expect(crowded(panelTo(350, [20, 70]), yOf(panelTo(350, [20, 70])), 320)).toBe(false);
    expect(crowded(panelTo(500, []), yOf(panelTo(500, [])), 320)).toBe(false);
  });

  it('are named beside the plot in their order, whole and apart, each joined to its line', () => {
    const panel = panelTo(500);
    const y = yOf(panel);
    const labels = columnLabels(levelsOf(panel), panel, { y, size, units: 'US' });
    expect(labels.map(({ rows }) => rows[0])).toEqual(['70', '60', '50', '43'].map((level) => `${level} degrees`));
    for (const [at, { at: place, leader }] of labels.entries()) {
      expect(place[0]).toBeGreaterThan(size.width);
      if (at > 0) expect(place[1] - labels[at - 1]!.at[1]).toBeGreaterThan(44);
      expect(leader[0]![0]).toBe(size.width);
      expect(leader.at(-1)![1]).toBe(place[1]);
    }
    expect(labels[0]!.rows[1]).toBe('158 °F · 70 °C');
  });

  it('leave the plot to its curves: all names are in the picture, none in the plot', async () => {
    const svg = await chartSvg(chartTo(500), { units: 'US', theme: 'light' });
    for (const level of levels_C) expect(svg).toContain(`>${level} degrees<`);
    // As wide as every picture, to a hundredth: the column takes its room from the plot.
    const [, width] = /viewBox="0 0 ([\d.]+)/.exec(svg) ?? [];
    expect(Math.abs(Number(width) - 1100)).toBeLessThan(33);
  });
});

it('spreading keeps order and distance, ends in time, and moves nothing that has room', () => {
  fc.assert(
    fc.property(fc.array(fc.double({ min: 0, max: 300, noNaN: true }), { minLength: 1, maxLength: 4 }), (places) => {
      const wanted = places.toSorted((a, b) => a - b);
      const spread = spreadOut(wanted, 50, 300);
      for (const [at, place] of spread.entries()) {
        expect(place).toBeLessThanOrEqual(300 + 1e-9);
        if (at > 0) expect(place - spread[at - 1]!).toBeGreaterThanOrEqual(50 - 1e-9);
      }
    }),
  );
  expect(spreadOut([10, 100, 200], 50, 300)).toEqual([10, 100, 200]);
  expect(spreadOut([100, 110, 250], 50, 300)[2]).toBe(250);
});
