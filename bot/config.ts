import { z } from 'zod';

/** Everything the program takes from its environment. None of it is needed. */
const environment = z.object({
  /** How much is logged, to standard error. */
  TEEMER_LOG: z.enum(['silent', 'error', 'warn', 'info', 'debug']).default('warn'),
  /** Columns of an answer; without it the terminal's own, at most 100. */
  TEEMER_WIDTH: z.coerce.number().int().min(30).max(300).optional(),
  /** Set to anything: no colour (no-color.org). */
  NO_COLOR: z.string().optional(),
});

export interface Config {
  readonly log: z.infer<typeof environment>['TEEMER_LOG'];
  readonly width?: number;
  readonly color: boolean;
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
  const { TEEMER_LOG: log, TEEMER_WIDTH: width, NO_COLOR } = read.data;
  return { log, color: NO_COLOR === undefined || NO_COLOR === '', ...(width === undefined ? {} : { width }) };
}
