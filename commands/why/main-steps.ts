import { readKey } from '../../core/quantity/key.ts';
import type { Step } from '../../core/step.ts';
import { equationsOf } from '../../core/working/equation.ts';
import type { Card } from '../card.ts';

/** As many as a card can carry beside its cautions. */
export const mostSteps = 6;

/** The steps that lead to what the card shows, in the order of the working: the whole of it stands in the file. */
export function mainSteps({ working, figures }: Pick<Card, 'working' | 'figures'>): readonly Step[] {
  if (working.length <= mostSteps) return working;
  const ranked = working.map((step, at) => ({
    at,
    rank: rankOf(step, figures),
    reckons: equationsOf(step).length > 0,
  }));
  const chosen = ranked
    .toSorted((a, b) => a.rank - b.rank || Number(b.reckons) - Number(a.reckons) || b.at - a.at)
    .slice(0, mostSteps)
    .map(({ at }) => at);
  return working.filter((_, at) => chosen.includes(at));
}

/** The place of the first figure that is its result, word for word in SI; a step of no figure comes after all of them. */
function rankOf({ gives }: Step, figures: Card['figures']): number {
  const found = figures.findIndex(({ value, unit }) =>
    Object.entries(gives).some(([key, given]) => given === value && readKey(key).unit === unit),
  );
  return found < 0 ? figures.length : found;
}
