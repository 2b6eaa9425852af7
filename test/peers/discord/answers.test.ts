import {
  ActionRowBuilder,
  ButtonBuilder,
  ButtonStyle,
  type Interaction,
  LabelBuilder,
  MessageFlags,
  ModalBuilder,
  Routes,
  SlashCommandBuilder,
  TextInputBuilder,
  TextInputStyle,
} from 'discord.js';
import { afterEach, describe, expect, test } from 'vitest';
import { startBareBot } from './bare-bot.ts';
import { manualClock } from './clock.ts';
import { type Peer, type PeerOptions, startDiscordPeer } from './peer.ts';

const stops: (() => Promise<unknown>)[] = [];
afterEach(async () => {
  for (const stop of stops.splice(0).toReversed()) await stop();
});

const mix = new SlashCommandBuilder()
  .setName('mix')
  .setDescription('How much of each')
  .addStringOption((option) => option.setName('amount').setDescription('How much').setAutocomplete(true));

async function meet(handle: (interaction: Interaction) => unknown, options?: PeerOptions) {
  const peer = await startDiscordPeer(options);
  stops.push(peer.close);
  const bot = await startBareBot(peer, handle);
  stops.push(bot.stop);
  await bot.client.application.commands.set([mix]);
  return { peer, bot };
}

/** A callback past the client's own guards. */
const raw = (interaction: Interaction, body: unknown) =>
  interaction.client.rest.post(Routes.interactionCallback(interaction.id, interaction.token), { body, auth: false });

const closed = { allowed_mentions: { parse: [] as [] } };
const next = (id: string) =>
  new ActionRowBuilder<ButtonBuilder>().addComponents(
    new ButtonBuilder().setCustomId(id).setLabel('dry it').setStyle(ButtonStyle.Secondary),
  );

