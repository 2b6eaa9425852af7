import {
  ActionRowBuilder,
  AttachmentBuilder,
  ButtonBuilder,
  ButtonStyle,
  EmbedBuilder,
  LabelBuilder,
  ModalBuilder,
  SlashCommandBuilder,
  TextInputBuilder,
  TextInputStyle,
} from 'discord.js';
import { describe, expect, test } from 'vitest';
import { bodyFaults } from './judge-message.ts';
import { schemaFaults } from './strict.ts';

const command = () =>
  new SlashCommandBuilder()
    .setName('mix')
    .setDescription('How much of each')
    .addStringOption((option) => option.setName('amount').setDescription('How much').setRequired(true))
    .toJSON();

const message = () => ({
  content: 'Here',
  embeds: [new EmbedBuilder().setTitle('Mix').addFields({ name: 'clay', value: '33 lb', inline: true }).toJSON()],
  components: [
    new ActionRowBuilder<ButtonBuilder>()
      .addComponents(new ButtonBuilder().setCustomId('t1:next:1').setLabel('dry it').setStyle(ButtonStyle.Primary))
      .toJSON(),
  ],
  allowed_mentions: { parse: [] },
});

const modal = () =>
  new ModalBuilder()
    .setCustomId('t1:wall')
    .setTitle('Layers')
    .addLabelComponents(
      new LabelBuilder()
        .setLabel('Hot side first')
        .setTextInputComponent(new TextInputBuilder().setCustomId('layers').setStyle(TextInputStyle.Paragraph)),
    )
    .toJSON();

const right = [
  ['command', 'ApplicationCommandCreateRequest', command()],
  ['command in a set', 'ApplicationCommandUpdateRequest', command()],
  ['change of a command', 'ApplicationCommandPatchRequestPartial', { description: 'Other' }],
  ['callback with a message', 'CreateMessageInteractionCallbackRequest', { type: 4, data: message() }],
  ['deferral', 'CreateMessageInteractionCallbackRequest', { type: 5, data: { flags: 64 } }],
  ['callback with an update', 'UpdateMessageInteractionCallbackRequest', { type: 7, data: message() }],
  ['callback with choices', 'ApplicationCommandAutocompleteCallbackRequest', { type: 8, data: { choices: [] } }],
  ['callback with a modal', 'ModalInteractionCallbackRequest', { type: 9, data: modal() }],
  ['edit', 'IncomingWebhookUpdateRequestPartial', message()],
  ['follow-up', 'IncomingWebhookRequestPartial', message()],
  ['message', 'MessageCreateRequest', { ...message(), nonce: '1', enforce_nonce: true }],
  ['edit of a message', 'MessageEditRequestPartial', message()],
] as const;

describe('schemas', () => {
  test.each(right)('a right %s passes', (_, name, body) => {
    expect(schemaFaults(name, body)).toEqual([]);
  });

  test.each(right)('a %s with a key of nobody is refused', (_, name, body) => {
    expect(schemaFaults(name, { ...body, colour: 1 })).toEqual(['body: unknown key colour']);
  });

  test('a key of nobody is found wherever it hides, and named by where it is', () => {
    const [embed] = message().embeds;
    const body = { type: 4, data: { embeds: [{ ...embed, colour: 1 }] } };
    expect(schemaFaults('CreateMessageInteractionCallbackRequest', body)).toEqual([
      'data.embeds.0: unknown key colour',
    ]);
    const [option] = command().options ?? [];
    const wrong = { ...command(), options: [{ ...option, maximum: 3 }] };
    expect(schemaFaults('ApplicationCommandCreateRequest', wrong)).toEqual(['options.0: unknown key maximum']);
  });

  test('what is judged is what goes over the wire: keys without a value are not there', () => {
    expect(schemaFaults('MessageCreateRequest', { ...message(), colour: undefined })).toEqual([]);
    expect(new AttachmentBuilder(Buffer.from('x')).toJSON()).toBeDefined();
  });
});

describe('what discord.js always adds', () => {
  test.each(right.filter(([, name]) => /Callback|Webhook|Edit/.test(name)))(
    'its false is let through: %s',
    (_, name, body) => {
      const habits = { tts: false, enforce_nonce: false };
      const sent = 'data' in body ? { ...body, data: { ...body.data, ...habits } } : { ...body, ...habits };
      expect(bodyFaults(name, sent)).toEqual([]);
    },
  );

  test('anything else of that name is not', () => {
    const sent = { type: 4, data: { ...message(), enforce_nonce: true } };
    expect(bodyFaults('CreateMessageInteractionCallbackRequest', sent)).toEqual(['data: unknown key enforce_nonce']);
    expect(bodyFaults('MessageEditRequestPartial', { ...message(), tts: true })).toEqual(['body: unknown key tts']);
  });
});
