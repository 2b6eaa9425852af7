import { execFile } from 'node:child_process';
import { existsSync, globSync } from 'node:fs';
import { basename, join } from 'node:path';
import { promisify } from 'node:util';
import { describe, expect, it } from 'vitest';
import { type Stored, stored } from './stored.ts';

const HERE = import.meta.dirname;
const PYTHON = join(HERE, '.venv', 'bin', 'python');
const installed = existsSync(PYTHON);
const scripts = globSync('[!_]*.py', { cwd: HERE }).map((file) => basename(file, '.py'));

describe('stored reference values', () => {
  it.runIf(process.env.CI === 'true')('have their Python beside them in CI', () => {
    expect(installed, `${PYTHON} is missing: .ci/run makes it from requirements.txt`).toBe(true);
  });

  it('are of every script, and of no other', () => {
    const kept = globSync('*.json', { cwd: join(HERE, 'stored') }).map((file) => basename(file, '.json'));
    expect(kept.sort()).toEqual([...scripts].sort());
    expect(scripts.length).toBeGreaterThan(0);
  });

  it.runIf(installed).each(scripts)(
    '%s gives the same again',
    async (name) => {
      const { stdout } = await promisify(execFile)(PYTHON, ['-B', join(HERE, `${name}.py`)], { maxBuffer: 1 << 26 });
      const again: Stored<unknown, unknown> = JSON.parse(stdout);
      const kept = stored<unknown, unknown>(name);
      expect(again.libraries, 'run by other versions than those stored').toEqual(kept.libraries);
      expect(differences(kept, again, name)).toEqual([]);
    },
    120_000,
  );
});

const SAME = 1e-9;

/** Where two JSON values differ; numbers by more than a billionth of the larger. */
function differences(kept: unknown, again: unknown, path: string): string[] {
  if (typeof kept === 'number' && typeof again === 'number') {
    const same = Math.abs(kept - again) <= SAME * Math.max(Math.abs(kept), Math.abs(again));
    return same ? [] : [`${path}: stored ${kept}, now ${again}`];
  }
  if (isObject(kept) && isObject(again)) {
    const keys = new Set([...Object.keys(kept), ...Object.keys(again)]);
    return [...keys].flatMap((key) => differences(kept[key], again[key], `${path}.${key}`));
  }
  return kept === again ? [] : [`${path}: stored ${kept}, now ${again}`];
}

const isObject = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;
