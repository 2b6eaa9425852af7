import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Where the program is started. */
export const root = fileURLToPath(new URL('../..', import.meta.url));

/** A folder with the bundle: then the tests start that instead of the source. */
export const bundle = process.env.TEEMER_BUNDLE;

/** The file that is started for one of `bot/`. */
export const programOf = (file: string): string =>
  bundle === undefined ? file : join(bundle, file.replace(/^bot\//, '').replace(/\.ts$/, '.js'));

/** What `npm start` gives Node: the program is tried and measured as it is started. */
export const startFlags: readonly string[] = (
  JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { scripts: { start: string } }
).scripts.start
  .split(' ')
  .filter((word) => word.startsWith('--'));
