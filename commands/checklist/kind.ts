import type { z } from 'zod';
import { AskError } from '../../core/ask-error.ts';
import type { BuildKind } from '../../core/build/stage.ts';
import type { Traits } from '../../core/build/traits.ts';
import { findMaterial, findPour } from '../../core/materials/catalogue.ts';
import type { Material } from '../../core/materials/material.ts';
import type { Ask } from '../command.ts';
import type { MixOptions } from '../mix/options.ts';
import { mixQuestion } from '../mix/question.ts';
import { readOptions } from '../read-options.ts';
import type { canOptions, meltOptions } from '../size/options.ts';
import { defaults, readMelt, readVessel, recipeNamed } from '../size/question.ts';
import type { WallOptions } from '../wall/options.ts';
import { type Reading, readMix } from './lining.ts';

type Question = Pick<Ask, 'command' | 'options'>;
type SizeOptions = Partial<z.infer<typeof canOptions> & z.infer<typeof meltOptions>>;

/** What a checklist adds to its question: nobody's size says castable, and no question says oil. */
export interface Chosen {
  readonly recipe?: string;
  readonly fuel?: Traits['fuel'];
}

/** Which questions are of a furnace to be built. */
export const buildable = ['size can', 'size crucible', 'size melt', 'mix', 'wall'] as const;

/** What a question builds, read from its options alone: nothing is computed. */
export function kindOf(question: Question, chosen: Chosen, { commands, units }: Reading): BuildKind {
  const command = commands.find(({ name }) => name === question.command);
  if (!command || !(buildable as readonly string[]).includes(command.name)) throw notBuilt(question.command);
  const { values } = readOptions(command, question.options, units);
  const found =
    command.name === 'mix'
      ? ofMix(values as MixOptions)
      : command.name === 'wall'
        ? ofWall(values as unknown as WallOptions)
        : ofSize(values as SizeOptions, { commands, units });
  const recipe = chosen.recipe ?? sizedRecipe(question);
  const lining = recipe === undefined ? undefined : liningOf(readMix({ amount: '10 L', recipe }, { commands, units }));
  const fuel = chosen.fuel === undefined ? {} : { fuel: chosen.fuel };
  return {
    traits: { ...found.traits, ...lining?.traits, ...fuel },
    facts: { ...found.facts, ...(lining ? { lining: lining.facts } : {}) },
  };
}

/** What fills the lining that a size names; nothing where it is the usual one. */
export const sizedRecipe = ({ command, options: { lining } }: Question): string | undefined =>
  command.startsWith('size ') && lining !== undefined ? recipeNamed(lining) : undefined;

const usual: Traits = { fuel: 'gas', lining: 'rammed', fill: 'loose', vessel: 'open', zinc: 'no', forms: 'mesh' };

function ofSize(options: SizeOptions, { commands, units }: Reading): BuildKind {
  const vessel = options.vessel ? readVessel(options.vessel.text, units).hazards : [];
  const fill = findMaterial(options.insulation ?? defaults.insulation);
  const metal = options.melt ? readMelt(options.melt.text, options.metal, { commands, units }).metal : options.metal;
  return {
    traits: {
      ...usual,
      fuel: options.fuel ?? 'gas',
      fill: fillOf(fill),
      vessel: vessel.includes('cylinder') ? 'cylinder' : 'open',
      zinc: vessel.includes('galvanised') ? 'yes' : 'no',
      forms: options.form ?? 'mesh',
    },
    facts: {
      vessel: vessel.flatMap((fact) => (fact === 'cylinder' ? ['cylinder-cutting'] : [fact])),
      lining: findMaterial(defaults.lining).hazards,
      fill: fill.hazards,
      metal: metalFacts(metal),
    },
  };
}

function ofMix(options: MixOptions): BuildKind {
  const { traits, facts } = liningOf(mixQuestion(options));
  return {
    traits: { ...usual, ...traits },
    facts: {
      vessel: [],
      lining: facts,
      fill: findMaterial(defaults.insulation).hazards,
      metal: metalFacts(options.metal),
    },
  };
}

function ofWall({ layers: { layers }, finish, metal }: WallOptions): BuildKind {
  const [face, ...behind] = layers.map(({ material }) => material);
  if (!face || !['lining', 'castable'].includes(face.kind)) throw otherFace(face?.name ?? 'nothing');
  const kinds = behind.map(fillOf);
  return {
    traits: {
      ...usual,
      lining: face.kind === 'castable' ? 'cast' : 'rammed',
      fill: kinds.includes('blanket') ? 'blanket' : kinds.includes('loose') ? 'loose' : 'none',
      zinc: /galvani|zinc/i.test(finish ?? '') ? 'yes' : 'no',
    },
    facts: {
      vessel: /galvani|zinc/i.test(finish ?? '') ? ['galvanised'] : [],
      lining: face.hazards,
      fill: behind.flatMap(({ hazards }) => hazards),
      metal: metalFacts(metal),
    },
  };
}

/** Loose fill settles when it is tapped; what does not is laid. */
const fillOf = ({ properties }: Material): Traits['fill'] => (properties.settling ? 'loose' : 'blanket');

/** The metal a size or a mix names. */
export function metalOf({ command, options }: Question, reading: Reading): string | undefined {
  return command === 'size melt' ? readMelt(options.melt ?? '', options.metal, reading).metal : options.metal;
}

/** What is filled in behind the lining of a size. */
export const insulationOf = ({ options }: Question): string =>
  findMaterial(options.insulation ?? defaults.insulation).id;

function liningOf({ recipe, ownRatio, estimate }: ReturnType<typeof mixQuestion>) {
  const cast = !ownRatio && recipe.method === 'cast';
  const facts = estimate.parts.flatMap(({ material }) => findMaterial(material).hazards);
  return { traits: { lining: cast ? ('cast' as const) : ('rammed' as const) }, facts: [...new Set(facts)] };
}

/** What is poured is no fact of the weeks before: only what its fumes and its scrap bring. */
const metalFacts = (metal: string | undefined): readonly string[] =>
  metal === undefined ? [] : findPour(metal).hazards.filter((fact) => fact !== 'molten-metal');

const notBuilt = (command: string) =>
  new AskError({
    code: 'impossible',
    what: `${command} builds nothing that has stages`,
    expected: `a question of a furnace: ${buildable.join(', ')}`,
    example: 'checklist start for=(size can 20 gal crucible=6 in x 8 in)',
    option: 'for',
  });

const otherFace = (face: string) =>
  new AskError({
    code: 'unfit',
    what: `the stages are those of a rammed or cast lining, and this wall begins with ${face}`,
    expected: 'a wall whose hot face is a clay mix or a castable',
    example: 'checklist start for=(wall 1 in castable; 3 in vermiculite)',
    option: 'for',
  });
