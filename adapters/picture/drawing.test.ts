import { describe, expect, it } from 'vitest';
import type { Drawing, Matter } from '../../core/shape/drawing.ts';
import { cornersOf, crosses, liesOn, overlaps, type Px } from './box.ts';
import { drawingSvg, fitted } from './drawing.ts';
import { hatchPath } from './hatch.ts';
import { bothSystems } from './marks.ts';
import { sampleDrawing, samplePattern } from './sample.ts';
import { layout_px, letter_px } from './theme.ts';

const room = { width: 1048, height: 1250 };
const look = { units: 'US', theme: 'light' } as const;
/** The words of a picture, one line a label. */
const wordsOf = (svg: string) => svg.replace(/<[^>]*>/g, '\n').replace(/\s+/g, ' ');

describe.each(['US', 'metric'] as const)('for a reader of %s units', (units) => {
  const words = wordsOf(drawingSvg(sampleDrawing, { units, theme: 'light' }));
  const lengths = sampleDrawing.marks.filter((mark) => mark.kind === 'length');

  it.each(lengths.map((mark) => [mark.name, mark] as const))('%s is there in both systems', (name, { from, to }) => {
    for (const value of bothSystems(Math.hypot(to[0] - from[0], to[1] - from[1]), units)) {
      expect(words).toMatch(new RegExp(`(^| )${value.replace('.', '\\.')}( |$)`));
    }
    expect(words).toContain(name);
  });

  it.each([sampleDrawing, samplePattern])('no words lie over others: $title', (drawing) => {
    const { labels } = fitted(drawing, units, room);
    expect(labels).toHaveLength(drawing.marks.length);
    for (const [at, { box }] of labels.entries()) {
      for (const other of labels.slice(at + 1)) expect(overlaps(box, other.box)).toBe(false);
    }
  });
});

describe('a drawing', () => {
  it('leads with the reader’s units', () => {
    expect(bothSystems(0.2286, 'US')).toEqual(['9 in', '229 mm']);
    expect(bothSystems(0.2286, 'metric')).toEqual(['229 mm', '9 in']);
    expect(bothSystems(0.232, 'US')).toEqual(['9 1/8 in', '232 mm']);
  });

  it('is to scale: a length of the plane is the same number of px both ways', () => {
    const svg = drawingSvg(samplePattern, look);
    const d = /fill="#d3dde6" *d="([^"]*)"|d="([^"]*)" fill-rule="evenodd" fill="#d3dde6"/.exec(svg);
    const points = (d?.[1] ?? d?.[2] ?? '').match(/-?[\d.]+ -?[\d.]+/g)!.map((pair) => pair.split(' ').map(Number));
    const [a, b, c] = points as [number[], number[], number[]];
    // 585 mm by 320 mm; coordinates are rounded to 0.01 px.
    expect((b[0]! - a[0]!) / Math.abs(c[1]! - b[1]!)).toBeCloseTo(585 / 320, 3);
  });

  it('fills its page and stays in it', () => {
    const { bounds } = fitted(sampleDrawing, 'US', room);
    const [width, height] = [bounds.right - bounds.left, bounds.bottom - bounds.top];
    expect(Math.max(width / room.width, height / room.height)).toBeGreaterThan(0.9);
    const [, page = 0] = /viewBox="0 0 ([\d.]+)/.exec(drawingSvg(sampleDrawing, look))!.map(Number);
    expect(width).toBeLessThan(page);
  });

  it('has letters of 11 px where a chat shows it 550 px wide', () => {
    for (const drawing of [sampleDrawing, samplePattern]) {
      const [, page = 0] = /viewBox="0 0 ([\d.]+)/.exec(drawingSvg(drawing, look))!.map(Number);
      // Words that find no place make the page wider than it was laid out; by a twentieth at most here.
      expect((letter_px * 550) / page).toBeGreaterThan(10.5);
      expect(page).toBeGreaterThanOrEqual(layout_px);
    }
  });

  it('escapes every word and names itself', () => {
    const svg = drawingSvg({ ...sampleDrawing, title: 'a < b & "c"', alt: '<alt>' }, look);
    expect(svg).toContain('<title>a &lt; b &amp; &quot;c&quot;</title><desc>&lt;alt&gt;</desc>');
    expect(svg).toContain('&lt;slowly&gt;');
    expect(svg).not.toContain('<slowly>');
  });

  it('is asked for by theme, not by guess', () => {
    expect(drawingSvg(sampleDrawing, look)).toContain('fill="#ffffff"');
    expect(drawingSvg(sampleDrawing, { ...look, theme: 'dark' })).not.toContain('fill="#ffffff"');
    expect(drawingSvg(sampleDrawing, look)).not.toContain('prefers-color-scheme');
  });

  it('is the same every time', () => {
    expect(drawingSvg(sampleDrawing, look)).toBe(drawingSvg(sampleDrawing, look));
  });

  it('an empty or a tiny one is still a picture', () => {
    const empty: Drawing = { id: 'e', title: 'Nothing', alt: 'nothing', shapes: [], marks: [] };
    expect(drawingSvg(empty, look)).not.toMatch(/NaN|Infinity/);
    const dot: Drawing = { ...empty, shapes: [{ kind: 'line', name: 'x', stroke: 'cut', points: [[0, 0]] }] };
    expect(drawingSvg(dot, look)).not.toMatch(/NaN|Infinity/);
  });
});

