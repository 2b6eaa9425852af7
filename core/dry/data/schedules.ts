import { celsius, MEMORY, PRACTICE, published } from '../../materials/data/make.ts';
import { exactly, type Spread } from '../../materials/spread.ts';
import type { Row, Schedule } from '../schedule.ts';

const HOUR_s = 3600;
const over = (spread: Spread, by: number): Spread => ({
  low: spread.low * by,
  typical: spread.typical * by,
  high: spread.high * by,
});
/** K an hour, slow to quick, as K/s. */
const rate = (slow: number, usual: number, quick = usual): Spread =>
  over({ low: slow, typical: usual, high: quick }, 1 / HOUR_s);
const hours = (short: number, usual: number, long: number): Spread =>
  over({ low: short, typical: usual, high: long }, HOUR_s);
const none = exactly(0);

interface Told extends Omit<Row, 'hold_per_25mm_s'> {
  readonly hold_per_25mm_s?: Spread;
}
const row = (told: Told): Row => told;

const WATER = 'Glass over the vent fogs; a wet shell below boiling heat is normal early. Never blow air into the fire.';
const BOUND = 'Smell of earth and burned roots; steam holes breathe. A hiss or a tick: do not rise.';
const QUARTZ = 'Red begins to show. Quartz jumps and the clay gives up its own water here: no hurry either way.';
const HYDRATES = 'The bursting range: the cement gives up its water. Steam or a wet patch: hold until it stops.';
const WORKING = 'Even colour, no dark patch. Rings harder when tapped after it is cold.';

const BOUGHT = {
  ...published('castable-makers-dry-out'),
  note: 'its limits of thickness and its last row from memory',
};

/** Rammed clay bodies, by thickness. Hot-face temperatures. */
const rammed: readonly Schedule[] = [
  {
    id: 'rammed',
    up_to_m: 0.025,
    rows: [
      row({
        id: 'free-water',
        to_K: celsius(110),
        rate_K_per_s: rate(20, 25, 30),
        hold_s: hours(1, 2, 3),
        watch: WATER,
      }),
      row({
        id: 'bound-water',
        to_K: celsius(300),
        rate_K_per_s: rate(25, 30, 40),
        hold_s: hours(0.5, 1, 1.5),
        watch: BOUND,
      }),
      row({ id: 'quartz', to_K: celsius(650), rate_K_per_s: rate(30, 40, 50), hold_s: none, watch: QUARTZ }),
      row({
        id: 'working',
        to_K: celsius(1000),
        rate_K_per_s: rate(75, 100),
        hold_s: hours(0.5, 0.75, 1),
        watch: WORKING,
      }),
    ],
    ...MEMORY,
  },
  {
    id: 'rammed',
    up_to_m: 0.04,
    rows: [
      row({
        id: 'free-water',
        to_K: celsius(110),
        rate_K_per_s: rate(15, 20, 25),
        hold_s: hours(2, 3, 4),
        watch: WATER,
      }),
      row({
        id: 'bound-water',
        to_K: celsius(300),
        rate_K_per_s: rate(25, 27.5, 30),
        hold_s: hours(1, 1.5, 2),
        watch: BOUND,
      }),
      row({ id: 'quartz', to_K: celsius(650), rate_K_per_s: rate(30, 40, 50), hold_s: none, watch: QUARTZ }),
      row({
        id: 'working',
        to_K: celsius(1000),
        rate_K_per_s: rate(75, 100),
        hold_s: hours(0.5, 0.75, 1),
        watch: WORKING,
      }),
    ],
    ...MEMORY,
  },
  {
    id: 'rammed',
    up_to_m: 0.075,
    rows: [
      row({
        id: 'free-water',
        to_K: celsius(110),
        rate_K_per_s: rate(12, 15, 20),
        hold_s: hours(4, 5, 8),
        watch: WATER,
      }),
      row({
        id: 'bound-water',
        to_K: celsius(300),
        rate_K_per_s: rate(15, 20, 25),
        hold_s: hours(2, 3, 4),
        watch: BOUND,
      }),
      row({ id: 'quartz', to_K: celsius(650), rate_K_per_s: rate(20, 25, 30), hold_s: hours(1, 2, 3), watch: QUARTZ }),
      row({
        id: 'working',
        to_K: celsius(1000),
        rate_K_per_s: rate(50, 50, 75),
        hold_s: hours(0.5, 1, 1.5),
        watch: WORKING,
      }),
    ],
    ...MEMORY,
  },
  {
    id: 'rammed',
    up_to_m: 0.15,
    rows: [
      row({
        id: 'free-water',
        to_K: celsius(110),
        rate_K_per_s: rate(8, 10, 12),
        hold_s: none,
        hold_per_25mm_s: hours(2, 2.5, 3),
        watch: WATER,
      }),
      row({
        id: 'bound-water',
        to_K: celsius(300),
        rate_K_per_s: rate(10, 12, 15),
        hold_s: none,
        hold_per_25mm_s: hours(1, 1, 1.5),
        watch: BOUND,
      }),
      row({
        id: 'quartz',
        to_K: celsius(650),
        rate_K_per_s: rate(15, 20, 25),
        hold_s: none,
        hold_per_25mm_s: hours(0.5, 1, 1),
        watch: QUARTZ,
      }),
      row({
        id: 'working',
        to_K: celsius(1000),
        rate_K_per_s: rate(25, 37.5, 50),
        hold_s: hours(1, 1, 2),
        watch: WORKING,
      }),
    ],
    ...MEMORY,
  },
];

