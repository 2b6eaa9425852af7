import { describe, expect, it } from 'vitest';
import { samplePattern } from './sample.ts';
import { paperOf, sheetSvgs } from './sheets.ts';

const paper = { A4: [210, 297], letter: [215.9, 279.4] } as const;
const numbers = (text: string) => text.match(/-?[\d.]+/g)!.map(Number);

/** Where the drawing's own origin lies on a sheet, mm, and what the sheet shows of it. */
function windowOf(svg: string) {
  const [x, y] = numbers(/clip-path="url\(#window\)"><g transform="translate\(([^)]*)\)/.exec(svg)![1]!);
  const [left, top, width, height] = ['x', 'y', 'width', 'height'].map((name) =>
    Number(new RegExp(`<clipPath id="window"><rect[^>]* ${name}="([\\d.]+)"`).exec(svg)![1]),
  ) as [number, number, number, number];
  return { left: left - x!, top: top - y!, right: left - x! + width, bottom: top - y! + height };
}

describe.each(['A4', 'letter'] as const)('a pattern on %s', (name) => {
  const sheets = sheetSvgs(samplePattern, { paper: name });
  const windows = sheets.map(windowOf);

  it('is 1 : 1: a unit of the page is a millimetre of paper', () => {
    for (const svg of sheets) {
      const [, width, height] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(svg)!.map(Number);
      expect([width, height].toSorted((a, b) => a! - b!)).toEqual([...paper[name]]);
      expect(svg).toContain(`viewBox="0 0 ${width} ${height}"`);
    }
    // The edge of the pattern, 585 mm by 320 mm, in the units of the page.
    expect(sheets[0]).toContain('M0 0L585 0L585 -320L0 -320L0 0');
  });

  it('covers every corner of the outline', () => {
    for (const [x, y] of [
      [0, 0],
      [585, 0],
      [585, -320],
      [0, -320],
      [565, -160],
    ] as const) {
      const shown = windows.some(({ left, right, top, bottom }) => x >= left && x <= right && y >= top && y <= bottom);
      expect(shown).toBe(true);
    }
  });

  it('repeats 12 mm at every seam', () => {
    const lefts = [...new Set(windows.map(({ left }) => left))].sort((a, b) => a - b);
    const width = windows[0]!.right - windows[0]!.left;
    for (const [at, left] of lefts.slice(1).entries()) expect(lefts[at]! + width - left).toBeCloseTo(12, 1);
  });

  it('has crosses that fall on those of the next sheet', () => {
    const crosses = (svg: string, { left, top }: (typeof windows)[number]) => {
      const d = /<path d="([^"]*)" stroke="#000" stroke-width="0.25"/.exec(svg)?.[1] ?? '';
      return d
        .split('M')
        .slice(1)
        .filter((_, at) => at % 2 === 0)
        .map((line) => {
          const [x1, y1, x2] = numbers(line) as [number, number, number];
          return [(x1 + x2) / 2 + left - 10, y1 + top - 10].map((value) => value.toFixed(1)).join(' ');
        });
    };
    const all = sheets.map((svg, at) => crosses(svg, windows[at]!));
    const counts = new Map<string, number>();
    for (const cross of all.flat()) counts.set(cross, (counts.get(cross) ?? 0) + 1);
    expect(counts.size).toBeGreaterThan(0);
    expect([...counts.values()].every((count) => count >= 2)).toBe(true);
  });

  it('says which sheet each is, and lets the printer be checked', () => {
    for (const [at, svg] of sheets.entries()) {
      expect(svg).toContain(`sheet ${at + 1} of ${sheets.length}`);
      expect(svg).toMatch(/row \d, column \d/);
      expect(svg).toMatch(/h100M[^"]*"[^>]*data-length="100 mm"/);
      expect(svg).toMatch(/h101.6M[^"]*"[^>]*data-length="4 in"/);
    }
  });
});

it('paper goes by units', () => {
  expect([paperOf('US'), paperOf('metric')]).toEqual(['letter', 'A4']);
});
