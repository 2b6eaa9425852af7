import { z } from 'zod';
import { AskError } from '../core/ask-error.ts';
import { slipOf } from '../core/materials/nearest.ts';
import type { UnitSystem } from '../core/quantity/figure.ts';
import { type Dimension, type Quantity, readQuantity } from '../core/quantity/parse.ts';

/** What a field of a command's options says of itself: help, completion and every platform's forms come from it. */
export interface OptionMeta {
  readonly label: string;
  readonly kind: 'quantity' | 'text' | 'choice';
  readonly dimensions?: readonly Dimension[];
  readonly choices?: readonly string[];
}

/** A raw value on its way into zod: what was typed and who reads. */
export interface Typed {
  readonly text: string;
  readonly system: UnitSystem | undefined;
}

const typed = z.custom<Typed>((value) => typeof value === 'object' && value !== null && 'text' in value);

/** Zod carries the AskError out unharmed; `answer.ts` takes it from there. */
export function reading<T>(read: (value: Typed) => T) {
  return typed.transform((value, context) => {
    try {
      return read(value);
    } catch (error) {
      if (!(error instanceof AskError)) throw error;
      context.issues.push({ code: 'custom', input: value, message: error.what, params: { error } });
      return z.NEVER;
    }
  });
}

export interface QuantityOption {
  readonly label: string;
  readonly dimensions: readonly Dimension[];
  readonly plainUnit?: { readonly metric: string; readonly US: string };
  readonly usual?: { readonly metric: string; readonly US: string };
  readonly min?: number;
  readonly max?: number;
}

/** A number with its unit. Bounds are in SI. */
export function quantity({ label, dimensions, ...limits }: QuantityOption) {
  const meta: OptionMeta = { label, kind: 'quantity', dimensions };
  return reading(
    ({ text, system }): Quantity => readQuantity(text, { dimensions, label, ...limits, ...(system ? { system } : {}) }),
  ).meta({ ...meta });
}

/** Free text, trimmed, bounded. */
export function text({ label, most = 200 }: { label: string; most?: number }) {
  const meta: OptionMeta = { label, kind: 'text' };
  return reading(({ text: value }) => {
    if (value.length <= most) return value.trim();
    throw new AskError({
      code: 'too-long',
      what: `${label} has ${value.length} characters`,
      expected: `at most ${most}`,
      example: value.slice(0, 20).trim(),
    });
  }).meta({ ...meta });
}

/** One of a closed list; unambiguous beginnings are enough. */
export function choice<const C extends string>({ label, choices }: { label: string; choices: readonly C[] }) {
  const meta: OptionMeta = { label, kind: 'choice', choices };
  return reading(({ text: value }): C => readChoice(value, { label, choices })).meta({ ...meta });
}

export function readChoice<C extends string>(
  value: string,
  { label, choices }: { label: string; choices: readonly C[] },
): C {
  const wanted = value.trim().toLowerCase();
  const exact = choices.filter((one) => one === wanted);
  const begins = exact.length > 0 ? exact : choices.filter((one) => one.startsWith(wanted));
  if (begins.length === 1 && begins[0] !== undefined && wanted !== '') return begins[0];
  throw new AskError({
    code: 'unknown-name',
    what: `${label} can't be "${value}"`,
    expected: choices.join(', '),
    example: slipOf(wanted, choices) ?? choices[0] ?? '',
  });
}

export function metaOf(field: z.ZodType): OptionMeta {
  const inner = field instanceof z.ZodOptional ? (field.unwrap() as z.ZodType) : field;
  return inner.meta() as unknown as OptionMeta;
}

export const isOptional = (field: z.ZodType): boolean => field instanceof z.ZodOptional;

/** What goes wrong inside is said to be about this option. */
export function about<T>(option: string, read: () => T): T {
  try {
    return read();
  } catch (error) {
    throw error instanceof AskError && error.option === undefined ? error.with({ option }) : error;
  }
}
