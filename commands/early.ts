import { AskError } from '../core/ask-error.ts';
import type { Answer, Doubted } from './command.ts';

/** Said of typical values that stand until the ranges are there. */
export const rangesFollow = 'Typical values so far: the whole answer follows.';

/** What an answer of typical values is cut down to where it stands for a moment: nothing in it to act on but cautions. */
export const shortOf = ({
  headline,
  figures,
  assumed,
  sources,
  working = [],
  hazards,
  cautions,
  given,
}: Answer): Answer => ({
  headline: `${headline} ${rangesFollow}`,
  figures,
  assumed,
  sources,
  working,
  ...(given === undefined ? {} : { given }),
  ...(hazards === undefined ? {} : { hazards }),
  ...(cautions === undefined ? {} : { cautions }),
});

/** What can't be asked is told by the answer itself, not twice. */
export async function tellEarly(
  early: ((answer: Answer) => void) | undefined,
  answer: () => Promise<Answer>,
): Promise<void> {
  if (!early) return;
  try {
    early(await answer());
  } catch (error) {
    if (!(error instanceof AskError)) throw error;
  }
}

/**
 * The largest that an output can be within its inputs' ranges, where it rises or falls with each of them: each input at
 * whichever of its ends makes it larger, all at once. No sample of central draws goes beyond it.
 */
export function largestOf({ inputs, model }: Pick<Doubted, 'inputs' | 'model'>, output: string): number {
  const typical = Object.fromEntries(Object.entries(inputs).map(([name, { typical: value }]) => [name, value]));
  const at = (draw: Readonly<Record<string, number>>) => model(draw)[output] ?? Number.NaN;
  const corner = Object.fromEntries(
    Object.entries(inputs).map(([name, { low, typical: middle, high }]) => {
      if (low === high) return [name, middle];
      return [name, at({ ...typical, [name]: high }) >= at({ ...typical, [name]: low }) ? high : low];
    }),
  );
  return Math.max(at(corner), at(typical));
}
