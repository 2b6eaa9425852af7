import type { Clock } from './clock.ts';
import { type CommandBody, commandFaults, commandLimits, commandSetFaults } from './judge-command.ts';
import { isRecord } from './judge-message.ts';
import { type Court, Refusal, refuse } from './refusal.ts';
import type { World } from './world.ts';

/** A command as it was registered, with what the platform adds. */
export type RegisteredCommand = CommandBody & {
  readonly id: string;
  readonly application_id: string;
  readonly version: string;
  readonly type: number;
  readonly guild_id?: string;
};

/** Where commands are registered: everywhere, or in one server. */
export type Scope = 'global' | { readonly guild: string };

export interface Commands {
  readonly all: readonly RegisteredCommand[];
  list(scope: Scope, withLocalizations: boolean): readonly unknown[];
  get(scope: Scope, id: string): RegisteredCommand;
  create(scope: Scope, body: unknown): { readonly command: RegisteredCommand; readonly isNew: boolean };
  overwrite(scope: Scope, body: unknown): readonly RegisteredCommand[];
  patch(scope: Scope, id: string, body: unknown): RegisteredCommand;
  remove(scope: Scope, id: string): void;
}

const day_ms = 86_400_000;

export function keepCommands(given: { readonly world: World; readonly clock: Clock; readonly court: Court }): Commands {
  const { world, clock, court } = given;
  let all: readonly RegisteredCommand[] = [];
  const created: { readonly scope: string; readonly at: number }[] = [];

  const guildOf = (scope: Scope) => (scope === 'global' ? undefined : scope.guild);
  const inScope = (scope: Scope) => all.filter((command) => command.guild_id === guildOf(scope));
  const same = (a: CommandBody, b: CommandBody) => a.name === b.name && (a.type ?? 1) === (b.type ?? 1);

  function register(scope: Scope, body: CommandBody): RegisteredCommand {
    const before = inScope(scope).find((command) => same(command, body));
    if (!before) countCreation(scope);
    const guild = guildOf(scope);
    const { id: _, ...rest } = body as CommandBody & { id?: string };
    return asAnswered({
      ...rest,
      id: before?.id ?? world.id(),
      application_id: world.applicationId,
      version: world.id(),
      ...(guild ? { guild_id: guild } : {}),
    });
  }

  function countCreation(scope: Scope): void {
    const name = guildOf(scope) ?? 'global';
    created.push({ scope: name, at: clock.now() });
    const today = created.filter((each) => each.scope === name && clock.now() - each.at < day_ms).length;
    if (today > commandLimits.createsADay) {
      court.note(`more than ${commandLimits.createsADay} commands created in a day`);
      throw new Refusal(429, 30034, 'Max number of daily application command creates has been reached (200)');
    }
  }

  function judge(what: string, bodies: readonly CommandBody[], how: 'create' | 'overwrite'): void {
    for (const body of bodies) court.demand(`${what} ${nameIn(body)}`, commandFaults(body, how));
  }

  const replace = (scope: Scope, commands: readonly RegisteredCommand[]) => {
    const set = [...all.filter((command) => command.guild_id !== guildOf(scope)), ...commands];
    court.demand('commands', commandSetFaults(commands));
    all = set;
  };

  const find = (scope: Scope, id: string) => {
    const found = inScope(scope).find((command) => command.id === id);
    if (!found) throw refuse.unknownCommand();
    return found;
  };

  return {
    get all() {
      return all;
    },
    list: (scope, withLocalizations) =>
      inScope(scope).map((command) => (withLocalizations ? command : withoutLocalizations(command))),
    get: find,
    create(scope, raw) {
      const body = raw as CommandBody;
      judge('command', [body], 'create');
      const isNew = !inScope(scope).some((command) => same(command, body));
      const command = register(scope, body);
      replace(scope, [...inScope(scope).filter((other) => !same(other, body)), command]);
      return { command, isNew };
    },
    overwrite(scope, raw) {
      court.demand('commands', Array.isArray(raw) ? [] : ['not a list']);
      const bodies = raw as readonly CommandBody[];
      judge('command', bodies, 'overwrite');
      court.demand('commands', commandSetFaults(bodies));
      const commands = bodies.map((body) => register(scope, body));
      replace(scope, commands);
      return commands;
    },
    patch(scope, id, raw) {
      const before = find(scope, id);
      court.demand(`command ${before.name}`, commandFaults(raw as CommandBody, 'patch'));
      const merged = { ...asSent(before), ...(raw as object) } as unknown as CommandBody;
      judge('command', [merged], 'create');
      const command = asAnswered({ ...before, ...merged, version: world.id() });
      replace(
        scope,
        inScope(scope).map((other) => (other.id === id ? command : other)),
      );
      return command;
    },
    remove(scope, id) {
      const gone = find(scope, id);
      all = all.filter((command) => command !== gone);
    },
  };
}

/** What the platform adds to a command, and leaves out where it is the default: who compares must know both. */
function asAnswered(command: Record<string, unknown>): RegisteredCommand {
  const full = {
    default_member_permissions: null,
    description: '',
    dm_permission: true,
    nsfw: false,
    contexts: null,
    integration_types: [0, 1],
    name_localizations: null,
    description_localizations: null,
    ...command,
    type: command.type ?? 1,
  };
  const text = JSON.stringify(full, (key, value) =>
    (key === 'required' || key === 'autocomplete') && value === false ? undefined : value,
  );
  return JSON.parse(text) as RegisteredCommand;
}

/** A registered command without what only the platform writes. */
function asSent(command: RegisteredCommand): Record<string, unknown> {
  const { id, application_id, version, guild_id, nsfw, ...body } = command as RegisteredCommand & { nsfw?: unknown };
  return body;
}

const withoutLocalizations = (command: RegisteredCommand): unknown =>
  JSON.parse(JSON.stringify(command, (key, value) => (key.endsWith('_localizations') ? undefined : value)));

const nameIn = (body: unknown) => (isRecord(body) && typeof body.name === 'string' ? body.name : '?');
