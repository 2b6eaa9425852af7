import { Client, type ClientOptions, Events, GatewayIntentBits, type Interaction } from 'discord.js';
import type { Peer } from './peer.ts';

/** A real client with nothing in it but one handler, for showing what the peer judges. */
export async function startBareBot(
  peer: Peer,
  handle: (interaction: Interaction) => unknown,
  options: Partial<ClientOptions> = {},
): Promise<{ client: Client<true>; faults: readonly unknown[]; stop(): Promise<void> }> {
  const client = new Client({
    intents: [GatewayIntentBits.Guilds],
    allowedMentions: { parse: [] },
    ...options,
    rest: { api: peer.rest, ...options.rest },
  });
  const faults: unknown[] = [];
  client.on(Events.Error, (error) => faults.push(error));
  client.on(Events.InteractionCreate, async (interaction) => {
    try {
      await handle(interaction);
    } catch (error) {
      faults.push(error);
    }
  });
  const ready = new Promise<Client<true>>((resolve) => client.once(Events.ClientReady, resolve));
  await client.login(peer.token);
  return { client: await ready, faults, stop: () => client.destroy() };
}
