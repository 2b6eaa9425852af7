import { DiscordAPIError, InteractionResponseType, MessageFlags, type REST, Routes } from 'discord.js';
import { bodyOf, type Message } from './message/payload.ts';
import { directChannel, userOf } from './reminder.ts';
import type { Request } from './request.ts';

export interface Modal {
  readonly custom_id: string;
  readonly title: string;
  readonly components: readonly object[];
}

export interface Choice {
  readonly name: string;
  readonly value: string;
}

/** The first answer to a request, as plain data. */
export type First =
  | { readonly kind: 'message'; readonly message: Message; readonly ephemeral: boolean }
  | { readonly kind: 'update'; readonly message: Message }
  | { readonly kind: 'defer'; readonly ephemeral: boolean }
  | { readonly kind: 'defer-update' }
  | { readonly kind: 'choices'; readonly choices: readonly Choice[] }
  | { readonly kind: 'modal'; readonly modal: Modal };

type To = Pick<Request, 'id' | 'token' | 'application'>;

/** The way back to who asked: the same for every way in. */
export interface Door {
  first(to: To, first: First): Promise<void>;
  /** The first answer's message, or the message whose button was pressed. */
  edit(to: To, message: Message): Promise<void>;
  remove(to: To): Promise<void>;
  followUp(to: To, message: Message, ephemeral: boolean): Promise<void>;
  /** By the bot itself, once an answer's own way has ended: calls the asker in a channel, or in direct messages. */
  call(asker: string, channel: string | undefined, message: Message): Promise<void>;
}

const flags = (ephemeral: boolean): number | undefined => (ephemeral ? MessageFlags.Ephemeral : undefined);

const filesOf = ({ files }: Message) => files.map(({ name, bytes }) => ({ name, data: Buffer.from(bytes) }));

/** Answers need no bot token: the request's own does. Only what comes without a request needs it. */
export function restDoor(rest: REST): Door {
  return {
    async first({ id, token }, first) {
      const files = 'message' in first ? filesOf(first.message) : [];
      await done(
        rest.post(Routes.interactionCallback(id, token), { body: callbackOf(first), files, auth: false }),
        alreadyAcknowledged,
      );
    },
    async edit({ application, token }, message) {
      const route = Routes.webhookMessage(application, token, '@original');
      await rest.patch(route, { body: bodyOf(message), files: filesOf(message), auth: false });
    },
    async remove({ application, token }) {
      await done(rest.delete(Routes.webhookMessage(application, token, '@original'), { auth: false }), unknownMessage);
    },
    async followUp({ application, token }, message, ephemeral) {
      const body = bodyOf(message, flags(ephemeral));
      await rest.post(Routes.webhook(application, token), { body, files: filesOf(message), auth: false });
    },
    async call(asker, channel, message) {
      const user = userOf(asker);
      const body = {
        ...bodyOf({ ...message, content: `<@${user}>` }),
        allowed_mentions: { users: [user] },
      };
      await rest.post(Routes.channelMessages(channel ?? (await directChannel(rest, user))), { body });
    },
  };
}

/**
 * The library sends again what failed on the platform's side. What was taken there all the same, and only its receipt was
 * lost, is then refused as done already: so it is done. Each request is first answered, and its message removed, once.
 */
async function done(sending: Promise<unknown>, already: number): Promise<void> {
  try {
    await sending;
  } catch (error) {
    if (!(error instanceof DiscordAPIError) || Number(error.code) !== already) throw error;
  }
}

const alreadyAcknowledged = 40060;
const unknownMessage = 10008;

/** The body of a first answer as the platform defines it. */
export function callbackOf(first: First): object {
  switch (first.kind) {
    case 'message':
      return {
        type: InteractionResponseType.ChannelMessageWithSource,
        data: bodyOf(first.message, flags(first.ephemeral)),
      };
    case 'update':
      return { type: InteractionResponseType.UpdateMessage, data: bodyOf(first.message) };
    case 'defer':
      return {
        type: InteractionResponseType.DeferredChannelMessageWithSource,
        ...(first.ephemeral ? { data: { flags: MessageFlags.Ephemeral } } : {}),
      };
    case 'defer-update':
      return { type: InteractionResponseType.DeferredMessageUpdate };
    case 'choices':
      return {
        type: InteractionResponseType.ApplicationCommandAutocompleteResult,
        data: { choices: first.choices },
      };
    case 'modal':
      return { type: InteractionResponseType.Modal, data: first.modal };
  }
}

/** Whether the platform took offence at what was sent, not at when or how often: then something plainer may do. */
export const refusesBody = (error: unknown): boolean =>
  error instanceof DiscordAPIError && [invalidBody, tooLarge].includes(Number(error.code));

const invalidBody = 50035;
const tooLarge = 40005;