/** Castables. The limits of thickness are from memory; rates and holds agree with a maker's instruction. */
const castable: readonly Schedule[] = [
  {
    id: 'castable',
    up_to_m: 0.025,
    rows: [
      row({
        id: 'free-water',
        to_K: celsius(120),
        rate_K_per_s: rate(30, 40, 50),
        hold_s: hours(1, 1, 1.5),
        watch: WATER,
      }),
      row({
        id: 'hydrates',
        to_K: celsius(315),
        rate_K_per_s: rate(30, 40, 50),
        hold_s: hours(0.5, 0.5, 1),
        watch: HYDRATES,
      }),
      row({
        id: 'quartz',
        to_K: celsius(540),
        rate_K_per_s: rate(50, 50),
        hold_s: hours(0.5, 0.75, 1),
        watch: HYDRATES,
      }),
      row({
        id: 'working',
        to_K: celsius(1000),
        rate_K_per_s: rate(75, 100),
        hold_s: hours(0.5, 0.5, 1),
        watch: WORKING,
      }),
    ],
    ...BOUGHT,
  },
  {
    id: 'castable',
    up_to_m: 0.05,
    rows: [
      row({ id: 'free-water', to_K: celsius(120), rate_K_per_s: rate(25, 25), hold_s: hours(1, 1.5, 2), watch: WATER }),
      row({
        id: 'hydrates',
        to_K: celsius(315),
        rate_K_per_s: rate(25, 25),
        hold_s: hours(1, 1.5, 2),
        watch: HYDRATES,
      }),
      row({
        id: 'quartz',
        to_K: celsius(540),
        rate_K_per_s: rate(25, 27.5, 30),
        hold_s: hours(1, 1.5, 2),
        watch: HYDRATES,
      }),
      row({
        id: 'working',
        to_K: celsius(1000),
        rate_K_per_s: rate(50, 62.5, 75),
        hold_s: hours(0.5, 0.75, 1),
        watch: WORKING,
      }),
    ],
    ...BOUGHT,
  },
  {
    id: 'castable',
    up_to_m: 0.075,
    rows: [
      row({
        id: 'free-water',
        to_K: celsius(120),
        rate_K_per_s: rate(15, 17.5, 20),
        hold_s: hours(3, 3, 4),
        watch: WATER,
      }),
      row({
        id: 'hydrates',
        to_K: celsius(315),
        rate_K_per_s: rate(15, 20, 25),
        hold_s: hours(3, 3, 4),
        watch: HYDRATES,
      }),
      row({ id: 'quartz', to_K: celsius(540), rate_K_per_s: rate(25, 25), hold_s: hours(3, 3, 4), watch: HYDRATES }),
      row({ id: 'working', to_K: celsius(1000), rate_K_per_s: rate(50, 50), hold_s: hours(0.5, 1, 1), watch: WORKING }),
    ],
    ...BOUGHT,
  },
  {
    id: 'castable',
    up_to_m: 0.15,
    rows: [
      row({
        id: 'free-water',
        to_K: celsius(120),
        rate_K_per_s: rate(10, 12.5, 15),
        hold_s: none,
        hold_per_25mm_s: hours(1, 1, 1.5),
        watch: WATER,
      }),
      row({
        id: 'hydrates',
        to_K: celsius(315),
        rate_K_per_s: rate(15, 15),
        hold_s: none,
        hold_per_25mm_s: hours(1, 1, 1.5),
        watch: HYDRATES,
      }),
      row({
        id: 'quartz',
        to_K: celsius(540),
        rate_K_per_s: rate(20, 20),
        hold_s: none,
        hold_per_25mm_s: hours(1, 1, 1.5),
        watch: HYDRATES,
      }),
      row({
        id: 'working',
        to_K: celsius(1000),
        rate_K_per_s: rate(25, 37.5, 50),
        hold_s: hours(1, 1, 2),
        watch: WORKING,
      }),
    ],
    ...BOUGHT,
  },
];

