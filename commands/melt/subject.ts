import { AskError } from '../../core/ask-error.ts';
import { findFuel } from '../../core/fire/fuel/fuel.ts';
import { findPour, pours } from '../../core/materials/catalogue.ts';
import { distance, nearest } from '../../core/materials/nearest.ts';
import type { Pour } from '../../core/materials/pour.ts';
import type { ScrapForm } from '../../core/melt/data/scrap-forms.ts';
import { formIn } from '../../core/melt/melt-loss.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { type Quantity, readQuantity } from '../../core/quantity/parse.ts';
import type { Command } from '../command.ts';
import { refuseDangerous } from './refuse.ts';

export interface Subject {
  readonly alloy: Pour;
  /** Mass, or the volume of the liquid. */
  readonly amount: Quantity;
  /** As the metal's words say it: `aluminium cans`. */
  readonly form: ScrapForm | undefined;
}

interface Asked {
  readonly said: string;
  readonly metal: string | undefined;
  readonly units: UnitSystem;
  readonly commands: readonly Command[];
}

/** `5 kg aluminium`, `10 lb of brass turnings`, `2 L bronze`; the metal may stand in its own option. */
export function readSubject({ said, metal, units, commands }: Asked): Subject {
  refuseDangerous(`${said} ${metal ?? ''}`);
  refuseCount(said);
  refuseSeveral(said);
  const words = said.trim().split(/\s+/);
  for (const { head, rest } of ways(words)) {
    const amount = within(rest, () => amountIn(head, units));
    if (amount === undefined) continue;
    const name = rest === '' ? metal : rest;
    if (name === undefined) throw nothingNamed(said);
    return { ...metalIn(name, commands, amount.text), amount };
  }
  const { alloy } = metalIn(said, commands);
  throw new AskError({
    code: 'missing',
    what: `it is not said how much ${alloy.name}`,
    expected: 'a mass, or the volume of the liquid, before the metal',
    example: `5 kg ${alloy.id.replaceAll('-', ' ')}`,
    option: 'melt',
  });
}

/** A drink can, emptied; from memory. */
const can_kg = 0.0135;

/** `12 soda cans` is a number of pieces. */
function refuseCount(said: string): void {
  const count = /^(\d{1,5})\s+(?:(?:empty|aluminium|aluminum|soda|beer|drinks?|pop|coke|beverage)\s+)*cans?$/i.exec(
    said.trim(),
  )?.[1];
  if (count === undefined) return;
  const mass_kg = Math.max(0.02, Number(count) * can_kg);
  throw new AskError({
    code: 'missing',
    what: `${count} cans are a number of pieces, and it takes their mass`,
    expected: 'their mass, weighed; a drink can is about 13 to 14 g (from memory)',
    example: `${Number(mass_kg.toPrecision(2))} kg aluminium cans`,
    option: 'melt',
  });
}

/** `3 kg copper and 1 kg tin`: two charges, of which one pot makes an alloy with a name of its own. */
function refuseSeveral(said: string): void {
  const [first = '', second = ''] = said.split(/\s+(?:and|plus|with)\s+|\s*[+&]\s*|,\s+(?=\d)/i);
  if (![first, second].every((one) => /^\d[\d.,/ ]*(?:kg|kilos?|g|grams?|lbs?|pounds?|oz|t)\s+\S*[a-z]/i.test(one)))
    return;
  throw new AskError({
    code: 'unreadable',
    what: `"${said.slice(0, 60)}" is more than one metal`,
    expected: 'one metal, or the alloy they make together with the mass of both: 4 kg bronze',
    example: first.trim(),
    option: 'melt',
  });
}

/** The amount before the metal, the longest first; else behind it. */
function ways(words: readonly string[]): readonly { readonly head: string; readonly rest: string }[] {
  const cut = (from: number, to: number) => words.slice(from, to).join(' ');
  const all = words.length;
  const counts = Array.from({ length: all }, (_, index) => all - index);
  return [
    ...counts.map((count) => ({ head: cut(0, count), rest: cut(count, all).replace(/^of\s+/i, '') })),
    ...counts.slice(1).map((count) => ({ head: cut(all - count, all), rest: cut(0, all - count).replace(/,$/, '') })),
  ];
}

/** What is wrong with an amount is mended with the metal behind it. */
function within<T>(rest: string, read: () => T): T {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof AskError)) throw error;
    throw error.with({ option: 'melt', example: `${error.example} ${rest}`.trim() });
  }
}

