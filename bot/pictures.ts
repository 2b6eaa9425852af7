import { mkdir, writeFile } from 'node:fs/promises';
import { join, parse } from 'node:path';
import { picturesOf } from '../adapters/picture/pictures.ts';
import { layout_px, type Theme } from '../adapters/picture/theme.ts';
import type { Card } from '../commands/card.ts';
import type { Flags } from './flags.ts';

/** The first picture goes to the file that was named, every other beside it under its own id. */
export function filesFor(file: string, ids: readonly string[]): readonly string[] {
  const { dir, name, ext } = parse(file);
  return ids.map((id, at) => (at === 0 ? file : join(dir, `${name}-${id}${ext}`)));
}

export async function writePictures(
  card: Card,
  { png, svg, theme }: Pick<Flags, 'png' | 'svg'> & { theme: Theme | undefined },
): Promise<void> {
  const pictures = picturesOf(card);
  const ids = pictures.map(({ id }) => id);
  const look = { units: card.units, theme };
  if (svg !== undefined) {
    const files = filesFor(svg, ids);
    for (const [at, picture] of pictures.entries()) await writeFile(files[at]!, await picture.svg(look));
  }
  if (png !== undefined) {
    // The rasteriser is native code: loaded only for who asks for it.
    const { pngOf } = await import('../adapters/picture/png.ts');
    const files = filesFor(png, ids);
    for (const [at, picture] of pictures.entries()) {
      const drawn = await picture.svg({ ...look, theme: theme ?? 'light' });
      await writeFile(files[at]!, pngOf(drawn, { width_px: layout_px }));
    }
  }
}

/** Every full-size pattern of the card over sheets of paper. Says how many pages there are; none where it has no pattern. */
export async function writeSheets({ drawings = [], units }: Card, folder: string): Promise<number> {
  const { paperOf, sheetSvgs } = await import('../adapters/picture/sheets.ts');
  let count = 0;
  for (const drawing of drawings.filter(({ fullSize }) => fullSize)) {
    const sheets = sheetSvgs(drawing, { paper: paperOf(units) });
    await mkdir(folder, { recursive: true });
    for (const [at, sheet] of sheets.entries()) await writeFile(join(folder, `${drawing.id}-${at + 1}.svg`), sheet);
    count += sheets.length;
  }
  return count;
}
