import { inflateSync } from 'node:zlib';
import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it } from 'vitest';
import { sampleCard } from '../terminal/sample-card.ts';
import { widthOf } from './letters.ts';
import { textPage } from './page.ts';
import { picturesOf } from './pictures.ts';
import { fontFiles, pngOf } from './png.ts';
import { sampleChart, sampleDrawing } from './sample.ts';

const words = (family: string, more = '') =>
  `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 60" width="400" height="60"><rect width="400" height="60" fill="#fff"/><text x="10" y="40" font-size="30" font-family="${family}" ${more}>Hot face 9 in · °F</text></svg>`;

/** Width, height and pixels, as any reader of PNG sees them. */
function read(png: Uint8Array) {
  const bytes = Buffer.from(png);
  const [width, height] = [bytes.readUInt32BE(16), bytes.readUInt32BE(20)];
  const length = bytes.readUInt32BE(33);
  expect(bytes.toString('latin1', 37, 41)).toBe('IDAT');
  const raw = inflateSync(bytes.subarray(41, 41 + length));
  return { width, height, raw };
}

const darkOf = (raw: Uint8Array) => raw.filter((byte) => byte < 128).length;

describe('a PNG', () => {
  it('is one, of the width that was asked for', () => {
    const png = pngOf(words('DejaVu Sans'), { width_px: 800 });
    expect([...png.slice(0, 8)]).toEqual([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
    const { width, height, raw } = read(png);
    expect({ width, height, bytes: raw.length }).toEqual({ width: 800, height: 120, bytes: (800 * 4 + 1) * 120 });
  });

  it('has the pixels of the rasteriser', () => {
    const svg = words('DejaVu Sans').replace('<text', '<circle cx="30" cy="30" r="20"/><text display="none"');
    const theirs = new Resvg(svg, { font: { loadSystemFonts: false } }).render();
    const { width, height, raw } = read(pngOf(svg, { width_px: 400 }));
    for (let y = 0; y < height; y++) {
      const row = raw.subarray(y * (width * 4 + 1) + 1, (y + 1) * (width * 4 + 1));
      expect(row.equals(theirs.pixels.subarray(y * width * 4, (y + 1) * width * 4))).toBe(true);
    }
  });

  it.each([
    ['DejaVu Sans', ''],
    ['DejaVu Sans', 'font-weight="bold"'],
    ['DejaVu Sans Mono', ''],
  ])('has text in it, from the shipped font and none of the machine: %s %s', (family, more) => {
    const svg = words(family, more);
    const without = new Resvg(svg, { font: { loadSystemFonts: false } }).render().pixels;
    const shown = read(pngOf(svg, { width_px: 400 })).raw;
    // Each row of the file begins with a zero that says how it is packed.
    expect(darkOf(without)).toBe(0);
    expect(darkOf(shown) - 60).toBeGreaterThan(2000);
  });

  it('has letters beyond our own fonts too: a name in Cyrillic, a bent arrow', () => {
    const plain = words('DejaVu Sans').replace('Hot face 9 in · °F', 'Печь ⤴');
    expect(darkOf(read(pngOf(plain, { width_px: 400 })).raw) - 60).toBeGreaterThan(1000);
    expect(fontFiles(plain)).not.toEqual(fontFiles(words('DejaVu Sans')));
  });

  it('of an unknown family falls back to the shipped one', () => {
    const shown = read(pngOf(words('Nobody Has This'), { width_px: 400 })).raw;
    expect(darkOf(shown) - 60).toBeGreaterThan(2000);
  });
});

describe('letters', () => {
  it.each(['Hot face 9 in', 'MWMWMW', 'illicit', '1 3/4 in (1.75) · 44 mm', '−12.5 °C'])(
    '%s is as wide as it is drawn',
    (text) => {
      const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="900" height="99"><text y="60" font-family="DejaVu Sans" font-size="50">${text}</text></svg>`;
      const drawn = new Resvg(svg, { font: { loadSystemFonts: false, fontFiles: [...fontFiles(svg)] } }).getBBox()!;
      // The box ends at the ink, the advance a little beyond it; kerning takes a little more.
      expect(widthOf(text, 50)).toBeGreaterThanOrEqual(drawn.width);
      expect(widthOf(text, 50) / drawn.width).toBeLessThan(1.12);
    },
  );
});

describe('pictures of a card', () => {
  const wish = { units: 'US', theme: 'dark' } as const;

  it('are its drawings in order, then its chart', () => {
    const both = { ...sampleCard, drawings: [sampleDrawing, { ...sampleDrawing, id: 'plan' }], chart: sampleChart };
    expect(picturesOf(both).map(({ id }) => id)).toEqual(['section', 'plan', 'chart']);
    expect(picturesOf({ ...sampleCard, chart: sampleChart }).map(({ id }) => id)).toEqual(['chart']);
  });

  it('are its words where it has none, cautions included, in letters of 11 px at 550 px', async () => {
    const [page, ...more] = picturesOf(sampleCard);
    expect(more).toEqual([]);
    const svg = await page!.svg(wish);
    for (const { text } of sampleCard.cautions) expect(page!.alt.replace(/\s+/g, ' ')).toContain(text);
    const width = Number(/width="(\d+)"/.exec(svg)?.[1]);
    expect((14 * 550) / width).toBeGreaterThan(11);
    const { raw } = read(pngOf(svg, { width_px: 600 }));
    const blank = read(pngOf(svg.replace(/<text.*<\/text>/g, ''), { width_px: 600 })).raw;
    expect(raw.equals(blank)).toBe(false);
  });

  it('a page without a theme follows its reader’s, with one it does not', () => {
    expect(textPage('a', { title: 't' })).toContain('prefers-color-scheme');
    expect(textPage('a', { title: 't', theme: 'dark' })).not.toContain('prefers-color-scheme');
  });
});
