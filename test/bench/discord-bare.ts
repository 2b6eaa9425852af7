import { Client, Events } from 'discord.js';

/** The least bot there can be on the same library: one constant embed, whatever is asked. */
export function bareBot(api: string): Client {
  const client = new Client({ intents: [], allowedMentions: { parse: [] }, rest: { api } });
  client.on(Events.InteractionCreate, async (interaction) => {
    if (!interaction.isChatInputCommand()) return;
    await interaction.reply({ embeds: [{ description: '**33 lb of clay and 106 lb of sand.**', color: 0x8a5a3c }] });
  });
  return client;
}

if (import.meta.main) await bareBot(process.env.DISCORD_API ?? '').login(process.env.DISCORD_TOKEN);
