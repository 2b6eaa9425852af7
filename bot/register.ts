import { parseArgs } from 'node:util';
import { REST } from 'discord.js';
import { register } from '../adapters/discord/register.ts';
import { commands } from '../commands/registry.ts';
import { ConfigError, readConfig } from './config.ts';
import { stop } from './stop.ts';

const usage = `npm run discord:register -- [--guild ID] [--delete-unknown]
  Registers the commands where they differ from what is registered; DISCORD_TOKEN must be set.
  --guild ID         only in that guild, at once visible there
  --delete-unknown   delete commands that are not ours; without it they are kept`;

try {
  const { values } = parseArgs({
    options: {
      guild: { type: 'string' },
      'delete-unknown': { type: 'boolean', default: false },
      help: { type: 'boolean', default: false },
    },
  });
  if (values.help) process.stdout.write(`${usage}\n`);
  else await run(values.guild, values['delete-unknown']);
} catch (error) {
  stop(error);
}

async function run(guild: string | undefined, deleteUnknown: boolean): Promise<void> {
  const { discord } = readConfig(process.env);
  if (!discord) throw new ConfigError(`DISCORD_TOKEN is not set.\n${usage}`);
  const { token, api, applicationId } = discord;
  const rest = new REST(api === undefined ? {} : { api }).setToken(token);
  const { differences, unknown, put } = await register({ rest, commands, applicationId, guild, deleteUnknown });
  const lines = [
    ...differences,
    ...(unknown.length > 0 && !deleteUnknown
      ? [`Not ours and kept: ${unknown.join(', ')}. --delete-unknown deletes them.`]
      : []),
    put ? `Registered ${put.length} commands${guild === undefined ? '' : ` in guild ${guild}`}.` : 'Nothing to change.',
  ];
  process.stdout.write(`${lines.join('\n')}\n`);
}
