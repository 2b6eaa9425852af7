import { AskError } from '../ask-error.ts';
import { nearest } from '../materials/nearest.ts';
import type { Element, Pour } from '../materials/pour.ts';
import type { Spread } from '../materials/spread.ts';
import { elementLoss, zincLoss } from './data/element-loss.ts';
import { type ScrapForm, scrapForms } from './data/scrap-forms.ts';

/** Is the melt kept under charcoal, glass or flux? `undefined`: not said. */
export type Cover = boolean | undefined;

/** Loss of one element, share of its own mass, from this alloy in clean heavy pieces. */
function lossOf(element: Element, { family }: Pour, cover: Cover): Spread {
  if (element !== 'Zn') return elementLoss[element];
  if (family === 'zinc') return zincLoss.inZincAlloy;
  return cover === undefined ? zincLoss.unsaid : cover ? zincLoss.covered : zincLoss.uncovered;
}

/** No element loses more than this, however fine the scrap; judged. */
const MOST = 0.6;

export interface ElementLoss {
  readonly element: Element;
  /** Of its own mass. */
  readonly lost: Spread;
  /** Of the alloy before and after the melt, typical. */
  readonly share: number;
  readonly share_after: number;
}

export interface MeltLoss {
  /** Of the charge's mass, metal only: dirt, steel inserts and lacquer come on top. */
  readonly lost: Spread;
  readonly elements: readonly ElementLoss[];
}

/**
 * Metal lost to dross and fume: Σ wᵢ lᵢ over the elements. For aluminium alloys the form of the scrap gives the loss of
 * aluminium itself; of everything else it multiplies the loss of heavy clean pieces. Shares of mass. The numbers are
 * from memory where not cited: ranges, not forecasts.
 */
export function meltLoss({ alloy, form, cover }: { alloy: Pour; form: ScrapForm; cover: Cover }): MeltLoss {
  const rows = (Object.entries(alloy.composition) as [Element, number][]).map(([element, share]) => {
    const own = lossOf(element, alloy, cover);
    const byForm = alloy.family === 'aluminium' && element === 'Al';
    const end = (which: keyof Spread) =>
      byForm ? form.aluminium_loss[which] : Math.min(MOST, own[which] * form.surface[which]);
    return { element, share, lost: { low: end('low'), typical: end('typical'), high: end('high') } };
  });
  const sum = (which: keyof Spread) => rows.reduce((total, { share, lost }) => total + share * lost[which], 0);
  const lost = { low: sum('low'), typical: sum('typical'), high: sum('high') };
  return {
    lost,
    elements: rows.map((row) => ({
      ...row,
      share_after: (row.share * (1 - row.lost.typical)) / (1 - lost.typical),
    })),
  };
}

const wordsOf = (form: ScrapForm) => [form.id, form.name, ...form.words];

export const formIn = (text: string): ScrapForm | undefined => {
  const wanted = text.trim().toLowerCase();
  return scrapForms.find((form) => wordsOf(form).includes(wanted));
};

/** @throws AskError `unknown-name`, with the nearest ids. */
export function findForm(text: string): ScrapForm {
  const found = formIn(text);
  if (found) return found;
  const [near] = nearest(text, scrapForms.flatMap(wordsOf), 1);
  throw new AskError({
    code: 'unknown-name',
    what: `no form of scrap is called "${text.slice(0, 40)}"`,
    expected: scrapForms.map(({ id }) => id).join(', '),
    example: (near && formIn(near)?.id) ?? 'castings',
    option: 'scrap',
  });
}
