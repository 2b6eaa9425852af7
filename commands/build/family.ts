import { z } from 'zod';
import type { Ask, Command } from '../command.ts';
import type { Build } from '../memory.ts';
import { metaOf, text } from '../options.ts';
import { lineOf } from '../source.ts';

export const family = 'Questions kept under a name, with every revision: for=<name> takes one up.';

/** What every command of the family is: it works on memory alone and leaves the last question as it was. */
export const keeping = { hazards: [], figures: {}, passing: true, family } as const;

export const nameOption = text({ label: 'name of a build', most: 80 });

/** The option and the subject of a command that takes one build. */
export const oneBuild = { options: z.strictObject({ name: nameOption }), subject: 'name' } as const;

export const dayOf = (when: Date): string => when.toISOString().slice(0, 10);

/** `wall: 2 in → 3 in`, one a changed option, with the labels of the command's own form. */
export function changesBetween(
  before: Pick<Ask, 'command' | 'options'>,
  after: Pick<Ask, 'command' | 'options'>,
  commands: readonly Command[],
): readonly string[] {
  if (before.command !== after.command) return [`${lineOf(before, commands)} → ${lineOf(after, commands)}`];
  const shape = commands.find(({ name }) => name === after.command)?.options.shape ?? {};
  const label = (name: string) => (shape[name] ? metaOf(shape[name] as never).label : name);
  const names = [...new Set([...Object.keys(before.options), ...Object.keys(after.options)])];
  return names
    .filter((name) => before.options[name] !== after.options[name])
    .map((name) => `${label(name)}: ${before.options[name] ?? 'not given'} → ${after.options[name] ?? 'not given'}`);
}

/** The revision before this one, where there is one. */
export const before = (build: Build, revisions: readonly Build[]): Build | undefined =>
  revisions.filter(({ revision }) => revision < build.revision).toSorted((a, b) => b.revision - a.revision)[0];
