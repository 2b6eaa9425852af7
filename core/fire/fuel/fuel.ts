import { AskError } from '../../ask-error.ts';
import { nameKey } from '../../materials/catalogue.ts';
import { nearest } from '../../materials/nearest.ts';
import { fuels as fuelData } from '../data/fuels.ts';
import type { Fuel } from './fuel-schema.ts';

export type { Fuel } from './fuel-schema.ts';

export const fuels: readonly Fuel[] = Object.freeze([...fuelData]);

const byKey = new Map(
  fuels.flatMap((fuel) => [fuel.id, fuel.name, ...fuel.aliases].map((name) => [nameKey(name), fuel] as const)),
);

/** @throws AskError `unknown-name`, with the nearest ids. */
export function findFuel(text: string): Fuel {
  const found = byKey.get(nameKey(text));
  if (found) return found;
  const near = [...new Set(nearest(nameKey(text), [...byKey.keys()], 9).map((key) => byKey.get(key)!.id))].slice(0, 3);
  throw new AskError({
    code: 'unknown-name',
    what: `no fuel is called "${text.slice(0, 60)}"`,
    expected: `one of those listed, perhaps ${near.join(', ')}`,
    example: near[0]!,
    option: 'fuel',
  });
}
