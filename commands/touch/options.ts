import { z } from 'zod';
import { quantity, text } from '../options.ts';

const degrees = { metric: '°C', US: '°F' };

/** Below freezing it is cold that hurts; above this nothing here is touched. */
const [coldest_K, hottest_K] = [273.15, 1800];

export const touchOptions = z.strictObject({
  temperature: quantity({
    label: 'the surface',
    dimensions: ['temperature'],
    plainUnit: degrees,
    min: coldest_K,
    max: hottest_K,
  }).optional(),
  reads: quantity({
    label: 'what an infrared thermometer reads',
    dimensions: ['temperature'],
    plainUnit: degrees,
    min: coldest_K - 50,
    max: hottest_K,
  }).optional(),
  set: quantity({
    label: 'emissivity the thermometer is set to',
    dimensions: ['number', 'fraction'],
    min: 0.1,
    max: 1,
  }).optional(),
  surface: text({ label: 'surface or finish', most: 60 }).optional(),
  time: quantity({
    label: 'how long it is touched',
    dimensions: ['time'],
    plainUnit: { metric: 's', US: 's' },
    min: 0.1,
    max: 8 * 3600,
  }).optional(),
  air: quantity({
    label: 'air and surroundings',
    dimensions: ['temperature'],
    plainUnit: degrees,
    min: 223.15,
    max: 343.15,
  }).optional(),
});

export type TouchOptions = z.infer<typeof touchOptions>;
