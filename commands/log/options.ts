import { z } from 'zod';
import { choice, quantity, text } from '../options.ts';
import { told } from '../size/fields.ts';
import { buildOption, onOption } from './family.ts';

const degrees = { metric: '°C', US: '°F' };
const masses = { metric: 'kg', US: 'lb' };
const minutes = { metric: 'min', US: 'min' };
const common = { build: buildOption, on: onOption };
const temperature = (label: string, min: number, max: number) =>
  quantity({ label, dimensions: ['temperature'], plainUnit: degrees, min, max });
const shell = temperature('shell as it was read', 253, 900);
const bore = temperature('bore, as it was read', 400, 2100).optional();
const time = (label: string, min: number) =>
  quantity({ label, dimensions: ['time'], plainUnit: minutes, min, max: 172_800 });
const mass = (label: string, min: number, max: number) =>
  quantity({ label, dimensions: ['mass'], plainUnit: masses, min, max });

export const burnOptions = z.strictObject({
  fuel: told({ label: 'fuel burned' }),
  melted: told({ label: 'metal melted' }).optional(),
  time: time('from lighting to fire out', 60).optional(),
  melts: quantity({ label: 'crucibles one after the other', dimensions: ['number'], min: 1, max: 50 }).optional(),
  pour: temperature('metal as it was poured', 400, 2000).optional(),
  hot: bore,
  shell: shell.optional(),
  worn: quantity({
    label: 'hot face lost since new, at its thinnest',
    dimensions: ['length'],
    plainUnit: { metric: 'mm', US: 'in' },
    min: 0,
    max: 0.3,
  }).optional(),
  ...common,
});

export const shellOptions = z.strictObject({
  shell,
  at: time('read so long after lighting', 0),
  out: time('fire out so long after lighting', 60).optional(),
  hot: bore,
  air: temperature('air', 233, 333).optional(),
  ...common,
});

export const bucketOptions = z.strictObject({
  volume: quantity({
    label: 'filled volume',
    dimensions: ['volume'],
    plainUnit: { metric: 'L', US: 'gal' },
    min: 1e-4,
    max: 0.5,
  }),
  mass: mass('what was in it', 0.005, 1500),
  of: text({ label: 'of what', most: 60 }).optional(),
  how: choice({ label: 'filled how', choices: ['rammed', 'loose'] }).optional(),
  damp: quantity({
    label: 'water in it, of its dry weight',
    dimensions: ['fraction'],
    plainUnit: { metric: '%', US: '%' },
    min: 0,
    max: 1,
  }).optional(),
  empty: mass('the empty bucket', 0, 100).optional(),
  ...common,
});

export const weighedOptions = z.strictObject({
  mass: mass('what the scale showed', 0.05, 5000),
  empty: mass('of that, what is no lining', 0, 5000).optional(),
  ...common,
});

export const dryingOptions = z.strictObject({
  weighed: text({ label: 'weighings, oldest first', most: 300 }).optional(),
  rammed: text({ label: 'day it was rammed or cast', most: 20 }).optional(),
  ...common,
});

export type BurnOptions = z.infer<typeof burnOptions>;
export type ShellOptions = z.infer<typeof shellOptions>;
export type BucketOptions = z.infer<typeof bucketOptions>;
