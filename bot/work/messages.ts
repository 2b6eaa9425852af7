import type { PictureLook } from '../../adapters/picture/theme.ts';
import type { Card } from '../../commands/card.ts';
import type { Ask } from '../../commands/command.ts';

/** What is asked of the worker: plain data, since it crosses between threads. */
export type Job =
  | { readonly kind: 'picture'; readonly card: Card; readonly which?: string; readonly look: PictureLook }
  | {
      readonly kind: 'answer';
      readonly ask: Ask;
      readonly context: JobContext;
      /** Whether typical values are wanted while the ranges are worked out. */
      readonly early: boolean;
    };

export interface JobContext {
  readonly asker: string;
  readonly place: string;
  readonly now: Date;
  readonly mayModerate: boolean;
}

/** A fault as data; the thread it happened in may be gone. */
export interface Fault {
  readonly name: string;
  readonly message: string;
  readonly stack?: string;
}

export type ToWorker =
  | { readonly kind: 'job'; readonly id: number; readonly job: Job }
  | { readonly kind: 'remembered'; readonly call: number; readonly value: unknown }
  | { readonly kind: 'forgotten'; readonly call: number; readonly fault: Fault };

export type FromWorker =
  | { readonly kind: 'early'; readonly id: number; readonly card: Card }
  | { readonly kind: 'done'; readonly id: number; readonly value: unknown }
  | { readonly kind: 'failed'; readonly id: number; readonly fault: Fault }
  | { readonly kind: 'memory'; readonly call: number; readonly method: string; readonly args: readonly unknown[] };

export function faultOf(error: unknown): Fault {
  if (!(error instanceof Error)) return { name: 'Error', message: String(error) };
  const { name, message, stack } = error;
  return { name, message, ...(stack === undefined ? {} : { stack }) };
}

export function errorOf({ name, message, stack }: Fault): Error {
  const error = new Error(message);
  error.name = name;
  if (stack !== undefined) error.stack = stack;
  return error;
}
