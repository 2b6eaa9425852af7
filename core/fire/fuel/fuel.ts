import { AskError } from '../../ask-error.ts';
import { nameKey } from '../../materials/catalogue.ts';
import { nearby } from '../../materials/nearest.ts';
import { fuels as fuelData } from '../data/fuels.ts';
import type { Fuel } from './fuel-schema.ts';

export type { Fuel } from './fuel-schema.ts';

export const fuels: readonly Fuel[] = Object.freeze([...fuelData]);

const byKey = new Map(
  fuels.flatMap((fuel) => [fuel.id, fuel.name, ...fuel.aliases].map((name) => [nameKey(name), fuel] as const)),
);

const usual = ['propane', 'lump-charcoal', 'natural-gas'];

/** @throws AskError `unknown-name`, with the nearest ids. */
export function findFuel(text: string): Fuel {
  const found = byKey.get(nameKey(text));
  if (found) return found;
  const near = [...new Set(nearby(nameKey(text), [...byKey.keys()], 9).map((key) => byKey.get(key)!.id))].slice(0, 3);
  const offered = near.length > 0 ? near : usual;
  throw new AskError({
    code: 'unknown-name',
    what: `no fuel is called "${text.slice(0, 60)}"`,
    expected: `one of those listed, ${near.length > 0 ? 'perhaps' : 'such as'} ${offered.join(', ')}`,
    example: offered[0]!,
    option: 'fuel',
  });
}
