import { AskError } from '../ask-error.ts';
import { aggregates } from './data/aggregates.ts';
import { binders } from './data/binders.ts';
import { bricks } from './data/bricks.ts';
import { castables } from './data/castables.ts';
import { clays } from './data/clays.ts';
import { insulations } from './data/insulations.ts';
import { linings } from './data/linings.ts';
import { metalsAndMesh } from './data/metals-and-mesh.ts';
import { pours as pourData } from './data/pours.ts';
import { vessels as vesselData } from './data/vessels.ts';
import type { Material } from './material.ts';
import { nearby } from './nearest.ts';
import type { Pour } from './pour.ts';
import type { Vessel } from './vessel.ts';

interface Named {
  readonly id: string;
  readonly name: string;
  readonly aliases: readonly string[];
}

const spellings: Readonly<Record<string, string>> = {
  fiber: 'fibre',
  aluminum: 'aluminium',
  gray: 'grey',
  galvanized: 'galvanised',
  gallon: 'gal',
  liter: 'l',
  litre: 'l',
  pound: 'lb',
};

const singular = (word: string): string => (word.length > 3 ? word.replace(/(?<=[^su])s$/, '') : word);

/** What two ways of writing one name share: no case, hyphens, plural or side of the Atlantic. */
export function nameKey(text: string): string {
  const words = text
    .normalize('NFKC')
    .toLowerCase()
    .replace(/(\d)(?=[a-z])/g, '$1 ')
    .match(/\d+\.\d+|[\p{L}\p{N}]+/gu);
  return (words ?? [])
    .map(singular)
    .map((word) => spellings[word] ?? word)
    .join(' ');
}

/**
 * Looks a name up in a list, by id, name or alias; several words of one name are enough. Where none is near, `usual`
 * is offered: what most people mean by such a thing.
 */
export function finder<T extends Named>(
  what: string,
  list: readonly T[],
  usual: readonly T['id'][] = list.slice(0, 3).map(({ id }) => id),
): (text: string) => T {
  const byKey = new Map<string, T>();
  // Of two entries with one name the first has it.
  for (const entry of list.toReversed())
    for (const name of [entry.id, entry.name, ...entry.aliases]) byKey.set(nameKey(name), entry);
  const names = list.flatMap(({ id, name, aliases }) => [id, name, ...aliases]);
  /** Entries with one name that holds every word asked, in any order: "20 lb tank". One word alone says too little. */
  const entriesNaming = (key: string): T[] => {
    const asked = key.split(' ');
    if (asked.length < 2 || asked.length > 8) return [];
    const naming = [...byKey].filter(([name]) => asked.every((word) => name.split(' ').includes(word)));
    return [...new Set(naming.map(([, entry]) => entry))];
  };
  return (text) => {
    const key = nameKey(text);
    const found = byKey.get(key);
    if (found) return found;
    const partly = entriesNaming(key);
    if (partly.length === 1) return partly[0]!;
    const likely = partly.length > 0 ? partly : nearby(key, names, 9).map((name) => byKey.get(nameKey(name))!);
    const near = [...new Set(likely.map(({ id }) => id))].slice(0, 3);
    const offered = near.length > 0 ? near : usual;
    throw new AskError({
      code: 'unknown-name',
      what: `no ${what} is called "${text.slice(0, 60)}"`,
      expected: `one of those listed, ${near.length > 0 ? 'perhaps' : 'such as'} ${offered.join(', ')}`,
      example: offered[0]!,
    });
  };
}

export const materials: readonly Material[] = Object.freeze([
  ...linings,
  ...castables,
  ...bricks,
  ...insulations,
  ...clays,
  ...aggregates,
  ...binders,
  ...metalsAndMesh,
]);
export const vessels: readonly Vessel[] = Object.freeze([...vesselData]);
export const pours: readonly Pour[] = Object.freeze([...pourData]);

/** @throws AskError `unknown-name`, with the nearest ids. */
export const findMaterial = finder('material', materials, ['perlite', 'clay-sand-lining', 'dense-castable']);
/** @throws AskError `unknown-name`, with the nearest ids. */
export const findPour = finder('metal', pours, ['aluminium', 'bronze', 'brass']);
