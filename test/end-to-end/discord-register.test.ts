import { REST, Routes } from 'discord.js';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { commandBodies, register } from '../../adapters/discord/register.ts';
import { commands } from '../../commands/registry.ts';
import { type Peer, startDiscordPeer } from '../peers/discord/peer.ts';

let peer: Peer;
beforeEach(async () => {
  peer = await startDiscordPeer();
});
afterEach(() => peer.close());

test('other languages are compared, and those of another’s command put back', async () => {
  const rest = new REST({ api: peer.rest }).setToken(peer.token);
  const other = {
    ...{ type: 1, name: 'other', description: 'not ours' },
    name_localizations: { 'en-US': 'other', de: 'anderes' },
    description_localizations: { 'en-US': 'not ours', de: 'nicht unseres' },
  };
  const mix = commandBodies(commands).find(({ name }) => name === 'mix');
  const before = [other, { ...mix, name_localizations: { 'en-US': 'mix', de: 'mischen' } }];
  await rest.put(Routes.applicationCommands(peer.applicationId), { body: before });
  const { differences } = await register({ rest, commands });
  expect(differences.filter((one) => one.startsWith('~'))).toEqual([expect.stringContaining('mix name_localizations')]);
  expect(peer.commands.find(({ name }) => name === 'other')).toMatchObject(other);
  expect(await register({ rest, commands })).toEqual({ differences: [], unknown: ['other'] });
  expect(peer.violations).toEqual([]);
});
