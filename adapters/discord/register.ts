import { type REST, type RESTGetAPIApplicationCommandsResult, Routes } from 'discord.js';
import type { Command } from '../../commands/command.ts';
import { commandBodies } from './bodies.ts';
import { type Existing, planRegistration, type RegistrationPlan } from './registration.ts';

export { commandBodies } from './bodies.ts';
export { planRegistration } from './registration.ts';

export interface RegisterParts {
  readonly rest: REST;
  readonly commands: readonly Command[];
  /** The token's own application where it is not given. */
  readonly applicationId?: string | undefined;
  /** Only in this guild instead of everywhere. */
  readonly guild?: string | undefined;
  readonly deleteUnknown?: boolean;
}

/** Reads what is registered, compares, and puts only where something differs. */
export async function register({ rest, commands, guild, ...parts }: RegisterParts): Promise<RegistrationPlan> {
  const application = parts.applicationId ?? ((await rest.get(Routes.currentApplication())) as { id: string }).id;
  const route =
    guild === undefined ? Routes.applicationCommands(application) : Routes.applicationGuildCommands(application, guild);
  // Without being asked for them the platform leaves other languages out: they would be taken for none, and put back without.
  const query = new URLSearchParams({ with_localizations: 'true' });
  const existing = (await rest.get(route, { query })) as RESTGetAPIApplicationCommandsResult;
  const plan = planRegistration(existing as unknown as Existing[], commandBodies(commands), {
    deleteUnknown: parts.deleteUnknown ?? false,
  });
  if (plan.put) await rest.put(route, { body: plan.put });
  return plan;
}
