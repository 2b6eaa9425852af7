import { spawnSync } from 'node:child_process';
import { mkdirSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { REST } from 'discord.js';
import { register } from '../../../adapters/discord/register.ts';
import { openDiscord } from '../../../bot/discord.ts';
import { rangesFollow } from '../../../commands/early.ts';
import { commands } from '../../../commands/registry.ts';
import { linesBefore } from '../../contract/prepared.ts';
import { messagePage, type Theme } from './page.ts';
import { type Peer, startDiscordPeer } from './peer.ts';
import { shoot } from './shoot.ts';
import { slashOf } from './typed.ts';

/**
 * Pictures of what a member sees: one example of each command, asked of the real program through the loopback platform.
 * `npm run shots [-- command ...]` writes them to test/end-to-end/pictures/discord; all of them without a name. It takes
 * Debian's chromium, and its pngquant to make them small.
 */
const folder = fileURLToPath(new URL('../../end-to-end/pictures/discord/', import.meta.url));
const largest_bytes = 150_000;
const dark = ['size can', 'wall'];

const names = process.argv.slice(2);
const wanted = commands.filter(({ name }) => names.length === 0 || names.includes(name));
mkdirSync(folder, { recursive: true });
const peer = await startDiscordPeer();
await register({ rest: new REST({ api: peer.rest }).setToken(peer.token), commands });
const discord = { token: peer.token, api: peer.rest };
const bot = await openDiscord({ log: 'warn', discord });
try {
  for (const { name, examples } of wanted) await shots(name, examples[0]?.line ?? name);
  await shots('a mistake', 'mix 3 volts');
} finally {
  await bot.stop();
  await peer.close();
}
for (const violation of peer.violations) process.stderr.write(`${violation}\n`);
if (peer.violations.length > 0) process.exitCode = 1;

async function shots(name: string, line: string): Promise<void> {
  const who = { user: name };
  for (const earlier of linesBefore(name)) await asked(peer, earlier, who);
  const seen = await asked(peer, line, who);
  const message = seen.messages.findLast(({ deleted, loading }) => !deleted && !loading);
  if (!message) throw new Error(`Nothing was seen of: ${line}\n${peer.print()}`);
  const themes: readonly Theme[] = dark.includes(name) ? ['light', 'dark'] : ['light'];
  for (const theme of themes) {
    const file = `${name.replaceAll(' ', '-')}${theme === 'dark' ? '-dark' : ''}.png`;
    shoot(messagePage(message, { theme, question: seen.did.replace(/^.*?: /, '') }), `${folder}${file}`);
    lighten(`${folder}${file}`);
    process.stdout.write(`${file}\n`);
  }
}

/** Fewer colours where it is still too large to keep in the repository. */
function lighten(file: string): void {
  for (const colours of [24, 16, 12, 8]) {
    spawnSync('pngquant', ['--force', '--ext', '.png', '--speed', '1', '--nofs', String(colours), file]);
    if (statSync(file).size <= largest_bytes) return;
  }
  process.stderr.write(`${file} is larger than ${largest_bytes} bytes\n`);
}

async function asked(one: Peer, line: string, who: { user: string }) {
  const seen = await one.slash(slashOf(line), who);
  const isWhole = () => !JSON.stringify(seen.messages.at(-1)?.embeds ?? []).includes(rangesFollow);
  return seen.until(
    ({ messages, error }) => error !== undefined || (messages.some(({ loading }) => !loading) && isWhole()),
    30_000,
  );
}
