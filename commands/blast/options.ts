import { z } from 'zod';
import { choice, quantity, text } from '../options.ts';

const size = { metric: 'mm', US: 'in' };
const degrees = { metric: '°C', US: '°F' };
const percent = { metric: '%', US: '%' };
const length = (label: string, min: number, max: number) =>
  quantity({ label, dimensions: ['length'], plainUnit: size, min, max }).optional();
const share = (label: string, min: number, max: number) =>
  quantity({ label, dimensions: ['fraction'], plainUnit: percent, min, max }).optional();

export const blastOptions = z.strictObject({
  fuel: text({ label: 'fuel, or how much of it an hour', most: 60 }).optional(),
  rate: quantity({
    label: 'heat of the fuel burned',
    dimensions: ['power'],
    plainUnit: { metric: 'kW', US: 'Btu/h' },
    min: 200,
    max: 1e6,
  }).optional(),
  flow: quantity({
    label: 'air wanted',
    dimensions: ['flow', 'mass-flow'],
    plainUnit: { metric: 'm3/h', US: 'cfm' },
    min: 1e-5,
    max: 3,
  }).optional(),
  blower: text({ label: 'blower: a kind, or free flow and shut-off pressure', most: 60 }).optional(),
  speed: share("blower's speed, of full", 0.1, 1.5),
  pipe: text({ label: 'pipe from blower to furnace: bore x length, and what of', most: 60 }).optional(),
  bends: quantity({ label: 'bends in the pipe', dimensions: ['number'], min: 0, max: 20 }).optional(),
  tuyere: length('tuyere, inside', 0.005, 0.2),
  sized: choice({ label: 'fuel the furnace was sized for', choices: ['gas', 'charcoal'] }).optional(),
  bore: length('bore of the furnace', 0.05, 2),
  bed: length('fuel above the tuyere, deep', 0, 3),
  lump: length('lumps, across', 0.002, 0.2),
  co: share('carbon that leaves the furnace as CO', 0, 1),
  excess: share('excess air', 0, 3),
  back: quantity({
    label: 'pressure in the furnace',
    dimensions: ['pressure'],
    plainUnit: { metric: 'Pa', US: 'inWC' },
    min: 0,
    max: 20_000,
  }).optional(),
  altitude: quantity({
    label: 'altitude',
    dimensions: ['length'],
    plainUnit: { metric: 'm', US: 'ft' },
    usual: { metric: '300 m', US: '1000 ft' },
    min: -500,
    max: 5000,
  }).optional(),
  air: quantity({ label: 'air', dimensions: ['temperature'], plainUnit: degrees, min: 233, max: 322 }).optional(),
  humidity: share('relative humidity', 0, 1),
});

export type BlastOptions = z.infer<typeof blastOptions>;
