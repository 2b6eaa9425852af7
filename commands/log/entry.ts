import { AskError } from '../../core/ask-error.ts';
import type { Burn } from '../../core/build/log-burn.ts';
import { findFuel } from '../../core/fire/fuel/fuel.ts';
import { findMaterial, findPour } from '../../core/materials/catalogue.ts';
import type { LogEntry } from '../memory-weeks.ts';

/** Kinds that are written here. Others may stand beside them. */
export const kinds = ['burn', 'drying', 'weighing', 'shell', 'bucket'] as const;
export type Kind = (typeof kinds)[number];

export interface LoggedBurn extends Burn {
  readonly hot_K?: number;
  /** When the fire went out. */
  readonly shell_K?: number;
  readonly worn_m?: number;
}

/** A reading of the shell; times in s since the fire was lit. */
export interface LoggedShell {
  readonly shell_K: number;
  readonly after_s: number;
  /** The fire went out then; it still burned where not said. */
  readonly out_s?: number;
  readonly hot_K?: number;
  readonly air_K?: number;
}

export interface LoggedBucket {
  /** Id of the catalogue. */
  readonly material: string;
  readonly how: 'rammed' | 'loose';
  readonly dry_density_kg_m3: number;
}

/** What can be a number of that name at all: what was written by an older version is not trusted to be. */
const bounds = {
  fuel_kg: [1e-3, 2000],
  melted_kg: [1e-5, 2000],
  melts_count: [1, 50],
  mass_kg: [1e-3, 5000],
  volume_m3: [1e-5, 1],
  damp: [0, 1],
  time_s: [1, 200_000],
  after_s: [0, 400_000],
  out_s: [1, 200_000],
  pour_K: [300, 2100],
  hot_K: [350, 2200],
  shell_K: [230, 1000],
  air_K: [220, 350],
  worn_m: [0, 0.5],
} as const;

const number = ({ data }: LogEntry, key: keyof typeof bounds): number | undefined => {
  const value = data[key];
  const [least, most] = bounds[key];
  return typeof value === 'number' && value >= least && value <= most ? value : undefined;
};
const word = ({ data }: LogEntry, key: string): string => String(data[key] ?? '');
const set = <K extends keyof typeof bounds>(key: K, value: number | undefined) =>
  (value === undefined ? {} : { [key]: value }) as { [key in K]?: number };

/** What an older version wrote may name a fuel or a metal that is gone: then it is nothing here. */
function known<T>(read: () => T): T | undefined {
  try {
    return read();
  } catch (error) {
    if (error instanceof AskError) return undefined;
    throw error;
  }
}

export function burnIn(entry: LogEntry): LoggedBurn | undefined {
  const fuel_kg = number(entry, 'fuel_kg');
  const fuel = known(() => findFuel(word(entry, 'fuel')));
  if (entry.kind !== 'burn' || !fuel || fuel_kg === undefined) return undefined;
  const mass_kg = number(entry, 'melted_kg');
  const metal = mass_kg === undefined ? undefined : known(() => findPour(word(entry, 'metal')));
  return {
    fuel,
    fuel_kg,
    ...(metal && mass_kg !== undefined
      ? { melted: { metal, mass_kg, ...set('pour_K', number(entry, 'pour_K')) } }
      : {}),
    melts: number(entry, 'melts_count') ?? 1,
    ...set('time_s', number(entry, 'time_s')),
    ...set('hot_K', number(entry, 'hot_K')),
    ...set('shell_K', number(entry, 'shell_K')),
    ...set('worn_m', number(entry, 'worn_m')),
  };
}

/** Of its own, or of a burn that was timed: then of the moment its fire went out. */
export function shellIn(entry: LogEntry): LoggedShell | undefined {
  const shell_K = number(entry, 'shell_K');
  const after_s = number(entry, entry.kind === 'burn' ? 'time_s' : 'after_s');
  if (!['burn', 'shell'].includes(entry.kind) || shell_K === undefined || after_s === undefined) return undefined;
  return {
    shell_K,
    after_s,
    ...set('out_s', number(entry, 'out_s')),
    ...set('hot_K', number(entry, 'hot_K')),
    ...set('air_K', number(entry, 'air_K')),
  };
}

export function bucketIn(entry: LogEntry): LoggedBucket | undefined {
  const [volume_m3, mass_kg, damp = 0] = [number(entry, 'volume_m3'), number(entry, 'mass_kg'), number(entry, 'damp')];
  const material = known(() => findMaterial(word(entry, 'material')));
  if (entry.kind !== 'bucket' || !material || volume_m3 === undefined || mass_kg === undefined) return undefined;
  return {
    material: material.id,
    how: word(entry, 'how') === 'loose' ? 'loose' : 'rammed',
    dry_density_kg_m3: mass_kg / volume_m3 / (1 + damp),
  };
}

/** What the lining weighed, without what it stood in. */
export const weighingIn = (entry: LogEntry): number | undefined =>
  entry.kind === 'weighing' ? number(entry, 'mass_kg') : undefined;
