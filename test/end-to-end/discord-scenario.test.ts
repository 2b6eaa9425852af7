import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { REST } from 'discord.js';
import { expect, test } from 'vitest';
import { register } from '../../adapters/discord/register.ts';
import { rangesFollow } from '../../commands/early.ts';
import { commands } from '../../commands/registry.ts';
import { type Seen, type SeenMessage, startDiscordPeer, type Who } from '../peers/discord/peer.ts';
import { slashOf } from '../peers/discord/typed.ts';
import { openBot } from './discord-bot.ts';
import { scenario } from './scenario.ts';

const shown = (seen: Seen): SeenMessage => seen.messages.findLast(({ deleted, loading }) => !deleted && !loading)!;
const words = (seen: Seen): string => JSON.stringify(shown(seen).embeds) + shown(seen).content;
/** The whole answer, in the place of typical values if those came first. */
const done = (seen: Seen) =>
  seen.until(({ messages }) => messages.some(({ loading }) => !loading) && !words(seen).includes(rangesFollow), 60_000);

test('the evening of the club in a channel, with a restart in the middle', { timeout: 300_000 }, async () => {
  const data = mkdtempSync(join(tmpdir(), 'discord-evening-'));
  const peer = await startDiscordPeer();
  await register({ rest: new REST({ api: peer.rest }).setToken(peer.token), commands });
  let bot = await openBot(peer, { data });
  const who: Who = { user: 'ann' };
  for (const [at, { line, shows, warns, pictures }] of scenario.entries()) {
    if (at === 1) {
      await bot.stop();
      bot = await openBot(peer, { data });
    }
    let seen = await done(await peer.slash(slashOf(line), who));
    expect(words(seen), line).toMatch(warns);
    if (pictures)
      expect(
        shown(seen).attachments.map(({ name }) => name),
        line,
      ).toContainEqual(expect.stringMatching(/\.png$/));
    // A long answer shows the rest at its button.
    const rows = shown(seen).components as readonly { components: readonly { label?: string; custom_id?: string }[] }[];
    const all = rows.flatMap(({ components }) => components).find(({ label }) => label === 'All figures')?.custom_id;
    if (all !== undefined) seen = await done(await peer.press(seen, all, who));
    for (const wanted of shows) expect(words(seen), line).toMatch(wanted);
  }
  expect(peer.violations).toEqual([]);
  await bot.stop();
  await peer.close();
  rmSync(data, { recursive: true });
});
