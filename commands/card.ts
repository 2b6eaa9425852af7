import type { AskErrorParts } from '../core/ask-error.ts';
import type { PlanStep } from '../core/dry/plan.ts';
import type { Caution } from '../core/hazard/caution.ts';
import type { Figure, Shown, UnitSystem } from '../core/quantity/figure.ts';
import type { Drawing } from '../core/shape/drawing.ts';
import type { SourceId } from '../core/sources/source.ts';
import type { Step } from '../core/step.ts';

export interface Table {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** A chart as data: adapters draw it. SI, like every number of a card. Panels stand above one another over one x axis. */
export interface Chart {
  readonly title: string;
  /** Says in words what the picture shows, its main numbers included. */
  readonly alt: string;
  readonly x: { readonly label: string; readonly unit: Figure['unit']; readonly shown?: Shown };
  readonly panels: readonly ChartPanel[];
}

/** Points rise in x. A band belongs to the series of its name and is its range. */
export interface ChartPanel {
  readonly y: { readonly label: string; readonly unit: Figure['unit']; readonly shown?: Shown };
  readonly series: readonly { readonly name: string; readonly points: readonly (readonly [x: number, y: number])[] }[];
  readonly bands?: readonly {
    readonly name: string;
    readonly points: readonly (readonly [x: number, low: number, high: number])[];
  }[];
  /** A level worth seeing (a limit, a touch band) or a moment (fire out). */
  readonly lines?: readonly { readonly name: string; readonly at: number; readonly axis: 'x' | 'y' }[];
}

/** An assumption and the option that overrides it. */
export interface Assumption {
  readonly text: string;
  readonly override?: string;
}

export interface Attachment {
  readonly name: string;
  readonly text: string;
  /** Longer than anybody reads in a chat or at a prompt: a file everywhere. */
  readonly apart?: true;
}

/** A whole answer as plain data. Shown in this order: the answer, then what can hurt, then the rest. */
export interface Card {
  readonly command: string;
  /** The answer in one sentence, with its range. */
  readonly headline: string;
  readonly cautions: readonly Caution[];
  readonly figures: readonly Figure[];
  readonly table?: Table;
  readonly chart?: Chart;
  /** The first is the one to show where only one can be. */
  readonly drawings?: readonly Drawing[];
  /** Plain lines below the figures: advice that is neither number nor caution. */
  readonly notes: readonly string[];
  readonly given: readonly string[];
  readonly assumed: readonly Assumption[];
  /** The input that moves the answer most. */
  readonly doubt?: string;
  readonly sources: readonly SourceId[];
  readonly working: readonly Step[];
  /** Follow-up questions as ready command lines. */
  readonly next: readonly {
    readonly label: string;
    readonly line: string;
    /** What comes of it is for everybody, even where this answer is for its asker alone. */
    readonly forAll?: true;
  }[];
  /** What another command takes by `for=`: option name → text as it would be typed. */
  readonly handsOver: Readonly<Record<string, string>>;
  readonly units: UnitSystem;
  /** A text file that goes with the answer: shown or written out by the terminal, uploaded elsewhere. */
  readonly attachment?: Attachment;
  /** Dated steps that reminders can be made of. */
  readonly plan?: readonly PlanStep[];
}

/** What an adapter gets back: a card, or an error with the cautions of what was asked. Plain data both. */
export type Reply =
  | { readonly kind: 'card'; readonly card: Card }
  | {
      readonly kind: 'error';
      readonly error: AskErrorParts;
      readonly cautions: readonly Caution[];
      /** A corrected line, ready to send, where there is one. */
      readonly tryLine?: string;
    };
