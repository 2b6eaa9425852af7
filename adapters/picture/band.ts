import type { Caution } from '../../core/hazard/caution.ts';
import { linesOf, sans } from './letters.ts';
import { lineHeight } from './marks.ts';
import { element, escaped, named, short } from './svg.ts';
import { coloursOf, layout_px, letter_px, type PictureLook } from './theme.ts';

interface Banded {
  readonly title: string;
  readonly alt: string;
  readonly cautions: readonly Caution[];
}

const margin_px = 26;
const bar_px = 8;
const between_px = 6;

/**
 * A picture with what can hurt below it, all of it: it is forwarded without its card. Nothing is added where nothing can
 * hurt. The picture itself stays as it was drawn, in a frame of its own.
 */
export function withCautions(svg: string, { title, alt, cautions }: Banded, { theme }: PictureLook): string {
  if (cautions.length === 0) return svg;
  const { page: drawn, width, height, shownWidth } = sizeOf(svg);
  // As large beside the picture as its own words, however wide it was laid out.
  const scale = width / layout_px;
  const colours = coloursOf(theme);
  const page = drawn.replace(element('rect', { width, height, fill: colours.page }), '');
  const left = margin_px + bar_px + 16;
  const rows = cautions.map((caution) => ({
    caution,
    lines: linesOf(said(caution), letter_px, layout_px - left - margin_px, { bold: caution.severity === 'danger' }),
  }));
  const line_px = letter_px * lineHeight;
  let y = margin_px + line_px + between_px;
  const placed = rows.map(({ caution, lines }) => {
    const top = y;
    y += lines.length * line_px + between_px;
    return words(lines, { x: left, top, bold: caution.severity === 'danger', fill: colours.ink });
  });
  const tall = y + margin_px - between_px;
  const band = [
    element('path', {
      d: `M${margin_px} ${short(margin_px / 2)}H${layout_px - margin_px}`,
      stroke: colours.faint,
      'stroke-width': 1.5,
    }),
    element('rect', {
      x: margin_px,
      y: margin_px,
      width: bar_px,
      height: tall - 2 * margin_px,
      fill: cautions.some(({ severity }) => severity === 'danger') ? colours.danger : colours.limit,
    }),
    words(['What can hurt'], { x: left, top: margin_px, bold: true, fill: colours.limit }),
    ...placed,
  ];
  const whole = height + tall * scale;
  const told = `${alt} What can hurt: ${cautions.map(said).join(' ')}`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${short(width)} ${short(whole)}" width="${short(shownWidth)}" height="${short((whole * shownWidth) / width)}" role="img">`,
    named(title, told),
    // One ground behind both in place of the drawing's own: an edge between two would show.
    element('rect', { width, height: whole, fill: colours.page }),
    page,
    element(
      'g',
      {
        transform: `translate(0 ${short(height)}) scale(${scale.toFixed(5)})`,
        'font-family': `${sans}, sans-serif`,
        'font-size': letter_px,
      },
      band.join('\n'),
    ),
    '</svg>\n',
  ].join('\n');
}

const said = ({ severity, text }: Caution): string => (severity === 'danger' ? `Danger: ${text}` : text);

function words(
  lines: readonly string[],
  { x, top, bold, fill }: { x: number; top: number; bold: boolean; fill: string },
): string {
  const rows = lines.map((line, at) =>
    element('tspan', { x, y: top + (at + 0.8) * letter_px * lineHeight }, escaped(line)),
  );
  return element('text', { fill, ...(bold ? { 'font-weight': 'bold' } : {}) }, rows.join(''));
}

/**
 * The drawn page as a group of another, without the names that go to the outer one. As a picture of its own inside the
 * other it would be clipped by a mask of its whole size, which takes the rasteriser as long as all the rest.
 */
function sizeOf(svg: string) {
  const [tag = ''] = /^<svg[^>]*>/.exec(svg) ?? [];
  const [, width = 0, height = 0] = (/viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(tag) ?? []).map(Number);
  const shownWidth = Number(/ width="([\d.]+)"/.exec(tag)?.[1] ?? width);
  const look = tag.replace(/ (?:xmlns|width|height|viewBox|role)="[^"]*"/g, '').replace('<svg', '<g');
  const page = svg
    .replace(tag, look)
    .replace(/<title>.*?<\/title><desc>.*?<\/desc>/s, '')
    .replace(/<\/svg>\s*$/, '</g>');
  return { page, width, height, shownWidth };
}