describe('a good bot', () => {
  test('answers with an embed, a picture and a button, and updates it when it is pressed', async () => {
    const picture = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
    const { peer, bot } = await meet(async (interaction) => {
      if (interaction.isChatInputCommand()) {
        await interaction.reply({
          embeds: [{ description: '33 lb of clay', image: { url: 'attachment://mix.png' } }],
          files: [{ attachment: picture, name: 'mix.png', description: 'two sacks' }],
          components: [next('t1:next')],
        });
      }
      if (interaction.isButton()) await interaction.update({ content: 'Dry it for a day', components: [] });
    });
    const seen = await peer.slash({ name: 'mix', options: { amount: '1 cu ft' } });
    const [message] = seen.messages;
    expect(message).toMatchObject({ ephemeral: false, embeds: [{ description: '33 lb of clay' }] });
    expect(message?.attachments).toMatchObject([
      { name: 'mix.png', description: 'two sacks', contentType: 'image/png' },
    ]);
    expect(Buffer.from(message?.attachments[0]?.bytes ?? [])).toEqual(picture);

    const pressed = await peer.press(seen, 't1:next', { user: 'bea' });
    expect(pressed.state).toBe('answered');
    expect(seen.messages).toHaveLength(1);
    expect(seen.messages[0]).toMatchObject({ content: 'Dry it for a day', edits: 1, components: [] });
    expect(seen.messages[0]?.attachments).toHaveLength(1);
    await expect(async () => peer.press(seen, 't1:next')).rejects.toThrow('There is no t1:next');
    expect(peer.print()).toContain('#furnace · ada: /mix amount:1 cu ft');
    expect([peer.violations, bot.faults]).toEqual([[], []]);
  });

  test('defers for itself alone, fills it in later and follows up', async () => {
    const clock = manualClock();
    const filled = Promise.withResolvers<void>();
    const { peer, bot } = await meet(
      async (interaction) => {
        if (!interaction.isChatInputCommand()) return;
        await interaction.deferReply({ flags: MessageFlags.Ephemeral });
        await filled.promise;
        await interaction.editReply({ content: 'at last' });
        await interaction.followUp({ content: 'and more', flags: MessageFlags.Ephemeral });
      },
      { clock },
    );
    const seen = await peer.slash({ name: 'mix' });
    expect([seen.state, seen.messages[0]?.loading, seen.messages[0]?.ephemeral]).toEqual(['deferred', true, true]);
    clock.advance(14 * 60_000);
    filled.resolve();
    await seen.until(({ messages }) => messages.length === 2);
    expect(seen.state).toBe('answered');
    expect(seen.messages.map(({ content, ephemeral }) => [content, ephemeral])).toEqual([
      ['at last', true],
      ['and more', true],
    ]);
    clock.advance(60 * 60_000);
    expect([peer.violations, bot.faults]).toEqual([[], []]);
  });

  test('completes what is typed, and shows a form and reads it', async () => {
    const { peer, bot } = await meet(async (interaction) => {
      if (interaction.isAutocomplete()) {
        const { name, value } = interaction.options.getFocused(true);
        await interaction.respond([{ name: `${name} ${value} in`, value: `${value} in` }]);
      } else if (interaction.isChatInputCommand()) {
        const input = new TextInputBuilder().setCustomId('layers').setStyle(TextInputStyle.Paragraph).setMaxLength(20);
        await interaction.showModal(
          new ModalBuilder()
            .setCustomId('t1:wall')
            .setTitle('Wall')
            .addLabelComponents(new LabelBuilder().setLabel('Layers').setTextInputComponent(input)),
        );
      } else if (interaction.isModalSubmit()) {
        await interaction.reply(interaction.fields.getTextInputValue('layers'));
      }
    });
    const line = { name: 'mix', options: { amount: '14' } };
    expect(await peer.autocomplete({ ...line, focused: 'amount' })).toEqual([{ name: 'amount 14 in', value: '14 in' }]);
    const form = await peer.slash({ name: 'mix' });
    expect(form.state).toBe('modal');
    const sent = await peer.submit(form, { layers: '1 in castable' });
    expect(sent.messages[0]?.content).toBe('1 in castable');
    expect(() => peer.submit(form, { layers: 'x'.repeat(21) })).toThrow('0 to 20 characters');
    expect(() => peer.submit(form, {})).toThrow('The form needs layers');
    expect([peer.violations, bot.faults]).toEqual([[], []]);
  });

  test('lets a member choose, think it over and fill in a form, all in one message', async () => {
    const { peer, bot } = await meet(async (interaction) => {
      if (interaction.isChatInputCommand()) {
        const options = [1, 2].map((value) => ({ label: `${value} in`, value: `${value}` }));
        const select = { type: 3, custom_id: 't1:wall', options } as const;
        await interaction.reply({ content: 'How thick?', components: [{ type: 1, components: [select] }] });
      } else if (interaction.isStringSelectMenu()) {
        await interaction.deferUpdate();
        await interaction.editReply({ content: `${interaction.values[0]} in`, components: [next('t1:more')] });
      } else if (interaction.isButton()) {
        const label = new LabelBuilder()
          .setLabel('What')
          .setTextInputComponent(new TextInputBuilder().setCustomId('what').setStyle(TextInputStyle.Short));
        await interaction.showModal(
          new ModalBuilder().setCustomId('t1:form').setTitle('Form').addLabelComponents(label),
        );
      } else if (interaction.isModalSubmit() && interaction.isFromMessage()) {
        await interaction.update({ content: interaction.fields.getTextInputValue('what'), components: [] });
      }
    });
    const asked = await peer.slash({ name: 'mix' });
    const chosen = await peer.select(asked, 't1:wall', ['2']);
    await chosen.until(({ state }) => state === 'answered');
    expect(asked.messages[0]?.content).toBe('2 in');
    const form = await peer.press(asked, 't1:more');
    const sent = await peer.submit(form, { what: 'castable' });
    expect(sent.messages).toEqual(asked.messages);
    expect(asked.messages.map(({ content, edits }) => [content, edits])).toEqual([['castable', 2]]);
    expect([peer.violations, bot.faults]).toEqual([[], []]);
  });

  test('answers a command that is used on a message', async () => {
    const { peer, bot } = await meet(async (interaction) => {
      if (interaction.isMessageContextMenuCommand())
        await interaction.reply(`read: ${interaction.targetMessage.content}`);
    });
    await bot.client.application.commands.create({ name: 'Read it', type: 3 });
    const seen = await peer.apply('Read it', { written: '1 in castable' });
    expect(seen.messages[0]?.content).toBe('read: 1 in castable');
    expect((await peer.apply('Read it', seen)).messages[0]?.content).toBe('read: read: 1 in castable');
    expect([peer.violations, bot.faults]).toEqual([[], []]);
  });

  test('what was for one alone is used by nobody else', async () => {
    const { peer } = await meet(async (interaction) => {
      if (!interaction.isChatInputCommand()) return;
      await interaction.reply({ content: 'a', flags: MessageFlags.Ephemeral, components: [next('t1:next')] });
    });
    const seen = await peer.slash({ name: 'mix' });
    expect(() => peer.press(seen, 't1:next', { user: 'bea' })).toThrow('Only ada sees this message');
  });

  test('answers in its own direct messages and where only the member installed it', async () => {
    const { peer, bot } = await meet(async (interaction) => {
      if (interaction.isChatInputCommand()) await interaction.reply(`context ${interaction.context}`);
    });
    for (const [place, context] of [
      ['guild', 0],
      ['bot-dm', 1],
      ['user-install', 2],
    ] as const) {
      const seen = await peer.slash({ name: 'mix' }, { place });
      expect(seen.messages[0]?.content).toBe(`context ${context}`);
    }
    expect([peer.violations, bot.faults]).toEqual([[], []]);
  });

  test('writes a message by itself once, however often it sends it with one nonce', async () => {
    const { peer, bot } = await meet(() => {});
    const member = await bot.client.users.fetch(peer.userId('ada'));
    for (const nonce of ['7', '7', '8']) await member.send({ content: 'Hold at 110 °C', nonce, enforceNonce: true });
    expect(peer.seen.map(({ messages }) => messages[0]?.nonce)).toEqual(['7', '8']);
    expect([peer.violations, bot.faults]).toEqual([[], []]);
  });
});

