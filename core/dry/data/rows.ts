import { exactly, type Spread } from '../../materials/spread.ts';
import type { Row } from '../schedule.ts';

const HOUR_s = 3600;
const over = (spread: Spread, by: number): Spread => ({
  low: spread.low * by,
  typical: spread.typical * by,
  high: spread.high * by,
});
/** K an hour, slow to quick, as K/s. */
export const rate = (slow: number, usual: number, quick = usual): Spread =>
  over({ low: slow, typical: usual, high: quick }, 1 / HOUR_s);
export const hours = (short: number, usual: number, long: number): Spread =>
  over({ low: short, typical: usual, high: long }, HOUR_s);
export const none = exactly(0);

interface Told extends Omit<Row, 'hold_per_25mm_s'> {
  readonly hold_per_25mm_s?: Spread;
}
export const row = (told: Told): Row => told;

export const WATER =
  'Glass over the vent fogs; a wet shell below boiling heat is normal early. Never blow air into the fire.';
export const BOUND = 'Smell of earth and burned roots; steam holes breathe. A hiss or a tick: do not rise.';
export const QUARTZ = 'Red begins to show. Quartz jumps and the clay gives up its own water here: no hurry either way.';
export const HYDRATES = 'The bursting range: the cement gives up its water. Steam or a wet patch: hold until it stops.';
export const WORKING = 'Even colour, no dark patch. Rings harder when tapped after it is cold.';
