import { AskError } from '../ask-error.ts';
import { formatBoth } from '../quantity/format.ts';
import { readKey } from '../quantity/key.ts';
import type { Numbers } from '../step.ts';

export interface Limits {
  readonly low: number;
  readonly high: number;
  /** Something that works, ready to send. */
  readonly example: string;
}

/** So that 13 bores worked out twice are still 13 bores. */
const HAIR = 1e-9;

/**
 * Holds each number to the range its formula is good for, ends included.
 * @throws AskError `out-of-range`, in the words and unit of the number's key.
 */
export function within(given: Numbers, { low, high, example }: Limits): void {
  for (const key in given) {
    const value = given[key]!;
    if (value >= low - HAIR * Math.abs(low) && value <= high + HAIR * Math.abs(high)) continue;
    const { label, unit } = readKey(key);
    const shown = (si: number) => formatBoth(si, unit, 'metric');
    throw new AskError({
      code: 'out-of-range',
      what: `${label} of ${shown(value)} is ${value > high ? `more than ${shown(high)}` : `not at least ${shown(low)}`}`,
      expected: `${label} from ${shown(low)} to ${shown(high)}`,
      example,
    });
  }
}
