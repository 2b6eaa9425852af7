import { AskError } from '../../core/ask-error.ts';
import type { Claimed } from './claimed.ts';
import { flameClaims } from './flames.ts';
import { makingClaims } from './makings.ts';
import { meltClaims } from './melts.ts';
import { shellClaims } from './shells.ts';
import { plain } from './words.ts';

const patterns = [...meltClaims, ...flameClaims, ...shellClaims, ...makingClaims];

/**
 * A sentence is read only if one pattern takes every word of it. What is left over may turn its meaning round, so
 * then the asker is asked: a misreading is worse than a question back.
 */
export function readClaim(sentence: string): Claimed {
  const words = plain(sentence);
  if (!/\d/.test(words)) throw noNumber(sentence);
  for (const { pattern, means } of patterns) {
    const groups = pattern.exec(words)?.groups;
    const claimed = groups && tried(() => means(groups));
    if (claimed) return claimed;
  }
  throw notRead(sentence);
}

/** What is no fuel, no metal or no quantity there is no claim of this pattern: another may take it. */
function tried<T>(read: () => T): T | undefined {
  try {
    return read();
  } catch (error) {
    if (error instanceof AskError) return undefined;
    throw error;
  }
}

const example = 'claim 3 kg of charcoal melts 6 kg of aluminium';

const noNumber = (sentence: string) =>
  new AskError({
    code: 'missing',
    what: `"${sentence.slice(0, 60)}" has no number to hold against ours`,
    expected: 'how much, how hot, how long or how many; without a number settle weighs two sides',
    example,
    option: 'statement',
  });

const notRead = (sentence: string) =>
  new AskError({
    code: 'unreadable',
    what: `"${sentence.slice(0, 80)}" could be meant in more than one way, or has a part that is not understood`,
    expected:
      'one figure and one number: so much fuel melts so much metal, a wall stays below a temperature, a fuel burns so much hotter than another; or figure= and is= with the question in for=(…)',
    example: 'claim figure=shell is=below 60 °C for=(wall 2 in clay-sand; 2 in vermiculite)',
    option: 'statement',
  });
