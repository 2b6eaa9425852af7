import type { Versions } from '../commands/command.ts';
import about from '../package.json' with { type: 'json' };

/** For who wants to repeat an answer. */
export const versions: Versions = {
  program: `Teemer ${about.version}`,
  runtime: `Node.js ${process.version}`,
};
