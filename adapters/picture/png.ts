import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { crc32, deflateSync } from 'node:zlib';
import { Resvg } from '@resvg/resvg-js';
import { mono, sans } from './letters.ts';

const require = createRequire(import.meta.url);

const names = ['DejaVuSans', 'DejaVuSans-Bold', 'DejaVuSansMono', 'DejaVuSansMono-Bold'];
const own = names.map((name) => fileURLToPath(new URL(`./fonts/${name}.ttf`, import.meta.url)));
const whole = names.map((name) => require.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`));
/** Every letter our own smaller files hold, see fonts/README.md. */
const held =
  /^[\s\u0020-\u007e\u00a0-\u00ff\u0394\u03b1-\u03c9\u2010-\u2023\u2026\u2032\u2033\u2080-\u2089\u2190-\u2193\u2212\u2248\u2264\u2265]*$/u;

/** Shipped with the program: without a font file the rasteriser leaves all text out and says nothing. */
export const fontFiles = (svg: string): readonly string[] => (held.test(svg) ? own : whole);

export function pngOf(svg: string, { width_px }: { width_px: number }): Uint8Array {
  const image = new Resvg(svg, {
    fitTo: { mode: 'width', value: width_px },
    font: {
      loadSystemFonts: false,
      fontFiles: [...fontFiles(svg)],
      defaultFontFamily: sans,
      sansSerifFamily: sans,
      monospaceFamily: mono,
    },
  }).render();
  return encoded(image.pixels, image);
}

const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
/** The kind of filter, said at the head of each row: none. */
const unfiltered = 0;
/** Flat areas deflate well at once; a higher level takes three times as long for a file hardly smaller. */
const effort = 2;

/** Rows on their way to a file. Kept: each new one of 5 MB would bring the next collection of garbage nearer. */
let scratch = Buffer.alloc(0);

/** RGBA rows as PNG. The rasteriser's own encoder takes 27 ms for a picture of 1100 px, this one 9. */
function encoded(pixels: Uint8Array, { width, height }: { width: number; height: number }): Uint8Array {
  const row = 4 * width;
  const length = (row + 1) * height;
  if (scratch.length < length) scratch = Buffer.alloc(length);
  const raw = scratch.subarray(0, length);
  for (let y = 0; y < height; y++) {
    const at = y * (row + 1);
    raw[at] = unfiltered;
    raw.set(pixels.subarray(y * row, (y + 1) * row), at + 1);
  }
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  // Eight bits of red, green, blue and opacity; not interlaced.
  header.set([8, 6], 8);
  return Buffer.concat([
    signature,
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(raw, { level: effort })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function chunk(type: string, data: Uint8Array): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const [length, check] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  check.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, check]);
}
