import { celsius, PRACTICE, published } from '../../materials/data/make.ts';
import type { Schedule } from '../schedule.ts';
import { BOUND, hours, none, QUARTZ, rate, row, WATER, WORKING } from './rows.ts';

export const others: readonly Schedule[] = [
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
