import type { Card } from '../../commands/card.ts';
import { renderCard } from '../terminal/render.ts';
import { chartSvg } from './chart.ts';
import { drawingSvg } from './drawing.ts';
import { textPage } from './page.ts';
import type { PictureLook } from './theme.ts';

/** One picture of an answer, drawn when it is asked for. */
export interface Picture {
  /** Tells it from the others of its card: a drawing's own id, `chart`, `page`. */
  readonly id: string;
  readonly title: string;
  readonly alt: string;
  readonly svg: (look: PictureLook) => Promise<string>;
}

/** Columns of a page of text: at 550 px its letters are 11 px. */
const pageColumns = 72;

/** What there is to see of a card, the first being the one to show: its drawings, its chart, else its words. */
export function picturesOf(card: Card): readonly Picture[] {
  const { drawings = [], chart } = card;
  const drawn = drawings.map((drawing): Picture => {
    const { id, title, alt } = drawing;
    return { id, title, alt, svg: async (look) => drawingSvg(drawing, look) };
  });
  const charted = chart
    ? [{ id: 'chart', title: chart.title, alt: chart.alt, svg: (look: PictureLook) => chartSvg(chart, look) }]
    : [];
  return drawn.length + charted.length > 0 ? [...drawn, ...charted] : [pageOf(card)];
}

function pageOf(card: Card): Picture {
  const text = renderCard(card, { color: false, width: pageColumns });
  const title = card.headline;
  return { id: 'page', title, alt: text, svg: async ({ theme }) => textPage(text, { title, theme }) };
}
