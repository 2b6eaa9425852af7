import { stepTexts } from '../../core/dry/data/steps.ts';
import { isFact } from '../../core/hazard/facts.ts';
import { factsIn } from '../../core/hazard/words.ts';

/** Words of a reminder that mean a fire or metal, whatever it says of them. */
const tasks: readonly (readonly [RegExp, readonly string[]])[] = [
  [
    /\b(?:fir(?:e|es|ed|ing)|light(?:ing)?|lit|burn\w*|heat\w*|kindl\w*|ignit\w*|torch\w*|furnace|flame\w*)\b/i,
    ['hot-work'],
  ],
  [/\b(?:melt\w*|pour\w*|cast(?:ing|s)?|crucible|ingots?|dross)\b/i, ['hot-work', 'molten-metal']],
  [/\b(?:dry(?:ing)?|lining|cure|curing|first fire)\b/i, ['damp-lining']],
];

/** What holds while it is done, by its words and by the plan it comes from. */
export const factsOf = (what: string, facts: readonly string[] = []): readonly string[] => [
  ...new Set(
    [...facts, ...factsIn(what), ...tasks.flatMap(([words, meant]) => (words.test(what) ? meant : []))].filter(isFact),
  ),
];

/** Before anything is lit, where no plan says more: those of a first fire. */
export const holdsOf = (facts: readonly string[]): readonly string[] =>
  facts.includes('hot-work') ? (facts.includes('molten-metal') ? meltHolds : lightHolds) : [];

const lightHolds = [...stepTexts.warm.holds, 'someone stays with it all the time'];
const meltHolds = [
  'the furnace has had its first fire, empty',
  'metal, tools and mould are dry and warm',
  'someone stays with it all the time',
];
