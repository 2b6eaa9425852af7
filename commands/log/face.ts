import { AskError } from '../../core/ask-error.ts';
import { recipes } from '../../core/mix/recipes.ts';
import { readQuantity } from '../../core/quantity/parse.ts';
import { sizingRules } from '../../core/shape/rules.ts';
import type { Build } from '../memory.ts';
import { defaults } from '../size/question.ts';
import { readLayers } from '../wall/layers.ts';

/** The hot face of a build, as its question names it; its answer need not be worked out for that. */
export interface Face {
  /** Id of the catalogue. */
  readonly material: string;
  readonly thickness_m?: number;
}

export function faceOf({ ask: { command, options } }: Pick<Build, 'ask'>): Face | undefined {
  const layers = options.layers;
  if (layers !== undefined)
    return readable(() => {
      const [hot] = readLayers(layers, 'metric');
      return hot && { material: hot.material.id, thickness_m: hot.thickness_m };
    });
  if (command.startsWith('size '))
    return options.wall === undefined
      ? { material: defaults.lining, thickness_m: sizingRules.wall_m.typical }
      : { material: defaults.lining, ...lengthIn(options.wall) };
  if (command !== 'mix' || options.ratio !== undefined) return undefined;
  const wanted = (options.recipe ?? 'clay-sand').toLowerCase();
  const recipe = recipes.find(
    ({ id, name, aliases }) =>
      [id, name.toLowerCase()].includes(wanted) || (aliases as readonly string[]).includes(wanted),
  );
  return recipe && { material: recipe.lining };
}

const lengthIn = (typed: string): Pick<Face, 'thickness_m'> => {
  const thickness_m = readable(() => readQuantity(typed, { dimensions: ['length'] }).si);
  return thickness_m === undefined ? {} : { thickness_m };
};

/** A plain number may be of either system: then it is not known here. */
function readable<T>(read: () => T): T | undefined {
  try {
    return read();
  } catch (error) {
    if (error instanceof AskError) return undefined;
    throw error;
  }
}
