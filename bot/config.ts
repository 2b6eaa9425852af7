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
  /** The bot's token: with it the program answers on Discord instead of opening a prompt. */
  DISCORD_TOKEN: given.optional(),
  /** The application commands are registered for; the token's own without it. */
  DISCORD_APPLICATION_ID: given.refine((id) => id === undefined || /^\d{15,21}$/.test(id), 'is a number').optional(),
  /** Another address of the platform's REST, for tests. */
  DISCORD_API: given.optional(),
  /** How many shards: `auto`, a number, or those of this process: `0,1/4`, `0-3/8`. */
  TEEMER_SHARDS: z.string().transform(readShards).optional(),
  /** The address of a homeserver: with it the program answers on Matrix. */
  MATRIX_HOMESERVER: given
    .refine((url) => url === undefined || /^https?:\/\/./.test(url), 'begins with https://')
    .optional(),
  /** The bot's account there: `@teemer:example.org`, or its first part. */
  MATRIX_USER: given.optional(),
  MATRIX_PASSWORD: given.optional(),
  /** Instead of user and password: the access token of a login. */
  MATRIX_TOKEN: given.optional(),
  /** Who may invite the bot: people, rooms and servers, with commas between; without it everybody. */
  MATRIX_ALLOW: given.optional(),
  /** What a question begins with in a room of several. */
  TEEMER_PREFIX: given.pipe(z.string().max(30).regex(/^\S+$/, 'is one word').optional()).optional(),
  /** Where health and metrics are served; without it they are not. */
  TEEMER_PORT: given
    .transform((text) => (text === undefined ? undefined : Number(text)))
    .pipe(z.number().int().min(0).max(65535).optional())
    .optional(),
});

function readShards(text: string, context: z.RefinementCtx): Shards | undefined {
  if (text === '' || text === 'auto') return undefined;
  if (/^[1-9]\d{0,4}$/.test(text)) return Number(text);
  const [, from = '', to, list, of = ''] = /^(?:(\d+)-(\d+)|([\d,]+))\/(\d+)$/.exec(text) ?? [];
  const ids =
    to === undefined
      ? (list ?? '').split(',').filter(Boolean).map(Number)
      : Array.from({ length: Math.max(0, Number(to) - Number(from) + 1) }, (_, at) => Number(from) + at);
  if (ids.length > 0 && ids.every((id) => id < Number(of))) return { ids, of: Number(of) };
  context.addIssue({ code: 'custom', message: 'is auto, a number, or shards of a number: 0,1/4 or 0-3/8' });
  return z.NEVER;
}

/** Shards of one process, or some of those that several processes share. */
export type Shards = number | { readonly ids: readonly number[]; readonly of: number };

export interface DiscordConfig {
  readonly token: string;
  readonly applicationId?: string;
  readonly api?: string;
  readonly shards?: Shards;
}

export interface MatrixConfig {
  readonly homeserver: string;
  readonly user?: string;
  readonly password?: string;
  readonly token?: string;
  /** Who may invite: ids of people and rooms, names of servers, `*`. */
  readonly allow: readonly string[];
  /** What a question begins with in a room of several. */
  readonly prefix: string;
}

export interface Config {
  readonly discord?: DiscordConfig;
  readonly matrix?: MatrixConfig;
  /** Of health and metrics. */
  readonly port?: number;
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
  const { DISCORD_TOKEN: token, TEEMER_PORT: port } = read.data;
  const { DISCORD_APPLICATION_ID: applicationId, DISCORD_API: api, TEEMER_SHARDS: shards } = read.data;
  const discord = token === undefined ? undefined : { token, ...said({ applicationId, api, shards }) };
  const matrix = matrixIn(read.data);
  const { TEEMER_LOG: log, TEEMER_WIDTH: width, NO_COLOR, TEEMER_DATA: data, DATABASE_URL: databaseUrl } = read.data;
  return {
    log,
    color: NO_COLOR === undefined || NO_COLOR === '',
    ...said({ width, data, databaseUrl, discord, matrix, port }),
  };
}

function matrixIn(read: z.infer<typeof environment>): MatrixConfig | undefined {
  const { MATRIX_HOMESERVER: homeserver, MATRIX_USER: user, MATRIX_PASSWORD: password, MATRIX_TOKEN: token } = read;
  if (homeserver === undefined) return undefined;
  if (token === undefined && (user === undefined || password === undefined)) {
    throw new ConfigError('MATRIX_HOMESERVER needs MATRIX_USER and MATRIX_PASSWORD beside it, or MATRIX_TOKEN.');
  }
  const allow = (read.MATRIX_ALLOW ?? '*').split(',').map((one) => one.trim());
  const prefix = read.TEEMER_PREFIX ?? '!teemer';
  return { homeserver, prefix, allow: allow.filter(Boolean), ...said({ user, password, token }) };
}

type Said<Values> = { [Key in keyof Values]?: Exclude<Values[Key], undefined> };

/** Without what is not set: an absent key, never one that holds nothing. */
const said = <Values extends object>(values: Values): Said<Values> =>
  Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as Said<Values>;
