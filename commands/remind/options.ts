import { z } from 'zod';
import { text } from '../options.ts';

export const remindOptions = z.strictObject({
  what: text({ label: 'when and what', most: 400 }).optional(),
  when: text({ label: 'when, if not beside what', most: 60 }).optional(),
  for: text({ label: 'a plan with its steps: last, a build of yours, or a (line)', most: 900 }).optional(),
  at: text({ label: 'hour of a plan’s steps', most: 20 }).optional(),
  zone: text({ label: 'your time zone, a city', most: 60 }).optional(),
});
export type RemindOptions = z.infer<typeof remindOptions>;

/** As it would be typed. */
export const lineAs = ({ what = '', when, at, for: plan }: RemindOptions): string =>
  [
    'remind',
    ...(what === '' ? [] : [what]),
    ...Object.entries({ when, for: plan, at }).flatMap(([name, value]) =>
      value === undefined ? [] : [`${name}=${value}`],
    ),
  ].join(' ');
