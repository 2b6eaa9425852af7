import { AskError } from '../../core/ask-error.ts';
import type { ItemState, Progress, StageState } from '../../core/build/progress.ts';
import { nearest } from '../../core/materials/nearest.ts';

/** What was meant: one item, or a stage with all its items. */
export interface Found {
  readonly at: StageState;
  readonly items: readonly ItemState[];
  /** The stage as a whole. */
  readonly whole: boolean;
}

interface Named {
  readonly found: Found;
  readonly id: string;
  readonly number: string;
  readonly text: string;
}

/**
 * By number (`9`, `9.2`), id, or words of the id, else of its text. Of several that have the words, those that are `likely` (still to
 * tick, or ticked) go first; what is still two things is asked back, never guessed.
 */
export function findItem(typed: string, { stages }: Progress, likely: (item: ItemState) => boolean): Found {
  const all = stages.flatMap(namesOf);
  const wanted = typed
    .trim()
    .toLowerCase()
    .replace(/^(?:stage|item|no\.?|#)\s*(?=\d)/, '');
  const exact = all.find(({ id, number }) => number === wanted || id === wanted.replaceAll(' ', '-'));
  if (exact) return exact.found;
  if (isNumber(wanted)) throw unknown(wanted, all);
  const asked = wanted.split(/[^\p{L}\p{N}]+/u).filter((word) => word !== '');
  const byId = asked.length === 0 ? [] : all.filter(({ id }) => hasAll(id, asked));
  const byText = asked.length === 0 ? [] : all.filter(({ id, text }) => hasAll(`${id} ${text}`, asked));
  const having = byId.length > 0 ? byId : byText;
  const open = having.filter(({ found }) => found.items.some(likely));
  const meant = open.length > 0 ? open : having;
  const named = meant.filter(({ found, text }) => found.whole && text.toLowerCase() === wanted);
  const [only, second] = named.length === 1 ? named : meant;
  if (only && !second) return only.found;
  throw only ? several(typed, meant) : unknown(typed, all);
}

const namesOf = (at: StageState): readonly Named[] => [
  {
    found: { at, items: at.items, whole: true },
    id: at.stage.id,
    number: String(at.number),
    text: at.stage.name,
  },
  ...at.items.map(
    (item): Named => ({
      found: { at, items: [item], whole: false },
      id: item.id,
      number: item.number,
      text: item.text,
    }),
  ),
];

const isNumber = (text: string): boolean => /^\d+(?:\.\d+)?$/.test(text);

const hasAll = (text: string, asked: readonly string[]): boolean => {
  const words = text.toLowerCase().split(/[^\p{L}\p{N}]+/u);
  return asked.every((one) => words.some((word) => word.startsWith(one)));
};

const said = ({ number, text }: Named): string => `${number} ${text}`;

const several = (typed: string, meant: readonly Named[]) =>
  new AskError({
    code: 'ambiguous',
    what: `"${typed.slice(0, 40)}" may mean ${meant.length} things`,
    expected: meant.slice(0, 4).map(said).join('; '),
    example: meant[0]!.id,
    option: 'item',
  });

function unknown(typed: string, all: readonly Named[]): AskError {
  const words = all.map(({ id }) => id);
  const near = isNumber(typed) ? [] : nearest(typed, words, 3);
  const shown = near.flatMap((id) => all.find((one) => one.id === id) ?? []);
  return new AskError({
    code: 'unknown-name',
    what: `nothing on this list is "${typed.slice(0, 40)}"`,
    expected: isNumber(typed)
      ? `a number from ${all[0]?.number} to ${all.at(-1)?.number}, as the sheet has them`
      : `a number, or words of it, perhaps ${shown.map(said).join('; ')}`,
    example: near[0] ?? words.find((id) => all.some((one) => one.id === id && !one.found.whole)) ?? '1.1',
    option: 'item',
  });
}
