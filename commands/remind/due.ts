import type { Caution } from '../../core/hazard/caution.ts';
import { cautionsFor } from '../../core/hazard/cautions.ts';
import type { Reminder } from '../memory-weeks.ts';
import { dayIn, fromNow, hourIn } from '../when/say.ts';

/** A reminder whose time has come, as a platform is given it. */
export interface Due {
  readonly reminder: Reminder;
  /** The same at every try: what the platform is to know a second one by. */
  readonly key: string;
  /** It may have been sent before, this long ago at most; nothing is known of what came of it. */
  readonly perhapsSent?: { readonly ago_s: number; readonly tries: number };
}

/** What came of it. */
export type Sent =
  | { readonly kind: 'sent' }
  | {
      readonly kind: 'later';
      readonly fault: string;
      readonly wait_s?: number;
      /** Everything waits, not only what goes to this place. */
      readonly everywhere?: boolean;
      /** It may have arrived all the same. */
      readonly perhaps?: boolean;
    }
  /** It can never arrive. */
  | { readonly kind: 'gone'; readonly fault: string };

/** Sends one, and never throws for what a platform answers. */
export type Sender = (due: Due) => Promise<Sent>;

/** What is said when it is due, in the platforms' common words. */
export interface Said {
  readonly what: string;
  readonly cautions: readonly Caution[];
  readonly holds: readonly string[];
  /** That it comes late, or perhaps twice. */
  readonly remarks: readonly string[];
  /** Which one it is and when it was due; the code is how a second one is found. */
  readonly foot: string;
  readonly next: readonly { readonly label: string; readonly line: string }[];
}

const late_ms = 120_000;

export function saidOf(
  { id, what, dueAt, zone, holds, facts, next }: Reminder,
  { now, mayBeRepeat }: { readonly now: Date; readonly mayBeRepeat: boolean },
): Said {
  const reader = { zone, units: 'metric' } as const;
  const ago = fromNow(dueAt, now, zone);
  const late = now.getTime() - dueAt.getTime() > late_ms;
  return {
    what,
    cautions: cautionsOf(facts),
    holds,
    remarks: [
      ...(late ? [`Due ${ago === 'today' ? 'at' : `${ago},`} ${hourIn(dueAt, reader)}; I was away.`] : []),
      ...(mayBeRepeat ? ['This may be a repeat: I cannot see whether I have said it before.'] : []),
    ],
    foot: `Reminder ${id} · ${dayIn(dueAt, zone)}, ${hourIn(dueAt, reader)} (${zone})`,
    next: [
      ...(next === undefined ? [] : [{ label: next, line: next }]),
      { label: 'again in an hour', line: `remind in 1 h ${what}` },
    ],
  };
}

/** Thousands may be due in one minute, and most of them are of the same few steps. */
const known = new Map<string, readonly Caution[]>();

function cautionsOf(facts: readonly string[]): readonly Caution[] {
  const key = facts.join(' ');
  const found = known.get(key) ?? cautionsFor({ facts });
  if (known.size < 200) known.set(key, found);
  return found;
}
