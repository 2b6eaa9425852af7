import { describe, expect, it } from 'vitest';
import type { Chart } from '../../commands/card.ts';
import { axisOf, momentsOf, valuesOf } from './axis.ts';
import { crosses, overlaps, type Px } from './box.ts';
import { chartSpec, chartSvg } from './chart.ts';
import { type ChartLabel, chartLabels } from './chart-labels.ts';
import { widthOf } from './letters.ts';
import { sampleChart } from './sample.ts';
import { letter_px } from './theme.ts';

const textsOf = (svg: string) => [...svg.matchAll(/<text[^>]*>(.*?)<\/text>/g)].map(([, text]) => text!);

describe.each([
  ['US', ['2000', '1000 °C', 'in the wall, °F', '158 °F · 70 °C']],
  ['metric', ['1000', '2000 °F', 'in the wall, °C', '70 °C · 158 °F']],
] as const)('a chart for a reader of %s units', (units, expected) => {
  it('has temperatures in both scales, the reader’s at the left', async () => {
    const texts = textsOf(await chartSvg(sampleChart, { units, theme: 'light' }));
    for (const text of expected) expect(texts.some((each) => each.includes(text))).toBe(true);
  });

  it('names every curve and every line', async () => {
    const texts = textsOf(await chartSvg(sampleChart, { units, theme: 'dark' })).join('|');
    const names = sampleChart.panels.flatMap(({ series, lines = [] }) => [...series, ...lines].map(({ name }) => name));
    for (const name of names) expect(texts).toContain(name);
    expect(texts).toContain('time since lighting, min');
  });
});

describe('a chart', () => {
  it('tells curves apart without colour', () => {
    const dashes = [
      ...JSON.stringify(chartSpec(sampleChart, { units: 'US', theme: 'light' })).matchAll(
        /"strokeDash":(\[[^\]]*\]),"strokeWidth":3.5/g,
      ),
    ];
    expect(new Set(dashes.map(([, dash]) => dash)).size).toBe(3);
  });

  it('sets no words over others', () => {
    const x = axisOf(sampleChart.x, momentsOf(sampleChart), 'US', { open: false, ticks: 8 });
    for (const panel of sampleChart.panels) {
      const y = axisOf(panel.y, valuesOf(panel), 'US', { open: true, ticks: 5 });
      const boxes = chartLabels(panel, { x, y, size: { width: 850, height: 320 }, units: 'US' }).map(
        ({ text, at }) => ({
          middle: at,
          half: [widthOf(text, letter_px) / 2, 0.5 * letter_px] as const,
          turn_rad: 0,
        }),
      );
      for (const [at, box] of boxes.entries())
        for (const other of boxes.slice(at + 1)) expect(overlaps(box, other)).toBe(false);
    }
  });

  it('sets no name over its own curve, told by two points as it may be', () => {
    const ends = [
      [0, 280],
      [100, 620],
    ] as const;
    const panel = {
      y: { label: 'leaves', unit: 'K' },
      series: [{ name: 'leaves as warmth of the flue', points: ends }],
    } as const;
    const x = axisOf({ label: 'air', unit: 'count' }, [0, 100], 'metric', { open: false, ticks: 8 });
    const y = axisOf(panel.y, valuesOf(panel), 'metric', { open: true, ticks: 5 });
    const size = { width: 850, height: 320 };
    const [{ text, at }] = chartLabels(panel, { x, y, size, units: 'metric' }) as [ChartLabel];
    const box = { middle: at, half: [widthOf(text, letter_px) / 2, 0.5 * letter_px] as const, turn_rad: 0 };
    const [from, to] = ends.map(
      ([sx, sy]): Px => [
        ((x.of(sx) - x.low) / (x.high - x.low)) * size.width,
        size.height * (1 - (y.of(sy) - y.low) / (y.high - y.low)),
      ],
    ) as [Px, Px];
    expect(crosses(box, [from, to])).toBe(false);
  });

  it('names itself and escapes what it is called', async () => {
    const svg = await chartSvg({ ...sampleChart, title: 'a <b> & c' }, { units: 'US', theme: 'light', width_px: 550 });
    expect(svg).toContain('<title>a &lt;b&gt; &amp; c</title><desc>The hot face');
    expect(svg).not.toContain('<b>');
    expect(svg).toMatch(/ width="550" height="[\d.]+" role="img"/);
  });

  it('of a length along x shows both systems below it', async () => {
    const chart: Chart = {
      title: 'Through the wall',
      alt: 'a',
      x: { label: 'depth', unit: 'm' },
      panels: [
        {
          y: { label: 'hottest', unit: 'K' },
          series: [
            {
              name: 'it',
              points: [
                [0, 1300],
                [0.1, 400],
              ],
            },
          ],
        },
      ],
    };
    const svg = await chartSvg(chart, { units: 'US', theme: 'light' });
    expect(svg).toContain('depth, in · mm');
    expect(svg).toContain('>25.4<');
  });
});

describe('an axis', () => {
  const kelvin = { label: 't', unit: 'K' } as const;

  it('ends at round numbers beyond the values, or where they end', () => {
    const open = axisOf(kelvin, [293.15, 1320], 'metric', { open: true, ticks: 5 });
    expect([open.low, open.high]).toEqual([0, 1250]);
    const shut = axisOf({ label: 'x', unit: 's', shown: 'minutes' }, [0, 14400], 'US', { open: false, ticks: 8 });
    expect([shut.low, shut.high, shut.ticks]).toEqual([0, 240, [0, 30, 60, 90, 120, 150, 180, 210, 240]]);
    expect(shut.other).toBeUndefined();
  });

  it('marks the same temperature on both sides', () => {
    const { other } = axisOf(kelvin, [273.15, 373.15], 'US', { open: true, ticks: 5 });
    for (const { at, text } of other!.ticks) expect(at).toBeCloseTo(Number(text.replace('−', '-')) * 1.8 + 32, 6);
    expect(other!.unit).toBe('°C');
  });

  it('is still one for no values, or one', () => {
    for (const values of [[], [300], [Number.NaN]]) {
      const { low, high } = axisOf(kelvin, values, 'US', { open: true, ticks: 5 });
      expect(high).toBeGreaterThan(low);
    }
  });
});
