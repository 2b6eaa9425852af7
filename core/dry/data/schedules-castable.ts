import { celsius, published } from '../../materials/data/make.ts';
import type { Schedule } from '../schedule.ts';
import { HYDRATES, hours, none, rate, row, WATER, WORKING } from './rows.ts';

const BOUGHT = {
  ...published('castable-makers-dry-out'),
  note: 'its limits of thickness and its last row from memory',
};

/** Castables. The limits of thickness are from memory; rates and holds agree with a maker's instruction. */
export const castable: readonly Schedule[] = [
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
