import { AskError } from '../../core/ask-error.ts';
import { recipes } from '../../core/mix/recipes.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import type { Command } from '../command.ts';
import { mix } from '../mix/mix.ts';
import type { MixOptions } from '../mix/options.ts';
import { mixQuestion } from '../mix/question.ts';
import { readOptions } from '../read-options.ts';

export interface Reading {
  readonly commands: readonly Command[];
  readonly units: UnitSystem;
}

/** A mix as `mix` reads it. */
export const readMix = (options: Readonly<Record<string, string>>, { commands, units }: Reading) => {
  const command = commands.find(({ name }) => name === mix.name);
  if (!command) throw new Error('there is no mix among the commands');
  return mixQuestion(readOptions(command, options, units).values as MixOptions);
};

/** The mix of a build; one that does not stand its metal is refused with a recipe that does. `again` starts its list. */
export function readLining(options: Readonly<Record<string, string>>, reading: Reading, again: string) {
  try {
    return readMix(options, reading);
  } catch (error) {
    if (!(error instanceof AskError)) throw error;
    const stands = recipes.find(({ id, role }) => role === 'hot face' && reads({ ...options, recipe: id }, reading));
    const { code, what, expected } = error;
    throw new AskError({
      code,
      what: `no lining for this build: ${what}`,
      expected,
      example: stands ? `${again} recipe=${stands.id}` : 'mix 30 L recipe=castable',
    });
  }
}

function reads({ ratio: _, ...options }: Readonly<Record<string, string>>, reading: Reading): boolean {
  try {
    readMix(options, reading);
    return true;
  } catch (error) {
    if (error instanceof AskError) return false;
    throw error;
  }
}
