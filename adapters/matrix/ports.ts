import type { Card, Reply } from '../../commands/card.ts';
import type { Ask } from '../../commands/command.ts';
import type { Caution } from '../../core/hazard/caution.ts';
import type { FileOut } from './content.ts';

/** What the adapter is given by whoever wires it. */
export interface Log {
  debug(about: object, what: string): void;
  info(about: object, what: string): void;
  warn(about: object, what: string): void;
  error(about: object, what: string): void;
}

export interface Who {
  readonly asker: string;
  readonly place: string;
  readonly mayModerate: boolean;
  /** The same each time one question is taken up: what was done for it is not done again. */
  readonly asking: string;
}

/** Questions that wait for their answer, as ids; they outlive the process where there is a store (see bot/store). */
export interface Questions {
  enqueue(message: { key: string; channel: string; body: unknown; dueAt: Date }): Promise<boolean>;
  claim(
    channel: string,
    given: { now: Date; lease_s: number; limit: number },
  ): Promise<readonly { key: string; body: unknown; attempt: number }[]>;
  sent(key: string, now: Date): Promise<boolean>;
  failed(
    claimed: { key: string; attempt: number },
    given: { fault: string; now: Date; retryAt?: Date },
  ): Promise<boolean>;
}

/** What is known of messages already sent: small plain data. */
export interface States {
  put(id: string, value: unknown, given: { now: Date; keep_s: number; asker?: string }): Promise<void>;
  get(id: string, now: Date): Promise<unknown>;
}

/** How often somebody may ask. */
export interface Budget {
  take(who: { asker: string; guild?: string }, now: Date): { readonly wait_s: number };
}

export interface Told {
  readonly kind: 'text' | 'edit' | 'reaction' | 'number';
  readonly command: string;
  readonly outcome: 'answered' | 'deferred' | 'refused' | 'failed';
  readonly took_s: number;
}

/** A question as it was read. */
export type About = Pick<Ask, 'command' | 'options'>;

/** What the desk needs answered, beside a platform to say it on. */
export interface Answering {
  /** True where a line begins with a command's name, however well the rest reads. */
  readonly isCommand: (line: string) => boolean;
  /** True where a line is a command that can be asked about a message, and nothing behind it. */
  readonly isOnMessage: (line: string) => boolean;
  /** True where somebody may be hurt: nothing holds that up. */
  readonly isUrgent: (line: string) => boolean;
  /** True where the answer is for the asker alone. */
  readonly isPrivate: (line: string) => boolean;
  /** `early` hears typical values while the ranges of a slow answer are worked out. */
  readonly answer: (line: string, who: Who, early?: (card: Card) => void) => Promise<Reply>;
  /** What `last` and `again` mean for somebody now. */
  readonly last: (who: Who) => Promise<About | undefined>;
  /** Makes a question the one they mean. */
  readonly recall: (about: About, who: Who) => Promise<void>;
  /** What can hurt in what is asked, where it can't be answered. */
  readonly cautions: (line: string, who: Who) => Promise<readonly Caution[]>;
  /** The pictures and files that go with a card. */
  readonly files: (reply: Extract<Reply, { kind: 'card' }>) => Promise<readonly FileOut[]>;
}
