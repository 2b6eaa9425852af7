import { z } from 'zod';
import { choice, quantity, text } from '../options.ts';
import { told } from '../size/fields.ts';
import { wallOptions } from '../wall/options.ts';

const degrees = { metric: '°C', US: '°F' };
const percent = { metric: '%', US: '%' };
const minutes = { metric: 'min', US: 'min' };
const share = (label: string, min: number, max: number) =>
  quantity({ label, dimensions: ['fraction'], plainUnit: percent, min, max }).optional();
const { layers, bore, height, hot, shell, lid, floor, vent, finish, air, damp, ramp } = wallOptions.shape;

export const fuelOptions = z.strictObject({
  fuel: text({ label: 'fuel', most: 80 }).optional(),
  metal: text({ label: 'metal you will melt', most: 40 }).optional(),
  amount: quantity({
    label: 'how much metal',
    dimensions: ['mass'],
    plainUnit: { metric: 'kg', US: 'lb' },
    min: 1e-5,
    max: 1000,
  }).optional(),
  heat: quantity({
    label: 'heat that the metal takes',
    dimensions: ['energy'],
    plainUnit: { metric: 'MJ', US: 'Btu' },
    min: 1e3,
    max: 2e9,
  }).optional(),
  pour: quantity({
    label: 'pouring temperature',
    dimensions: ['temperature'],
    plainUnit: degrees,
    min: 400,
    max: 2000,
  }).optional(),
  crucible: told({ label: 'crucible' }).optional(),
  material: choice({ label: 'crucible of', choices: ['clay-graphite', 'steel'] }).optional(),
  melts: quantity({ label: 'melts in a row', dimensions: ['number'], min: 1, max: 50 }).optional(),
  pause: quantity({
    label: 'between two melts',
    dimensions: ['time'],
    plainUnit: minutes,
    min: 120,
    max: 14_400,
  }).optional(),
  rate: quantity({
    label: 'heat of the fuel at full blast',
    dimensions: ['power'],
    plainUnit: { metric: 'kW', US: 'Btu/h' },
    min: 200,
    max: 1e6,
  }).optional(),
  ramp,
  blast: quantity({
    label: 'air that the blower gives',
    dimensions: ['flow', 'mass-flow'],
    plainUnit: { metric: 'm3/h', US: 'cfm' },
    min: 1e-5,
    max: 3,
  }).optional(),
  tuyere: quantity({
    label: 'air or burner tube, inside',
    dimensions: ['length'],
    plainUnit: { metric: 'mm', US: 'in' },
    min: 0.005,
    max: 0.2,
  }).optional(),
  sized: choice({ label: 'fuel the furnace was sized for', choices: ['gas', 'charcoal'] }).optional(),
  excess: share('excess air', 0, 3),
  co: share('carbon that leaves as CO', 0, 0.95),
  flue: quantity({
    label: 'gas as it leaves, at full heat',
    dimensions: ['temperature'],
    plainUnit: degrees,
    min: 400,
    max: 2100,
  }).optional(),
  ash: share('ash, of the mass of the fuel', 0, 0.5),
  price: text({ label: 'price', most: 60 }).optional(),
  prices: text({ label: 'prices', most: 200 }).optional(),
  ashes: quantity({
    label: 'ash that the bed holds',
    dimensions: ['mass'],
    plainUnit: { metric: 'kg', US: 'lb' },
    min: 0.01,
    max: 100,
  }).optional(),
  place: choice({ label: 'place', choices: ['outdoors', 'indoors'] }).optional(),
  layers: layers.optional(),
  bore,
  height,
  hot,
  vent,
  lid,
  floor,
  shell,
  finish,
  air,
  damp,
});

export type FuelOptions = z.infer<typeof fuelOptions>;
