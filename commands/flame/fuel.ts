import { AskError } from '../../core/ask-error.ts';
import { type Fuel, findFuel } from '../../core/fire/fuel/fuel.ts';
import { findPour } from '../../core/materials/catalogue.ts';
import type { Command } from '../command.ts';
import { type OptionMeta, readChoice, reading } from '../options.ts';

/** What each of the questions about a fire is for, in the words of a redirection. */
const purposes = {
  melt: 'melt says what heat a metal takes',
  fuel: 'fuel says how much a melt burns',
  blast: 'blast sizes air, pipe and blower for charcoal, wood, coke or oil',
  burner: 'burner sizes jet, pressure and bottle for propane',
  flame: 'flame says how hot a fuel burns and what it leaves',
} as const;
export type FireQuestion = keyof typeof purposes;

const amountFirst = /^[\d.,½¼¾/\s]+(?:kg|kilos?|g|lbs?|pounds?|oz|l|litres?|liters?|gal|t)?\b\s*(?:of\s+)?/iu;

const tried = <T>(find: (text: string) => T, text: string): T | undefined => {
  try {
    return find(text);
  } catch (error) {
    if (error instanceof AskError) return undefined;
    throw error;
  }
};

/** Words beside the amount they begin with. */
export const withoutAmount = (text: string): string => text.replace(amountFirst, '').trim();

/** Whether a text is a metal, with or without an amount. */
export function metalIn(text: string): boolean {
  const words = withoutAmount(text);
  return words !== '' && !tried(findFuel, words) && tried(findPour, words) !== undefined;
}

/** A metal where none belongs: melt is asked about those. */
export function refuseMetal(text: string, asked: FireQuestion, commands: readonly Command[]): void {
  if (!metalIn(text)) return;
  const words = withoutAmount(text);
  const amount = words === text.trim() ? `5 kg ${words}` : text.trim();
  const name = commands.some((one) => one.name === 'melt') ? 'melt' : 'size melt';
  throw new AskError({
    code: 'unfit',
    what: `"${text.slice(0, 40)}" is a metal, and ${purposes[asked]}`,
    expected: `a question to melt: ${purposes.melt}`,
    example: `${name} ${amount}`,
  });
}

/** Sends a fuel to the question that is for it. */
export function redirect(
  fuel: Fuel,
  { from, to, line }: { from: FireQuestion; to: FireQuestion; line: string },
): never {
  throw new AskError({
    code: 'unfit',
    what: `${fuel.name} is not for ${from}: ${purposes[from]}`,
    expected: `${to}: ${purposes[to]}`,
    example: line,
  });
}

/** A fuel, of two that follow each other the last: it makes the heat that counts. */
export function readFuel(text: string): Fuel {
  const parts = text.split(/\s+then\s+|\s*→\s*/i);
  return findFuel(parts.at(-1) ?? text);
}

/** A fuel, or two that follow each other, as typed: known to be some, for a command that only passes it on. */
export function fuelText(label: string) {
  const meta: OptionMeta = { kind: 'text', label };
  return reading(({ text }) => {
    readFuel(text);
    return text;
  }).meta({ ...meta });
}

/** A choice between kinds of fuel, which any fuel's name makes too: `propane` is gas, `lump charcoal` charcoal. */
export function fuelKind(label: string) {
  const wanted = { label, choices: ['gas', 'charcoal'] as const };
  const meta: OptionMeta = { kind: 'choice', ...wanted };
  return reading(({ text }) => {
    const kind = fuelIn(text)?.kind;
    return kind === 'gas' ? kind : kind === 'solid' ? 'charcoal' : readChoice(text, wanted);
  }).meta({ ...meta });
}

export const fuelIn = (text: string): Fuel | undefined => tried(readFuel, withoutAmount(text));