describe('a bad bot', () => {
  /** Lets the bot answer `/mix` and tells what the peer had against it. */
  async function judged(handle: (interaction: Interaction, peer: Peer) => unknown, options?: PeerOptions) {
    const done = Promise.withResolvers<void>();
    const { peer, bot } = await meet(async (interaction) => {
      try {
        await handle(interaction, peer);
      } finally {
        done.resolve();
      }
    }, options);
    const seen = await peer.slash({ name: 'mix' });
    await done.promise;
    await new Promise((resolve) => setImmediate(resolve));
    return {
      peer,
      seen,
      violations: peer.violations,
      codes: bot.faults.map((fault) => (fault as { code?: unknown }).code),
    };
  }

  test('sends a key that nobody knows', async () => {
    const { violations, codes } = await judged(async (interaction) => {
      const refused = raw(interaction, { type: 4, data: { content: 'a', colour: 1, ...closed } });
      await expect(refused).rejects.toThrow('unknown key colour');
      await raw(interaction, { type: 4, data: { content: 'a', ...closed } });
    });
    expect(violations).toEqual(['ada: /mix: callback: data: unknown key colour']);
    expect(codes).toEqual([]);
  });

  test('acknowledges twice', async () => {
    const { violations, codes, seen } = await judged(async (interaction) => {
      if (interaction.isChatInputCommand()) await interaction.reply('a');
      await raw(interaction, { type: 5 });
    });
    expect([violations, codes]).toEqual([['ada: /mix: callback: acknowledged twice'], [40060]]);
    expect(seen.messages).toHaveLength(1);
  });

  test('answers late', async () => {
    const clock = manualClock();
    const { violations, codes, seen } = await judged(
      async (interaction) => {
        clock.advance(3002);
        if (interaction.isChatInputCommand()) await interaction.reply('a');
      },
      { clock },
    );
    expect([seen.state, seen.error]).toEqual(['failed', 'The application did not respond']);
    expect(codes).toEqual([10062]);
    expect(violations).toEqual(['ada: /mix: no answer within 3 s', 'ada: /mix: callback: late, after 3002 ms of 3000']);
  });

  test('just in time is not late', async () => {
    const clock = manualClock();
    const { violations } = await judged(
      async (interaction) => {
        clock.advance(3000);
        if (interaction.isChatInputCommand()) await interaction.reply('a');
      },
      { clock },
    );
    expect(violations).toEqual([]);
  });

  test('never answers', async () => {
    const clock = manualClock();
    const { peer } = await meet(() => clock.advance(4000), { clock });
    const seen = await peer.slash({ name: 'mix' });
    expect(seen.error).toBe('The application did not respond');
    expect(peer.violations).toEqual(['ada: /mix: no answer within 3 s']);
  });

  test('defers and forgets', async () => {
    const clock = manualClock();
    const { violations, seen } = await judged(
      async (interaction) => {
        if (interaction.isChatInputCommand()) await interaction.deferReply();
      },
      { clock },
    );
    clock.advance(15 * 60_000);
    expect(violations).toEqual(['ada: /mix: deferred and never filled within 15 min']);
    expect(seen.state).toBe('failed');
  });

  test('uses a token that is over', async () => {
    const clock = manualClock();
    const { violations, codes } = await judged(
      async (interaction) => {
        if (!interaction.isChatInputCommand()) return;
        await interaction.reply('a');
        clock.advance(15 * 60_000 + 1000);
        await interaction.editReply('b');
      },
      { clock },
    );
    expect(codes).toEqual([50027]);
    expect(violations).toEqual(['ada: /mix: token used after 901 s, it lives 15 min']);
  });

  test('sends embeds that are too long together', async () => {
    const { violations, codes, seen } = await judged(async (interaction) => {
      if (!interaction.isChatInputCommand()) return;
      await interaction.deferReply();
      const long = { description: 'x'.repeat(3001) };
      await interaction.editReply({ embeds: [long, long] });
    });
    expect(codes).toEqual([50035]);
    expect(violations).toEqual(['ada: /mix: edit: embeds have 6002 characters together: at most 6000']);
    expect(seen.state).toBe('deferred');
  });

  test('lets mentions be parsed', async () => {
    const { violations, seen } = await judged(async (interaction) => {
      if (interaction.isChatInputCommand()) await interaction.reply({ content: '@everyone', allowedMentions: {} });
    });
    expect(violations).toEqual(['ada: /mix: callback: allowed_mentions is {}: must be {"parse":[]}']);
    expect(seen.messages[0]?.content).toBe('@everyone');
  });

  test('shows a picture that it did not attach', async () => {
    const { violations } = await judged(async (interaction) => {
      if (!interaction.isChatInputCommand()) return;
      const shown = interaction.reply({ embeds: [{ image: { url: 'attachment://wall.png' } }] });
      await expect(shown).rejects.toMatchObject({ code: 50035 });
      await interaction.reply('a');
    });
    expect(violations).toEqual(['ada: /mix: callback: attachment://wall.png is not attached (nothing is)']);
  });

  test('answers for everybody what it deferred for one', async () => {
    const { violations, seen } = await judged(async (interaction) => {
      if (!interaction.isChatInputCommand()) return;
      await interaction.deferReply({ flags: MessageFlags.Ephemeral });
      await interaction.followUp('for all?');
    });
    expect(violations).toEqual(['ada: /mix: follow-up: for everybody, but the deferral was ephemeral']);
    expect(seen.messages.map(({ content, ephemeral }) => [content, ephemeral])).toEqual([['for all?', true]]);
  });

  test('changes by an edit who sees a message', async () => {
    const { violations, codes } = await judged(async (interaction) => {
      if (!interaction.isChatInputCommand()) return;
      await interaction.deferReply();
      await interaction.editReply({ content: 'a', flags: 64 as never });
    });
    expect(codes).toEqual([50035]);
    expect(violations).toEqual(['ada: /mix: edit: flags 64: an edit can set only 32772']);
  });

  test('answers what it was never asked, and edits what it never answered', async () => {
    const { violations, codes } = await judged(async (interaction) => {
      const { client, token } = interaction;
      const body = { type: 4, data: { content: 'a', ...closed } };
      const callback = Routes.interactionCallback('123', token);
      await expect(client.rest.post(callback, { body, auth: false })).rejects.toMatchObject({ code: 10062 });
      const edit = Routes.webhookMessage(client.application.id, token);
      await expect(client.rest.patch(edit, { body: { content: 'a' }, auth: false })).rejects.toMatchObject({
        code: 10015,
      });
      await raw(interaction, body);
    });
    expect(codes).toEqual([]);
    expect(violations).toEqual([
      'callback of an interaction that does not exist: 123',
      'ada: /mix: the webhook of an interaction that was not acknowledged',
    ]);
  });

  test('answers in a way that does not fit the question', async () => {
    const { violations } = await judged(async (interaction) => {
      const update = raw(interaction, { type: 7, data: { content: 'a', ...closed } });
      await expect(update).rejects.toMatchObject({ code: 50035 });
      await raw(interaction, { type: 5 });
    });
    expect(violations).toEqual(['ada: /mix: callback: type 7 does not answer this kind of interaction']);
  });

  test('completes with more than may be offered', async () => {
    const choice = (index: number) => ({ name: `${index}`, value: `${index}` });
    const many = Array.from({ length: 26 }, (_, index) => choice(index));
    const { peer } = await meet(async (interaction) => {
      if (!interaction.isAutocomplete()) return;
      for (const choices of [many, [{ name: 'a', value: 'x'.repeat(101) }]]) {
        await expect(raw(interaction, { type: 8, data: { choices } })).rejects.toMatchObject({ code: 50035 });
      }
      await interaction.respond(many.slice(1));
    });
    expect(await peer.autocomplete({ name: 'mix', focused: 'amount' })).toHaveLength(25);
    expect(peer.violations).toEqual([
      'ada: /mix amount: (typing amount): callback: data.choices: more than 25',
      'ada: /mix amount: (typing amount): callback: the value of a has more than 100 characters',
    ]);
  });

  test('leaves a message empty, or asks for what is not there', async () => {
    const { violations } = await judged(async (interaction) => {
      if (!interaction.isChatInputCommand()) return;
      await interaction.reply('a');
      await expect(interaction.editReply({ content: '' })).rejects.toMatchObject({ code: 50035 });
      await interaction.deleteReply();
      await expect(interaction.editReply('b')).rejects.toMatchObject({ code: 10008 });
      await expect(interaction.client.rest.get('/users/@me/guilds')).rejects.toMatchObject({ status: 404 });
    });
    expect(violations).toEqual([
      'ada: /mix: edit: an edit leaves an empty message',
      'ada: /mix: message @original is not there',
      'GET /api/v10/users/@me/guilds: no such address here',
    ]);
  });
});
