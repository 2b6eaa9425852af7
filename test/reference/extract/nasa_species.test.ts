import { execFile } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { expect, it } from 'vitest';

const HERE = import.meta.dirname;
const PYTHON = join(HERE, '..', '.venv', 'bin', 'python');
const KEPT = join(HERE, '..', '..', '..', 'core', 'fire', 'data', 'nasa-species.json');

it.runIf(existsSync(PYTHON))(
  'the gas data of core/fire are what the extraction writes',
  { timeout: 120_000 },
  async () => {
    const { stdout } = await promisify(execFile)(PYTHON, ['-B', join(HERE, 'nasa_species.py')], { maxBuffer: 1 << 24 });
    expect(stdout).toBe(readFileSync(KEPT, 'utf8'));
  },
);
