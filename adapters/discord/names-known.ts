import type { Command } from '../../commands/command.ts';
import { firstAid } from '../../commands/emergency/first-aid.ts';
import { blowers } from '../../core/fire/data/blowers.ts';
import { fuels } from '../../core/fire/fuel/fuel.ts';
import { finishes } from '../../core/heat/finish.ts';
import { materials, pours, vessels } from '../../core/materials/catalogue.ts';
import { recipes } from '../../core/mix/recipes.ts';

/** Something that has a name: what is written where it is chosen, and all it is found by. */
export interface Known {
  readonly shown: string;
  readonly value: string;
  readonly words: string;
}

interface Entry {
  readonly id: string;
  readonly name?: string;
  readonly aliases?: readonly string[];
}

const known = ({ id, name = id, aliases = [] }: Entry): Known => {
  const value = id.replaceAll('-', ' ');
  return { shown: name, value, words: [value, name, ...aliases].join(' ').toLowerCase() };
};

const linings = ['lining', 'castable', 'brick', 'insulation', 'aggregate'];
const ofMaterials = (kinds?: readonly string[]) =>
  materials.filter(({ kind }) => kinds === undefined || kinds.includes(kind)).map(known);

/** What may be named in an option, by the option's name: the same name means the same in every command. */
const lists: Readonly<Record<string, readonly Known[]>> = {
  metal: pours.map(known),
  melt: pours.map(known),
  vessel: vessels.map(known),
  fuel: fuels.map(known),
  finish: finishes.map(known),
  surface: finishes.map(known),
  blower: blowers.map(known),
  recipe: recipes.map(known),
  material: ofMaterials(),
  item: [...ofMaterials(), ...fuels.map(known)],
  insulation: ofMaterials(['insulation', 'aggregate', 'brick']),
  layers: ofMaterials(linings),
  lid: ofMaterials(linings),
  floor: ofMaterials(linings),
  have: ofMaterials(['clay', 'aggregate', 'binder', 'castable']),
  what: firstAid.map(({ name }) => ({ shown: name, value: name, words: name })),
};

export function namesFor(option: string, commands: readonly Command[]): readonly Known[] {
  if (option !== 'command') return lists[option] ?? [];
  return commands.map(({ name, summary }) => ({ shown: `${name}: ${summary}`, value: name, words: name }));
}
