import { z } from 'zod';
import { AskError } from '../../core/ask-error.ts';
import { jetEdges } from '../../core/fire/data/jet-edges.ts';
import { regulators } from '../../core/fire/data/regulators.ts';
import { type Quantity, readQuantity } from '../../core/quantity/parse.ts';
import { fuelIn, metalIn } from '../flame/fuel.ts';
import { choice, type OptionMeta, quantity, reading, text } from '../options.ts';
import { refuseWarmBottle } from './warm-bottle.ts';

const degrees = { metric: '°C', US: '°F' };
const power: OptionMeta = { label: 'heat of the burner', kind: 'quantity', dimensions: ['power'] };
const powerUnit = { metric: 'kW', US: 'Btu/h' };
const pressure = (label: string, max: number) =>
  quantity({ label, dimensions: ['pressure'], plainUnit: { metric: 'kPa', US: 'psi' }, min: 0, max }).optional();

/** A heat rate; a fuel or a metal in its place is kept as it is, for a redirection. */
const rate = reading(({ text: typed, system }): Quantity => {
  try {
    const wanted = { dimensions: ['power'], plainUnit: powerUnit, label: power.label, min: 200, max: 1e6 } as const;
    return readQuantity(typed, { ...wanted, ...(system ? { system } : {}) });
  } catch (error) {
    // Words that stand where the heat belongs.
    if (/bottle|cylinder|tank/i.test(typed)) refuseWarmBottle(typed, { option: 'rate', example: '20 kW' });
    if (!(error instanceof AskError) || !(fuelIn(typed) || metalIn(typed))) throw error;
    return { dimension: 'power', si: Number.NaN, text: typed, system: undefined };
  }
}).meta({ ...power });

export const burnerOptions = z.strictObject({
  rate: rate.optional(),
  propane: quantity({
    label: 'propane burned',
    dimensions: ['mass-flow'],
    plainUnit: { metric: 'kg/h', US: 'lb/h' },
    min: 1e-5,
    max: 0.02,
  }).optional(),
  fuel: text({ label: 'fuel: propane', most: 60 }).optional(),
  jet: text({ label: 'jet: its bore or its drill', most: 20 }).optional(),
  edge: choice({
    label: 'how the jet is made',
    choices: Object.keys(jetEdges) as (keyof typeof jetEdges)[],
  }).optional(),
  pressure: pressure('pressure at the jet, behind the regulator', 700e3),
  tube: quantity({
    label: 'mixing tube, inside',
    dimensions: ['length'],
    plainUnit: { metric: 'mm', US: 'in' },
    min: 0.004,
    max: 0.2,
  }).optional(),
  tuyere: quantity({
    label: 'tube that the furnace has a hole for, inside',
    dimensions: ['length'],
    plainUnit: { metric: 'mm', US: 'in' },
    min: 0.005,
    max: 0.2,
  }).optional(),
  back: pressure('pressure in the furnace', 2000),
  regulator: choice({ label: 'regulator', choices: regulators.map(({ id }) => id) }).optional(),
  bottle: text({ label: 'bottle (what it holds full)', most: 60 }).optional(),
  bottles: quantity({ label: 'bottles side by side', dimensions: ['number'], min: 1, max: 12 }).optional(),
  fill: quantity({
    label: 'how full it is',
    dimensions: ['fraction'],
    plainUnit: { metric: '%', US: '%' },
    min: 0.05,
    max: 1,
  }).optional(),
  air: quantity({ label: 'air', dimensions: ['temperature'], plainUnit: degrees, min: 240, max: 322 }).optional(),
  altitude: quantity({
    label: 'altitude',
    dimensions: ['length'],
    plainUnit: { metric: 'm', US: 'ft' },
    usual: { metric: '300 m', US: '1000 ft' },
    min: -500,
    max: 4500,
  }).optional(),
  each: quantity({
    label: 'propane that one melt takes',
    dimensions: ['mass'],
    plainUnit: { metric: 'kg', US: 'lb' },
    min: 0.01,
    max: 100,
  }).optional(),
});

export type BurnerOptions = z.infer<typeof burnerOptions>;
