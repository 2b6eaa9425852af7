import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { findFuel } from '../../core/fire/fuel/fuel.ts';
import { adiabaticEquilibrium } from '../../core/fire/gas/equilibrium.ts';
import { flame } from '../../core/fire/gas/flame.ts';
import { gases } from './flame-mixtures.ts';

const PYTHON = join(import.meta.dirname, '..', 'reference', '.venv', 'bin', 'python');
const SCRIPT = join(import.meta.dirname, 'flame_cantera.py');
const TIMED = join(import.meta.dirname, 'flame-timed.ts');

/** Aims: the solver at least ten times as quick as cantera from Python, and a whole flame well under a millisecond. */
const LEAST_RATIO = 10;
const whole_ms = { p50: 0.2 };

describe('an adiabatic flame', () => {
  it('of any of 48 mixtures, beside cantera from Python', { timeout: 120_000 }, () => {
    const ours_s = (run(process.execPath, [TIMED]) as { seconds: number }).seconds;
    const theirs = cantera();
    if (!theirs) {
      console.warn(
        `${(ours_s * 1e6).toFixed(1)} µs each. Not compared: no Python with cantera in test/reference/.venv`,
      );
      return;
    }
    const ratio = theirs.seconds / ours_s;
    const micro = (seconds: number): string => `${(seconds * 1e6).toFixed(1)} µs`;
    console.info(
      `${micro(ours_s)} each, cantera ${micro(theirs.seconds)} from complete combustion: ${ratio.toFixed(0)} times as quick; started at an equilibrium nearby it takes ${micro(theirs.seconds_from_guess)}; with graphite among the species, as ours, ${micro(theirs.seconds_with_graphite)}`,
    );
    gases.forEach((each, i) => {
      expect(Math.abs(adiabaticEquilibrium(each).T_K - theirs.temperatures_K[i]!)).toBeLessThan(0.1);
    });
    expect(ratio).toBeGreaterThan(LEAST_RATIO);
  });

  it('as a question asks for it: fuel, air, composition', async ({ bench }) => {
    const fuel = findFuel('charcoal');
    const { latency } = await bench('flame of charcoal', () => {
      flame({ fuel, excess_air: 0.2 });
    }).run();
    expect(latency.p50).toBeLessThan(whole_ms.p50);
  });
});

interface Timed {
  readonly seconds: number;
  readonly seconds_from_guess: number;
  readonly seconds_with_graphite: number;
  readonly temperatures_K: readonly number[];
}

/** Nothing where there is no Python; a Python that fails is a fault of the bench. */
const cantera = (): Timed | undefined =>
  existsSync(PYTHON) ? (run(PYTHON, ['-B', SCRIPT], JSON.stringify(gases)) as Timed) : undefined;

function run(program: string, typed: readonly string[], input = ''): unknown {
  const { status, stdout, stderr } = spawnSync(program, typed, { input, encoding: 'utf8', timeout: 120_000 });
  if (status !== 0) throw new Error(stderr);
  return JSON.parse(stdout);
}
