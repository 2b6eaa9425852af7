import { type MeltInput, type MeltOutput, type MeltQuestion, meltModel } from '../../core/melt/melt.ts';
import type { SiUnit } from '../../core/quantity/figure.ts';
import type { Doubted } from '../command.ts';

/** What is drawn of one alloy, scrap or pot is its own; the fire round the pot is everyone's. */
export function meltDoubt(question: MeltQuestion): Doubted {
  const { alloy, form, pot } = question;
  const names: Readonly<Record<MeltInput, string>> = {
    'handbook heat': `what melting ${alloy.name} takes beyond its elements`,
    'pouring temperature': 'how near the pour is met',
    mass: 'the mass of metal',
    loss: `what is lost of ${alloy.name}, ${form.name}`,
    'liquid density': `how dense liquid ${alloy.name} is`,
    'working fill': 'how full the crucible is poured from',
    'density of the pot': `density of a ${pot.name} pot`,
    'heat capacity of the pot': `heat capacity of a ${pot.name} pot`,
    film: 'how fast the pot takes heat',
    fire: 'how hot the fire round the pot is',
  };
  const { inputs, model } = meltModel(question);
  const keys = Object.keys(names) as MeltInput[];
  return {
    inputs: Object.fromEntries(keys.map((key) => [names[key], inputs[key]])),
    units: Object.fromEntries(keys.map((key) => [names[key], units[key]])),
    samples: 1000,
    model: (draw) => {
      const found = model(Object.fromEntries(keys.map((key) => [key, draw[names[key]]!])) as Record<MeltInput, number>);
      return Object.fromEntries(Object.entries(figures).map(([output, id]) => [id, found[output as MeltOutput]]));
    },
  };
}

const figures: Readonly<Record<MeltOutput, string>> = {
  heat_J: 'melt.heat',
  pot_J: 'melt.pot_heat',
  lost_kg: 'melt.lost',
  left_kg: 'melt.left',
  holds_kg: 'melt.holds',
  time_s: 'melt.time',
  absorbed_W: 'melt.absorbs',
};

const units: Readonly<Record<MeltInput, SiUnit>> = {
  'handbook heat': 'J/kg',
  'pouring temperature': 'K',
  mass: 'kg',
  loss: '1',
  'liquid density': 'kg/m3',
  'working fill': '1',
  'density of the pot': 'kg/m3',
  'heat capacity of the pot': 'J/(kg K)',
  film: 'W/(m2 K)',
  fire: 'K',
};
