import { describe, expect, it } from 'vitest';
import { drawForms } from '../../core/shape/draw/forms.ts';
import { formsFor } from '../../core/shape/forms/forms.ts';
import { sampleFurnace } from '../../core/shape/forms/sample.ts';
import { boundsOf, cornersOf, distance, type Px } from './box.ts';
import { widthOf } from './letters.ts';
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
    const crossesIn = (svg: string): readonly Px[] => {
      const [, x, y, d = ''] =
        /<g transform="translate\((\S+) (\S+)\)"><path d="([^"]*)" stroke="#000" stroke-width="0.25"/.exec(svg) ?? [];
      const { left, top } = windowOf(svg);
      // Drawn where the pattern is drawn: 10 mm of margin before its window.
      expect([Number(x) + left, Number(y) + top]).toEqual([expect.closeTo(10, 6), expect.closeTo(10, 6)]);
      const ends = d.split('M').slice(1).map(numbers);
      return ends.filter((_, at) => at % 2 === 0).map(([x1, y1, x2]) => [(x1! + x2!) / 2, y1!]);
    };
    const all = sheets.map(crossesIn);
    expect(all.flat().length).toBeGreaterThan(0);
    for (const [at, crosses] of all.entries()) {
      const others = all.filter((_, other) => other !== at).flat();
      // Coordinates are rounded to 0.01 mm, each sheet's for itself.
      for (const cross of crosses) expect(others.some((other) => distance(cross, other) < 0.02)).toBe(true);
    }
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

describe.each(['A4', 'letter'] as const)('the words of every form of a furnace on %s', (paper) => {
  const forms = formsFor({
    furnace: sampleFurnace,
    overlap_m: 0.04,
    clip_spacing_m: 0.12,
    radial_wires: 8,
    rings: 2,
    wire_m: 0.0013,
    units: 'US',
  });
  const patterns = [...drawForms(forms, 'US').filter(({ fullSize }) => fullSize), samplePattern];

  it.each(patterns.map((drawing) => [drawing.id, drawing] as const))('are whole on one sheet: %s', (_, drawing) => {
    const sheets = sheetSvgs(drawing, { paper });
    const windows = sheets.map(windowOf);
    const labels = [
      ...sheets[0]!.matchAll(
        /<rect x="\S+" y="\S+" width="(\S+)" height="(\S+)" rx="\S+" fill="\S+" fill-opacity="0.88" transform="translate\((\S+) ([^)\s]+)\)(?: rotate\((\S+)\))?"/g,
      ),
    ].map((match) => match.slice(1).map((value) => Number(value ?? 0)) as [number, number, number, number, number]);
    expect(labels).toHaveLength(drawing.marks.length);
    for (const [width, height, x, y, turn] of labels) {
      const box = { middle: [x, y], half: [width / 2, height / 2], turn_rad: (turn * Math.PI) / 180 } as const;
      const { left, right, top, bottom } = boundsOf(cornersOf(box));
      const whole = windows.some((w) => left > w.left && right < w.right && top > w.top && bottom < w.bottom);
      expect(whole, `at ${x}, ${y}`).toBe(true);
    }
  });

  it.each(patterns.map((drawing) => [drawing.id, drawing] as const))('keep apart below it: %s', (_, drawing) => {
    for (const svg of sheetSvgs({ ...drawing, title: `${drawing.title}, panel 2 of 5` }, { paper })) {
      const [, letter = 0] = /font-size="([\d.]+)">/.exec(svg)!.map(Number);
      const foot = svg.slice(svg.indexOf('data-length'));
      const words = [...foot.matchAll(/<text x="([\d.]+)" y="([\d.]+)">([^<]*)</g)].filter(([, , , text]) =>
        /[a-z]{3}/i.test(text!),
      );
      const map = Math.min(...[...foot.matchAll(/<rect x="([\d.]+)"/g)].map(([, x]) => Number(x)));
      expect(words.length).toBeGreaterThan(2);
      for (const [, x, , text] of words) {
        // The longer check length ends 4 in from the margin of 10 mm.
        expect(Number(x)).toBeGreaterThan(10 + 101.6);
        expect(Number(x) + widthOf(text!, letter)).toBeLessThan(map);
      }
      const [, height = 0] = /height="([\d.]+)mm"/.exec(svg)!.map(Number);
      expect(Math.max(...words.map(([, , y]) => Number(y)))).toBeLessThan(height - 10);
    }
  });
});

it('paper goes by units', () => {
  expect([paperOf('US'), paperOf('metric')]).toEqual(['letter', 'A4']);
});
