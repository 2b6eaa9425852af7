import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { openDiscord } from '../../bot/discord.ts';
import type { Peer } from '../peers/discord/peer.ts';
import { bundle, programOf, root, startFlags } from './program.ts';

/** The bot at the loopback platform: its own wiring in this process, or the bundle as a process of its own. */
export async function openBot(
  peer: Pick<Peer, 'token' | 'rest'>,
  { data }: { readonly data?: string } = {},
): Promise<{ stop(): Promise<unknown> }> {
  const remembers = data === undefined ? {} : { data };
  if (bundle === undefined) {
    return openDiscord({ log: 'silent', discord: { token: peer.token, api: peer.rest }, ...remembers });
  }
  const bot = spawn(process.execPath, [...startFlags, programOf('bot/main.ts')], {
    cwd: root,
    env: {
      PATH: process.env.PATH,
      DISCORD_TOKEN: peer.token,
      DISCORD_API: peer.rest,
      TEEMER_DATA: data ?? '',
      TEEMER_LOG: 'info',
    },
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  const left = once(bot, 'exit');
  let logged = '';
  await new Promise<void>((resolve, reject) => {
    bot.stderr.setEncoding('utf8').on('data', (text: string) => {
      logged += text;
      if (logged.includes('connected to Discord')) resolve();
    });
    left.then(() => reject(new Error(`The bot ended:\n${logged}`)));
  });
  return {
    stop() {
      bot.kill('SIGTERM');
      return left;
    },
  };
}
