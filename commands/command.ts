import type { z } from 'zod';
import type { UnitSystem } from '../core/quantity/figure.ts';
import type { Card } from './card.ts';
import type { Memory } from './memory.ts';

/** A question as an adapter hands it over: names and raw text, nothing interpreted. */
export interface Ask {
  readonly command: string;
  readonly options: Readonly<Record<string, string>>;
  readonly asker: string;
  readonly place: string;
}

export interface AnswerContext {
  readonly asker: string;
  readonly place: string;
  readonly now: Date;
  readonly memory: Memory;
  /** Leads the output: the person's choice, else the place's, else what was typed. */
  readonly units: UnitSystem;
}

/** What a command says of its answer; `answer.ts` adds the rest (given, cautions, units). */
export type Answer = Omit<
  Card,
  'command' | 'cautions' | 'given' | 'units' | 'notes' | 'handsOver' | 'working' | 'next'
> &
  Partial<Pick<Card, 'notes' | 'handsOver' | 'working' | 'next' | 'given'>> & {
    /** Facts and numbers of this very answer, beside those the command always carries. */
    readonly hazards?: { readonly facts: readonly string[]; readonly numbers?: Readonly<Record<string, number>> };
  };

export interface Example {
  readonly line: string;
  readonly says: string;
}

export interface Command<Options extends z.ZodObject = z.ZodObject> {
  readonly name: string;
  /** One line, at most 100 characters. */
  readonly summary: string;
  /** Every field is made by `options.ts` and carries its label. */
  readonly options: Options;
  /** The option that stands bare after the name. */
  readonly subject?: keyof z.infer<Options> & string;
  /** Executed by the tests. */
  readonly examples: readonly Example[];
  /** Facts that always hold when this is asked, see `core/hazard`. */
  readonly hazards: readonly string[];
  /** Ids and labels of every figure the card may carry. */
  readonly figures: Readonly<Record<string, string>>;
  answer(options: z.infer<Options>, context: AnswerContext): Promise<Answer>;
}
