/**
 * Our side of flame_cantera.py, in a process of its own as it is: the test runner makes every use of an import slower
 * than it is in the program. Prints seconds a mixture, the median of many rounds, as JSON.
 */
import { adiabaticEquilibrium } from '../../core/fire/gas/equilibrium.ts';
import { gases } from './flame-mixtures.ts';

// In some runs V8 has not settled after 2,000: those are half as quick again as what it settles at.
const rounds = 8000;
const times = Array.from({ length: rounds }, () => {
  const begin = performance.now();
  for (const each of gases) adiabaticEquilibrium(each);
  return performance.now() - begin;
});
// The first half only warms up.
const warm = times.slice(rounds / 2).sort((a, b) => a - b);
process.stdout.write(JSON.stringify({ seconds: warm[warm.length >> 1]! / 1000 / gases.length }));