const others: readonly Schedule[] = [
  {
    id: 'plastic',
    up_to_m: 0.15,
    rows: [
      row({
        id: 'free-water',
        to_K: celsius(107),
        rate_K_per_s: rate(14, 14, 20),
        hold_s: none,
        hold_per_25mm_s: hours(5, 6, 8),
        watch: WATER,
      }),
      row({
        id: 'bound-water',
        to_K: celsius(316),
        rate_K_per_s: rate(14, 14),
        hold_s: none,
        hold_per_25mm_s: hours(2.5, 3, 4),
        watch: BOUND,
      }),
      row({
        id: 'quartz',
        to_K: celsius(649),
        rate_K_per_s: rate(28, 28),
        hold_s: none,
        hold_per_25mm_s: hours(2.5, 3, 4),
        watch: QUARTZ,
      }),
      row({ id: 'working', to_K: celsius(1000), rate_K_per_s: rate(28, 28), hold_s: hours(0.5, 1, 2), watch: WORKING }),
    ],
    ...published('plastic-makers-dry-out'),
    note: 'how its holds grow with thickness is judged',
  },
  {
    id: 'brick',
    up_to_m: 0.15,
    rows: [
      row({ id: 'free-water', to_K: celsius(120), rate_K_per_s: rate(40, 50), hold_s: hours(1, 1, 2), watch: WATER }),
      row({
        id: 'quartz',
        to_K: celsius(600),
        rate_K_per_s: rate(75, 100),
        hold_s: none,
        watch:
          'Joints stay closed. Bricks that were soaked lose their faces near 400 °C: dry those by the scale first.',
      }),
      row({
        id: 'working',
        to_K: celsius(1000),
        rate_K_per_s: rate(100, 150, 200),
        hold_s: hours(0, 0.25, 0.5),
        watch: WORKING,
      }),
    ],
    ...PRACTICE,
  },
  {
    id: 'fibre',
    up_to_m: 0.15,
    rows: [
      row({
        id: 'binder',
        to_K: celsius(400),
        rate_K_per_s: rate(100, 150, 200),
        hold_s: none,
        watch: 'The binder smokes until it is burned away: outdoors, and not in the smoke.',
      }),
      row({
        id: 'working',
        to_K: celsius(1000),
        rate_K_per_s: rate(150, 175, 200),
        hold_s: hours(0, 0.25, 0.5),
        watch: WORKING,
      }),
    ],
    ...PRACTICE,
  },
  {
    id: 'coating',
    up_to_m: 0.003,
    rows: [
      row({
        id: 'free-water',
        to_K: celsius(200),
        rate_K_per_s: rate(75, 100),
        hold_s: hours(0.5, 0.5, 1),
        watch: 'A coat that lifts was too thick: scrape it off and brush on less.',
      }),
      row({
        id: 'working',
        to_K: celsius(1000),
        rate_K_per_s: rate(100, 150, 200),
        hold_s: hours(0, 0.25, 0.5),
        watch: WORKING,
      }),
    ],
    ...PRACTICE,
  },
];

export const schedules: readonly Schedule[] = Object.freeze([...rammed, ...castable, ...others]);
