import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** One number (or several) a library outside the project gave, as the script beside wrote it. */
export interface StoredCase<Inputs, Expected> {
  readonly id: string;
  readonly inputs: Inputs;
  readonly expected: Expected;
  /** In the unit of `expected`. */
  readonly tolerance: number;
  /** Why the tolerance is what it is. */
  readonly why: string;
}

export interface Stored<Inputs, Expected> {
  readonly script: string;
  readonly libraries: Readonly<Record<string, string>>;
  readonly cases: readonly StoredCase<Inputs, Expected>[];
}

/** The kept answer of `test/reference/<name>.py`: no Python is needed to read it. The caller knows its shape. */
export function stored<Inputs, Expected = number>(name: string): Stored<Inputs, Expected> {
  return JSON.parse(readFileSync(join(import.meta.dirname, 'stored', `${name}.json`), 'utf8'));
}

/** The libraries and their versions, as the source of a row: `scipy 1.17.1`. */
export const librariesOf = ({ libraries }: Stored<unknown, unknown>): string =>
  Object.entries(libraries)
    .map(([name, version]) => `${name} ${version}`)
    .join(', ');