describe('matters', () => {
  const matters: readonly Matter[] = [
    'shell',
    'hot face',
    'insulation',
    'hollow',
    'crucible',
    'metal',
    'charcoal',
    'sleeve',
    'sheet',
    'mesh',
    'wire',
    'roll',
    'ground',
  ];
  const drawing: Drawing = {
    ...samplePattern,
    marks: [],
    shapes: matters.map((matter, at) => ({
      kind: 'area',
      name: `of ${matter}`,
      matter,
      outline: [
        [at, 0],
        [at + 1, 0],
        [at + 1, 1],
      ],
    })),
  };

  it('are each in the legend, once, and told apart without colour', () => {
    const svg = drawingSvg(drawing, look);
    const words = wordsOf(svg);
    for (const matter of matters) expect(words.split(`of ${matter}`)).toHaveLength(2);
    const square: readonly Px[] = [
      [0, 0],
      [60, 0],
      [60, 60],
      [0, 60],
    ];
    const hatches = matters.map((matter) => hatchPath([square], matter)).filter(Boolean);
    // The two without a hatch are solid dark and empty.
    expect(new Set(hatches).size).toBe(matters.length - 2);
    for (const hatch of hatches) expect(hatch.split('M').length).toBeGreaterThan(3);
  });

  it('have a hatch that stays inside them and out of their holes', () => {
    const around = (radius: number): readonly Px[] =>
      Array.from({ length: 40 }, (_, at): Px => {
        const turn = (at / 40) * 2 * Math.PI;
        return [200 + radius * Math.cos(turn), 100 + radius * Math.sin(turn)];
      });
    for (const matter of matters) {
      const path = hatchPath([around(90), around(40)], matter);
      for (const [, x, y] of path.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)) {
        const away = Math.hypot(Number(x) - 200, Number(y) - 100);
        expect(away, matter).toBeLessThan(90.1);
        // Chords of forty cut a little into the circle of the hole.
        expect(away, matter).toBeGreaterThan(40 * Math.cos(Math.PI / 40) - 0.1);
      }
    }
  });
});

describe('boxes', () => {
  const box = { middle: [0, 0], half: [10, 2], turn_rad: 0 } as const;

  it('overlap only where both have room', () => {
    expect(overlaps(box, { ...box, middle: [19, 3] })).toBe(true);
    expect(overlaps(box, { ...box, middle: [21, 0] })).toBe(false);
    expect(overlaps(box, { ...box, middle: [0, 5], turn_rad: Math.PI / 2 })).toBe(true);
    // Their upright bounds meet, they do not.
    const steep = { middle: [9, 9], half: [10, 1], turn_rad: Math.PI / 4 } as const;
    expect(overlaps(steep, { middle: [15, 4], half: [1, 1], turn_rad: 0 })).toBe(false);
  });

  it('are crossed by lines that pass through', () => {
    expect(
      crosses(box, [
        [-20, 1],
        [20, 1],
      ]),
    ).toBe(true);
    expect(
      crosses(box, [
        [-20, 3],
        [20, 3],
      ]),
    ).toBe(false);
    expect(
      crosses({ ...box, turn_rad: Math.PI / 2 }, [
        [-20, 3],
        [20, 3],
      ]),
    ).toBe(true);
    expect(
      crosses(box, [
        [11, -9],
        [11, 9],
      ]),
    ).toBe(false);
  });

  it('lie on each other only along the same line', () => {
    const line = [
      [0, 0],
      [10, 0],
    ] as const;
    const on = (from: Px, to: Px) => liesOn([from, to], line);
    expect(on([8, 0.5], [20, 0.5])).toBe(true);
    expect(on([11, 0], [20, 0])).toBe(false);
    expect(on([2, 0], [2, 9])).toBe(false);
    expect(on([2, 3], [8, 3])).toBe(false);
  });

  it('turn about their middle', () => {
    expect(cornersOf({ middle: [1, 1], half: [2, 0], turn_rad: Math.PI / 2 })[0]![1]).toBeCloseTo(-1);
  });
});
