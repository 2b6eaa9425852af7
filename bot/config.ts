import { z } from 'zod';

/** Set to nothing is not set: what compose files make of a variable that is not there. */
const given = z.string().transform((text) => (text === '' ? undefined : text));

/** Everything the program takes from its environment. None of it is needed. */
const environment = z.object({
  /** How much is logged, to standard error. */
  TEEMER_LOG: z.enum(['silent', 'error', 'warn', 'info', 'debug']).default('warn'),
  /** Columns of an answer; without it the terminal's own, at most 100. */
  TEEMER_WIDTH: z.coerce.number().int().min(30).max(300).optional(),
  /** Set to anything: no colour (no-color.org). */
  NO_COLOR: z.string().optional(),
  /** A folder to remember things in; it is made if need be. Without it everything is forgotten at exit. */
  TEEMER_DATA: given.optional(),
  /** A PostgreSQL database to remember things in, instead of the folder: for more than one machine. */
  DATABASE_URL: given
    .refine((url) => url === undefined || /^postgres(ql)?:\/\/./.test(url), 'begins with postgres://')
    .optional(),
});

export interface Config {
  readonly log: z.infer<typeof environment>['TEEMER_LOG'];
  readonly width?: number;
  readonly color: boolean;
  readonly data?: string;
  readonly databaseUrl?: string;
}

/** A setting that cannot be used: every fault in one message. */
export class ConfigError extends Error {
  override readonly name = 'ConfigError';
}

export function readConfig(env: Readonly<Record<string, string | undefined>>): Config {
  const read = environment.safeParse(env);
  if (!read.success) {
    const faults = read.error.issues.map(({ path, message }) => `  ${path.join('.')}: ${message}`);
    throw new ConfigError(`These settings cannot be used:\n${faults.join('\n')}`);
  }
  const { TEEMER_LOG: log, TEEMER_WIDTH: width, NO_COLOR, TEEMER_DATA: data, DATABASE_URL: databaseUrl } = read.data;
  return {
    log,
    color: NO_COLOR === undefined || NO_COLOR === '',
    ...(width === undefined ? {} : { width }),
    ...(data === undefined ? {} : { data }),
    ...(databaseUrl === undefined ? {} : { databaseUrl }),
  };
}
