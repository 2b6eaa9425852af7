import type { z } from 'zod';
import type { Tie } from '../core/doubt/together.ts';
import type { Spread } from '../core/materials/spread.ts';
import type { SiUnit, UnitSystem } from '../core/quantity/figure.ts';
import type { Card, Reply } from './card.ts';
import type { Measured } from './log/measured.ts';
import type { Manner } from './manner.ts';
import type { Build, Memory } from './memory.ts';
import type { Reach } from './reach.ts';

/** A question as an adapter hands it over: names and raw text, nothing interpreted. */
export interface Ask {
  readonly command: string;
  readonly options: Readonly<Record<string, string>>;
  readonly asker: string;
  readonly place: string;
}

/** What a question stands for: `again` for the last one, `build show` for the one that was kept. */
export interface Meant {
  readonly ask: Ask;
  /** Where it comes from, to stand first among what was given. */
  readonly given?: readonly string[];
  /** Options from before, which give way to what a new `for=` hands over. */
  readonly yields?: readonly string[];
  /** The build it was kept as: a mistake in it is said to be that build's. */
  readonly build?: Build;
}

/** In which way another question is answered. */
export interface How {
  readonly plain?: true;
}

/** What answers, as whoever wires it knows it. */
export interface Versions {
  /** Name and version. */
  readonly program: string;
  readonly runtime: string;
}

export interface AnswerContext {
  readonly asker: string;
  readonly place: string;
  readonly now: Date;
  readonly memory: Memory;
  /** Leads the output: the person's choice, else the place's, else what was typed. */
  readonly units: UnitSystem;
  /** Another question on the way to this answer; it is not remembered as the asker's last. */
  readonly ask: (ask: Ask, how?: How) => Promise<Reply>;
  /** A question with what its `for=` hands over filled in: it stands on no other answer any more. */
  readonly fill: (ask: Ask) => Promise<Ask>;
  /** A typed line as an Ask of the same asker and place. */
  readonly parse: (line: string) => Ask;
  readonly commands: readonly Command[];
  /** What was measured on the build that for= names: estimates are calibrated by it. */
  readonly measured?: Measured;
  readonly versions?: Versions;
  /** Only typical values are wanted: no ranges, cautions by ends no sample goes beyond. */
  readonly plain?: true;
  /** Takes an answer of typical values while the whole one is worked out. Not there where nobody could make use of it. */
  readonly early?: (answer: Answer) => void;
  /** How questions are put where this one was asked; typed, where nothing is said. */
  readonly manner?: Manner;
  /** Whether the asker may change what the place has set. */
  readonly mayModerate: boolean;
  /** How they can be called later. Asking may try it out: ask only where something is to be called for. */
  readonly reach?: () => Promise<Reach>;
}

/** What a command says of its answer; `answer.ts` adds the rest (given, cautions, units). */
export type Answer = Omit<
  Card,
  'command' | 'cautions' | 'given' | 'units' | 'notes' | 'handsOver' | 'working' | 'next'
> &
  Partial<Pick<Card, 'notes' | 'handsOver' | 'working' | 'next' | 'given' | 'cautions'>> & {
    /** Facts and numbers of this very answer, beside those the command always carries. */
    readonly hazards?: { readonly facts: readonly string[]; readonly numbers?: Readonly<Record<string, number>> };
  };

/** A question as a model of its doubts, for `settle`: what is drawn, and what a draw comes to. */
export interface Doubted {
  /** In the reader's words. What two questions share has one name in both; what is of one material or fuel names it. */
  readonly inputs: Readonly<Record<string, Spread>>;
  /** Where an input has one. */
  readonly units: Readonly<Record<string, SiUnit>>;
  /** By figure id; NaN where a draw has no answer. */
  readonly model: (draw: Readonly<Record<string, number>>) => Readonly<Record<string, number>>;
  /** Inputs that go together, for a physical reason; the rest are drawn apart. */
  readonly together?: readonly Tie<string>[];
  /** To begin with: fewer where a draw is dear. */
  readonly samples: number;
}

export interface Example {
  readonly line: string;
  readonly says: string;
}

// Method syntax below is deliberate: it lets a Command of particular options stand in the registry of all commands.
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
  /** Facts of what was typed, a whole line or its values: they reach every refusal, whichever option it is about. */
  readonly warns?: (typed: string) => readonly string[];
  /** Ids and labels of every figure the card may carry. */
  readonly figures: Readonly<Record<string, string>>;
  /** The whole rest of the line is the subject, `name=` and all: for commands that take a line. */
  readonly takesLine?: true;
  /**
   * Can be asked about a message somebody wrote: its text is the subject. It is neither told back nor kept, and where the
   * platform has a menu for a message this is what stands in it (at most 32 characters).
   */
  readonly onMessage?: { readonly label: string };
  /** First aid: no limit, no queue and nothing that was asked before holds it up, and it looks as urgent as it is. */
  readonly urgent?: true;
  /** Not kept as the asker's last question: help, working, first aid. */
  readonly passing?: true;
  /** For everybody in the place to read and press, though it is passing. */
  readonly forAll?: true;
  /** What a family says of itself where it is listed in one line: `build …`. */
  readonly family?: string;
  /** The answer is for the asker alone: a platform that can shows it to nobody else. */
  readonly private?: true;
  /** Groups of options that exclude each other: asked again with one, the other goes. */
  readonly alternatives?: readonly (readonly (readonly string[])[])[];
  /** Speaks of the asker's last question, and so carries its hazards. */
  readonly aboutLast?: true;
  /** Computes for more than 5 ms: a server answers it in a worker thread, so that plain answers do not wait. */
  readonly slow?: true;
  /** Turns this question into the one that is meant, before anything else happens. */
  expand?(ask: Ask, context: Pick<AnswerContext, 'memory' | 'parse' | 'commands'>): Promise<Meant>;
  answer(options: z.infer<Options>, context: AnswerContext): Promise<Answer>;
  /** Nothing where this very question is outside what can be sampled. */
  doubt?(options: z.infer<Options>, context: AnswerContext): Promise<Doubted | undefined>;
}
