import type { RESTPostAPIApplicationCommandsJSONBody } from 'discord.js';

type Body = RESTPostAPIApplicationCommandsJSONBody;
/** As the platform lists it: our body and its own bookkeeping. */
export type Existing = Body & { readonly id?: string; readonly version?: string };

export interface RegistrationPlan {
  /** One line a difference, for people. */
  readonly differences: readonly string[];
  /** Registered, but none of ours. Kept unless told otherwise. */
  readonly unknown: readonly string[];
  /** The whole list to put, where there is anything to change. */
  readonly put?: readonly Body[];
}

/**
 * What has to be sent so that ours are registered as they should be. The platform replaces its whole list at once, so
 * commands that are not ours are sent back as they were, unless `deleteUnknown`.
 */
export function planRegistration(
  existing: readonly Existing[],
  wanted: readonly Body[],
  { deleteUnknown = false }: { deleteUnknown?: boolean } = {},
): RegistrationPlan {
  const keyOf = (body: Body) => `${body.type ?? 1} ${body.name}`;
  const before = new Map(existing.map((body) => [keyOf(body), body]));
  const ours = new Set(wanted.map(keyOf));
  const others = existing.filter((body) => !ours.has(keyOf(body)));
  const differences = [
    ...wanted.flatMap((body) => {
      const old = before.get(keyOf(body));
      if (!old) return [`+ ${body.name}: new`];
      return differing(canonical(old), canonical(body), body.name);
    }),
    ...(deleteUnknown ? others.map(({ name }) => `- ${name}: not ours, deleted`) : []),
  ];
  const unknown = others.map(({ name }) => name);
  if (differences.length === 0) return { differences, unknown };
  return { differences, unknown, put: [...wanted, ...(deleteUnknown ? [] : others.map(sentBack))] };
}

/** Our fields with their defaults filled in, so that what the platform adds or leaves out is no difference. */
function canonical(body: Body): unknown {
  const {
    type = 1,
    name,
    options = [],
    integration_types = [0],
    contexts = null,
  } = body as Readonly<Partial<Body>> & {
    options?: readonly object[];
  };
  const description = 'description' in body ? body.description : '';
  return {
    type,
    name,
    description: description ?? '',
    ...localisations(body),
    nsfw: body.nsfw ?? false,
    default_member_permissions: body.default_member_permissions ?? null,
    integration_types: [...(integration_types ?? [0])].sort(),
    contexts: contexts === null ? null : [...contexts].sort(),
    options: options.map(canonicalOption),
  };
}

function canonicalOption(option: object): unknown {
  const given = option as { [key: string]: unknown };
  const nested = (given.options ?? []) as readonly object[];
  const choices = (given.choices ?? []) as readonly Readonly<Record<string, unknown>>[];
  return {
    type: given.type,
    name: given.name,
    description: given.description ?? '',
    ...localisations(given),
    required: given.required ?? false,
    autocomplete: given.autocomplete ?? false,
    ...Object.fromEntries(bounds.map((bound) => [bound, given[bound] ?? null])),
    channel_types: given.channel_types ?? [],
    choices: choices.map((choice) => ({ name: choice.name, value: choice.value, ...localisations(choice) })),
    options: nested.map(canonicalOption),
  };
}

const bounds = ['min_length', 'max_length', 'min_value', 'max_value'] as const;

/** Other languages' names and descriptions; none, an empty list of them and a null are the same. */
const localisations = (of: object): object =>
  Object.fromEntries(
    (['name_localizations', 'description_localizations'] as const).map((key) => {
      const said = (of as { readonly [key]?: Readonly<Record<string, unknown>> | null })[key];
      return [key, said && Object.keys(said).length > 0 ? said : null];
    }),
  );

function differing(old: unknown, now: unknown, path: string): readonly string[] {
  if (JSON.stringify(old) === JSON.stringify(now)) return [];
  if (!isTree(old) || !isTree(now)) return [`~ ${path}: ${JSON.stringify(old)} → ${JSON.stringify(now)}`];
  const keys = [...new Set([...Object.keys(old), ...Object.keys(now)])];
  return keys.flatMap((key) => {
    const at = `${path} ${(now[key] as { name?: string } | undefined)?.name ?? key}`;
    if (!(key in old)) return [`~ ${at}: added`];
    if (!(key in now)) return [`~ ${path} ${(old[key] as { name?: string } | undefined)?.name ?? key}: gone`];
    return differing(old[key], now[key], at);
  });
}

const isTree = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

/** A command without what the platform alone may say of it. */
function sentBack(body: Existing): Body {
  const own = ['id', 'application_id', 'guild_id', 'version', 'name_localized', 'description_localized'];
  return Object.fromEntries(
    // The interface’s own description knows no `nsfw`, so it goes along only where it says something.
    Object.entries(body).filter(
      ([key, value]) => !own.includes(key) && value !== undefined && !(key === 'nsfw' && value === false),
    ),
  ) as unknown as Body;
}
