import type { Command } from './command.ts';

/** How questions are put where this one was asked: as a typed line, or in the fields of a platform. Help speaks so. */
export interface Manner {
  /** What help begins with. */
  readonly opening: string;
  command(name: string): string;
  /** A word that several commands begin with. */
  family(word: string): string;
  /** Undefined for an option that nobody is asked for there. */
  option(command: Command, name: string): string | undefined;
  /** A line as it would be put. */
  line(line: string): string;
  /** Whether somebody reads the ids of figures, which programs and `claim` go by. */
  readonly ids: boolean;
}

export const typedManner: Manner = {
  opening: 'Ask in your own units: a command, its subject, then options as name=value.',
  command: (name) => name,
  family: (word) => word,
  option: ({ subject }, name) => (name === subject ? name : `${name}=`),
  line: (line) => line,
  ids: true,
};
