import { celsius, MEMORY } from '../../materials/data/make.ts';
import type { Schedule } from '../schedule.ts';
import { BOUND, hours, none, QUARTZ, rate, row, WATER, WORKING } from './rows.ts';

/** Rammed clay bodies, by thickness. Hot-face temperatures. */
export const rammed: readonly Schedule[] = [
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
