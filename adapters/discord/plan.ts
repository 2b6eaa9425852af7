import type { Caution } from '../../core/hazard/caution.ts';
import type { Modal } from './door.ts';
import type { Message } from './message/payload.ts';

/** What came of a question, ready to send. */
export interface Outcome {
  readonly message: Message;
  readonly ephemeral: boolean;
  /** No answer: an asker's mistake, one too many, or a fault. */
  readonly refused?: boolean;
}

/** How a request will be answered, known before the work is done: a deferral has to say whether it is private. */
export interface AnswerPlan {
  readonly kind: 'answer';
  readonly command: string;
  readonly ephemeral: boolean;
  /** A message of its own, the message whose button was pressed, or a private one instead of that. */
  readonly into: 'new' | 'same' | 'private';
  /** Of what is asked: they stand beside whatever goes wrong. */
  readonly cautions: () => readonly Caution[];
  /** `early` hears, at most once and before that, what may stand until then. */
  readonly work: (early?: (message: Message) => void) => Promise<Outcome>;
}

export type Plan = AnswerPlan | { readonly kind: 'modal'; readonly command: string; readonly modal: Modal };
