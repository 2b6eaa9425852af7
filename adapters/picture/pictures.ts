import type { Card } from '../../commands/card.ts';
import { renderCard } from '../terminal/render.ts';
import { withCautions } from './band.ts';
import { chartSvg } from './chart.ts';
import { drawingSvg } from './drawing.ts';
import { textPage } from './page.ts';
import type { PictureLook, Theme } from './theme.ts';

/** Without a theme a drawing is black on white, and a page of text follows its reader's browser. */
export type Wish = Omit<PictureLook, 'theme'> & { readonly theme?: Theme | undefined };

/** One picture of an answer, drawn when it is asked for. */
export interface Picture {
  /** Tells it from the others of its card: a drawing's own id, `chart`, `page`. */
  readonly id: string;
  readonly title: string;
  readonly alt: string;
  readonly svg: (wish: Wish) => Promise<string>;
}

/**
 * What there is to see of a card, the first being the one to show: its drawings, its chart, else its words. Each says what
 * can hurt: pictures are forwarded without their card.
 */
export function picturesOf(card: Card): readonly Picture[] {
  const { drawings = [], chart, cautions } = card;
  const picture = (
    id: string,
    { title, alt }: Named,
    draw: (look: PictureLook) => string | Promise<string>,
  ): Picture => ({
    id,
    title,
    alt,
    svg: async (wish) => {
      const look = lookOf(wish);
      return withCautions(await draw(look), { title, alt, cautions }, look);
    },
  });
  const pictures = [
    ...drawings.map((drawing) => picture(drawing.id, drawing, (look) => drawingSvg(drawing, look))),
    ...(chart ? [picture('chart', chart, (look) => chartSvg(chart, look))] : []),
  ];
  return pictures.length > 0 ? pictures : [pageOf(card)];
}

type Named = Pick<Picture, 'title' | 'alt'>;

const lookOf = ({ theme = 'light', ...rest }: Wish): PictureLook => ({ ...rest, theme });

/** Columns of a page of text: in a chat, 550 px wide, its letters are 11 px; a browser shows it as large as it is. */
const columns = { chat: 72, browser: 100 };

function pageOf(card: Card): Picture {
  const words = (width: number) => renderCard(card, { color: false, width });
  const title = card.headline;
  return {
    id: 'page',
    title,
    alt: words(columns.chat),
    svg: async ({ theme }) =>
      theme ? textPage(words(columns.chat), { title, theme }) : textPage(words(columns.browser), { title }),
  };
}
