import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Where the program is started. */
export const root = fileURLToPath(new URL('../..', import.meta.url));

/** A folder with the bundle: then the tests start that instead of the source. */
export const bundle = process.env.TEEMER_BUNDLE;

/** The file that is started for one of `bot/`. */
export const programOf = (file: string): string =>
  bundle === undefined ? file : join(bundle, file.replace(/^bot\//, '').replace(/\.ts$/, '.js'));