/** A metal, with or without a word on how the scrap comes. */
function metalIn(name: string, commands: readonly Command[], amount?: string): Omit<Subject, 'amount'> {
  const words = name.split(/\s+/);
  const form = words.length > 1 ? formIn(words.at(-1) ?? '') : undefined;
  const names = [name, ...(form ? [words.slice(0, -1).join(' ')] : [])];
  let refusal: AskError | undefined;
  for (const one of names) {
    try {
      return { alloy: findPour(one), form };
    } catch (error) {
      if (!(error instanceof AskError)) throw error;
      refusal ??= error;
    }
  }
  refuseFuel(name, commands);
  if (/\bsteel\b/i.test(name)) throw steel();
  const of = amount ?? '5 kg';
  if (isFar(name)) throw farOff(name, of);
  throw refusal!.with({ option: 'melt', example: `${of} ${refusal!.example.replaceAll('-', ' ')}` });
}

const named = pours.flatMap(({ id, name, aliases }) => [id, name, ...aliases]);

/** More than two letters in five are others: no slip of the finger. */
function isFar(name: string): boolean {
  const [near = ''] = nearest(name, named, 1);
  return distance(name.toLowerCase(), near) > 0.4 * Math.max(name.length, near.length);
}

const farOff = (name: string, amount: string) =>
  new AskError({
    code: 'unknown-name',
    what: `no metal is called "${name.slice(0, 60)}"`,
    expected: 'aluminium, zinc, brass, bronze, copper, tin, lead, cast iron, or one of their alloys',
    example: `${amount} aluminium`,
    option: 'melt',
  });

/** Above a crucible stands a metal; what burns below it is another question. */
function refuseFuel(name: string, commands: readonly Command[]): void {
  let fuel: ReturnType<typeof findFuel>;
  try {
    fuel = findFuel(name);
  } catch (error) {
    if (error instanceof AskError) return;
    throw error;
  }
  const known = (command: string) => commands.some((one) => one.name === command);
  const other = ['fuel', 'flame'].find(known);
  throw new AskError({
    code: 'unfit',
    what: `${fuel.name} is a fuel, and a melt is a metal`,
    expected: other
      ? `a metal here, or ${other} for how much of it burns`
      : 'a mass of metal, such as aluminium or bronze',
    example: other ? `${other} ${fuel.id.replaceAll('-', ' ')}` : 'melt 5 kg aluminium',
    option: 'melt',
  });
}

const readable = ['unreadable', 'unknown-unit', 'too-long', 'ambiguous'];

function amountIn(said: string, units: UnitSystem): Quantity | undefined {
  if (!/^[-−–]?\s?[\d.½¼¾⅓⅔⅛⅜⅝⅞]/u.test(said)) return undefined;
  const wanted = {
    dimensions: ['mass', 'volume'],
    plainUnit: { metric: 'kg', US: 'lb' },
    usual: { metric: '5 kg', US: '10 lb' },
    system: units,
    label: 'the melt',
  } as const;
  try {
    const read = readQuantity(said, wanted);
    return readQuantity(
      said,
      read.dimension === 'mass' ? { ...wanted, min: 0.02, max: 1000 } : { ...wanted, min: 1e-5, max: 0.2 },
    );
  } catch (error) {
    // "10 lb brass" is no quantity as a whole; "2,000 lb" has two readings and is one.
    if (
      error instanceof AskError &&
      readable.includes(error.code) &&
      !(error.code === 'ambiguous' && /[a-z.]$/i.test(said) && /^[\d.,]+ ?\S+$/.test(said))
    )
      return undefined;
    throw error;
  }
}

const nothingNamed = (said: string) =>
  new AskError({
    code: 'missing',
    what: `"${said.slice(0, 40)}" does not say of which metal`,
    expected: 'a metal behind the amount: aluminium, brass, bronze, copper, zinc alloy, tin, iron …',
    example: `${said.slice(0, 40)} aluminium`,
    option: 'melt',
  });

const steel = () =>
  new AskError({
    code: 'unfit',
    what: 'steel melts near 1500 °C (2700 °F): linings and crucibles of home furnaces end below that',
    expected: 'aluminium, zinc alloy, brass, bronze, copper, or cast iron, poured at 1300 to 1440 °C',
    example: '5 kg cast iron',
    option: 'melt',
  });
