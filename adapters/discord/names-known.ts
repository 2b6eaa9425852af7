import type { Command } from '../../commands/command.ts';
import { firstAid } from '../../commands/emergency/first-aid.ts';
import { measuresOf } from '../../commands/settle/measures.ts';
import { shelf } from '../../commands/settle/shelf.ts';
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

/** The sides of an argument: those on the shelf, else a question of a command that can be weighed. */
const sideNames = ['one', 'other', 'third', 'fourth'];

const plainly = (name: string): Known => ({ shown: name, value: name, words: name.toLowerCase() });

/** `beside` is what stands in the other fields. */
export function namesFor(
  option: string,
  commands: readonly Command[],
  beside: Readonly<Record<string, string>> = {},
): readonly Known[] {
  const [word = ''] = (beside.one ?? '').trim().toLowerCase().split(/\s/, 1);
  if (sideNames.includes(option)) {
    const weighed = commands.filter(({ name, doubt }) => doubt && (option === 'one' || word === '' || name === word));
    const known = weighed.flatMap(({ examples }) => examples.map(({ line }) => plainly(line)));
    return option === 'one' ? [...shelf.map(argument), ...known] : known;
  }
  if (option === 'by') return measuresOf(word).map(plainly);
  if (option !== 'command') return lists[option] ?? [];
  return commands.map(({ name, summary }) => ({ shown: `${name}: ${summary}`, value: name, words: name }));
}

const argument = ({ name, aliases, question }: (typeof shelf)[number]): Known => ({
  shown: question,
  value: name,
  words: [name, ...aliases, question].join(' ').toLowerCase(),
});
