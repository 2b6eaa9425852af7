import { z } from 'zod';
import { factsIn } from '../../core/hazard/words.ts';
import { fuelText } from '../flame/fuel.ts';
import { choice, type OptionMeta, quantity, readChoice, reading, text } from '../options.ts';
import { told } from '../size/fields.ts';

const degrees = { metric: '°C', US: '°F' };
const size = { metric: 'cm', US: 'in' };
const length = (label: string, min: number, max: number, plainUnit = size) =>
  quantity({ label, dimensions: ['length'], plainUnit, min, max }).optional();

/** Of the furnace: nothing here needs it, the commands that follow do. */
const furnace = {
  layers: text({ label: "furnace's layers, hot side first", most: 200 }).optional(),
  bore: length('bore', 0.02, 3),
  height: length('heated height', 0.02, 3),
  vent: length('vent in the lid', 0, 1),
  finish: text({ label: "shell's finish", most: 40 }).optional(),
  shell: length("shell's sheet", 0, 0.02, { metric: 'mm', US: 'in' }),
  lid: text({ label: 'lid, as layers', most: 200 }).optional(),
  floor: text({ label: 'floor, as layers', most: 200 }).optional(),
  fuel: fuelText('fuel it is fired with').optional(),
  sized: choice({ label: 'fuel the furnace was sized for', choices: ['gas', 'charcoal'] }).optional(),
  rate: quantity({
    label: 'firing rate',
    dimensions: ['power'],
    plainUnit: { metric: 'kW', US: 'Btu/h' },
    min: 200,
    max: 1e6,
  }).optional(),
  tuyere: length('air or burner tube, inside', 0.005, 0.2),
};

export const furnaceOptions = Object.keys(furnace) as readonly (keyof typeof furnace)[];

const places = ['outdoors', 'indoors'] as const;
const placeMeta: OptionMeta = { label: 'place', kind: 'choice', choices: places };
/** A garage with its door open is still a room: the words that raise the caution decide here too. */
const readPlace = (said: string): (typeof places)[number] =>
  factsIn(said).includes('indoors')
    ? 'indoors'
    : /\b(?:outside|yard|garden|driveway|field|open air)\b/i.test(said)
      ? 'outdoors'
      : readChoice(said, { label: 'place', choices: places });

export const meltOptions = z.strictObject({
  melt: told({ label: 'how much of which metal' }),
  metal: text({ label: 'metal, where the amount stands alone', most: 40 }).optional(),
  scrap: text({ label: 'form of the scrap: heavy, castings, sheet, cans, swarf', most: 40 }).optional(),
  section: choice({ label: 'sections to fill', choices: ['thin', 'medium', 'heavy'] }).optional(),
  crucible: told({ label: 'crucible' }).optional(),
  material: choice({ label: 'crucible of', choices: ['clay-graphite', 'steel'] }).optional(),
  cover: choice({ label: 'melt covered with charcoal, glass or flux', choices: ['yes', 'no'] }).optional(),
  place: reading(({ text: said }) => readPlace(said))
    .meta({ ...placeMeta })
    .optional(),
  from: quantity({
    label: 'metal as charged',
    dimensions: ['temperature'],
    plainUnit: degrees,
    min: 220,
    max: 1500,
  }).optional(),
  pour: quantity({
    label: 'pouring temperature',
    dimensions: ['temperature'],
    plainUnit: degrees,
    min: 400,
    max: 2100,
  }).optional(),
  ...furnace,
});

export type MeltOptions = z.infer<typeof meltOptions>;
