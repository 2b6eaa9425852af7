import { REST, Routes, SlashCommandBuilder } from 'discord.js';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { startBareBot } from './bare-bot.ts';
import { type Peer, startDiscordPeer } from './peer.ts';
import { type SchemaName, schemaFaults } from './strict.ts';

/** What the peer answers is held against the platform's own schemas too: a client that trusts them must not be misled. */
let peer: Peer;
let rest: REST;

beforeEach(async () => {
  peer = await startDiscordPeer();
  rest = new REST({ api: peer.rest }).setToken(peer.token);
});
afterEach(() => peer.close());

const right = async (schema: SchemaName, answer: Promise<unknown>) =>
  expect(schemaFaults(schema, await answer)).toEqual([]);
const closed = { allowed_mentions: { parse: [] } };

test('the way to the gateway, direct messages, commands and messages', async () => {
  await right('GatewayBotResponse', rest.get(Routes.gatewayBot()));
  const direct = rest.post(Routes.userChannels(), { body: { recipient_id: peer.userId('ada') } });
  await right('PrivateChannelResponse', direct);
  const mix = new SlashCommandBuilder().setName('mix').setDescription('d');
  const body = mix.addStringOption((option) => option.setName('o').setDescription('d').setRequired(true)).toJSON();
  await right('ApplicationCommandResponse', rest.post(Routes.applicationCommands(peer.applicationId), { body }));
  const { id } = (await direct) as { id: string };
  const files = [{ name: 'a.png', data: Buffer.from([1]), contentType: 'image/png' }];
  const embeds = [{ title: 'a', color: 1, image: { url: 'attachment://a.png' }, fields: [{ name: 'a', value: 'b' }] }];
  const select = { type: 3, custom_id: 'b', options: [{ label: 'a', value: 'a' }] };
  const components = [
    { type: 1, components: [{ type: 2, style: 2, label: 'a', custom_id: 'a' }] },
    { type: 1, components: [select] },
  ];
  const message = { content: 'a', embeds, components, nonce: '1', enforce_nonce: true, ...closed };
  await right('MessageResponse', rest.post(Routes.channelMessages(id), { body: message, files }));
  expect(peer.violations).toEqual([]);
});

test('callbacks and what follows them', async () => {
  const answers: Record<string, unknown> = {};
  const bot = await startBareBot(peer, async ({ id, token }) => {
    const callback = Routes.interactionCallback(id, token);
    const query = new URLSearchParams({ with_response: 'true' });
    answers.deferral = await rest.post(callback, { body: { type: 5 }, query, auth: false });
    const body = { content: 'a', ...closed };
    answers.edit = await rest.patch(Routes.webhookMessage(peer.applicationId, token), { body, auth: false });
    answers.followUp = await rest.post(Routes.webhook(peer.applicationId, token), { body, auth: false });
  });
  const body = [new SlashCommandBuilder().setName('mix').setDescription('d').toJSON()];
  await rest.put(Routes.applicationCommands(peer.applicationId), { body });
  const seen = await peer.slash({ name: 'mix' });
  await seen.until(({ messages }) => messages.length === 2);
  await expect.poll(() => answers.followUp).toBeDefined();
  await bot.stop();
  expect(schemaFaults('InteractionCallbackResponse', answers.deferral)).toEqual([]);
  expect(schemaFaults('MessageResponse', answers.edit)).toEqual([]);
  expect(schemaFaults('MessageResponse', answers.followUp)).toEqual([]);
  expect([peer.violations, bot.faults]).toEqual([[], []]);
});
