import type { APIModalInteractionResponseCallbackData } from 'discord.js';
import type { Clock } from './clock.ts';
import { choiceListFaults } from './judge-command.ts';
import { modalFaults } from './judge-components.ts';
import {
  bodyFaults,
  flag,
  isRecord,
  type MessageBody,
  mentionFaults,
  messageFaults,
  type SentFile,
} from './judge-message.ts';
import type { Kept, Messages } from './messages.ts';
import { type Court, refuse } from './refusal.ts';
import type { Seen, Sight } from './seen.ts';
import type { SchemaName } from './strict.ts';
import type { Place, User } from './world.ts';

/** Time to the first answer, and the life of the token after it (interactions/receiving-and-responding). */
export const answerWithin_ms = 3000;
export const tokenLives_ms = 15 * 60_000;

export const interactionType = { command: 2, component: 3, autocomplete: 4, modal: 5 } as const;

export const callbackType = {
  message: 4,
  deferredMessage: 5,
  deferredUpdate: 6,
  update: 7,
  choices: 8,
  modal: 9,
} as const;

export interface Interaction {
  readonly id: string;
  readonly token: string;
  readonly type: number;
  readonly user: User;
  readonly place: Place;
  readonly at: number;
  readonly sight: Sight;
  /** The message whose component was used, or from which the modal came. */
  readonly source?: Kept;
  /** What the member's client sent did not reach a connected bot in time: a late answer is not the bot's fault. */
  excused: boolean;
  acknowledged?: number;
  /** The last thing done for it was done, but the bot was told that it failed: it may try again. */
  unheard?: boolean;
  original?: Kept;
  followUps: number;
}

export interface Opening
  extends Pick<Interaction, 'id' | 'token' | 'type' | 'user' | 'place' | 'sight'>,
    Partial<Pick<Interaction, 'source'>> {}

export interface Interactions {
  /** Starts the clock; `answered` comes true with the first accepted callback, false when time ran out. */
  open(given: Opening): { readonly interaction: Interaction; readonly answered: Promise<boolean> };
  callback(id: string, token: string, body: unknown, files: readonly SentFile[]): Interaction;
  /** The message that a token's address means: `@original` or an id. */
  message(token: string, which: string): Kept;
  edit(token: string, which: string, body: unknown, files: readonly SentFile[]): Kept;
  remove(token: string, which: string, given: { readonly unheard: boolean }): void;
  followUp(token: string, body: unknown, files: readonly SentFile[]): Kept;
  close(): void;
}

const schemaOf: Record<number, SchemaName> = {
  4: 'CreateMessageInteractionCallbackRequest',
  5: 'CreateMessageInteractionCallbackRequest',
  6: 'UpdateMessageInteractionCallbackRequest',
  7: 'UpdateMessageInteractionCallbackRequest',
  8: 'ApplicationCommandAutocompleteCallbackRequest',
  9: 'ModalInteractionCallbackRequest',
};

export function openInteractions(given: {
  readonly clock: Clock;
  readonly court: Court;
  readonly messages: Messages;
}): Interactions {
  const { clock, court, messages } = given;
  const all = new Map<string, Interaction>();
  const waiting = new Map<string, { settle(answered: boolean): void; cancel(): void }>();
  const named = (interaction: Interaction) => interaction.sight.seen.did;

  function runOut(interaction: Interaction): void {
    if (!interaction.excused) court.note(`${named(interaction)}: no answer within 3 s`);
    const autocomplete = interaction.type === interactionType.autocomplete;
    const error = autocomplete ? 'Loading options failed' : 'The application did not respond';
    interaction.sight.change({ state: 'failed', error });
    waiting.get(interaction.id)?.settle(false);
  }

  function tokenRunsOut(interaction: Interaction): void {
    const first = interaction.original?.view;
    if (!first?.loading || first.deleted) return;
    court.note(`${named(interaction)}: deferred and never filled within 15 min`);
    interaction.sight.change({ state: 'failed', error: 'The application did not respond' });
  }

  /** An interaction whose token still lives, for what comes after the callback. */
  function live(token: string): Interaction {
    const interaction = [...all.values()].find((each) => each.token === token);
    if (interaction?.acknowledged === undefined) {
      court.note(
        `${interaction ? named(interaction) : token}: the webhook of an interaction that was not acknowledged`,
      );
      throw refuse.unknownWebhook();
    }
    if (clock.now() - interaction.at > tokenLives_ms) {
      const late_s = Math.round((clock.now() - interaction.at) / 1000);
      court.note(`${named(interaction)}: token used after ${late_s} s, it lives 15 min`);
      throw refuse.tokenIsOver();
    }
    return interaction;
  }

  function messageOf(token: string, which: string): { interaction: Interaction; kept: Kept } {
    const interaction = live(token);
    const kept = which === '@original' ? interaction.original : messages.find(which);
    if (!kept || kept.view.deleted) {
      if (!interaction.unheard) court.note(`${named(interaction)}: message ${which} is not there`);
      interaction.unheard = false;
      throw refuse.unknownMessage();
    }
    return { interaction, kept };
  }

  function judgeMessage(what: string, body: MessageBody, files: readonly SentFile[], before?: Kept): void {
    const flags = (body.flags ?? 0) | ((before?.view.flags ?? 0) & flag.componentsV2);
    const attachments = before?.view.attachments ?? [];
    court.demand(
      what,
      messageFaults({ body: { ...body, flags }, files, before: attachments, edit: before !== undefined }),
    );
    for (const fault of mentionFaults(body)) court.note(`${what}: ${fault}`);
    if (before && isBlank(before, body, files)) court.demand(what, ['an edit leaves an empty message']);
  }

  function accept(interaction: Interaction, type: number): void {
    interaction.acknowledged = type;
    waiting.get(interaction.id)?.cancel();
    clock.after(tokenLives_ms - (clock.now() - interaction.at), () => tokenRunsOut(interaction));
  }

  return {
    open(opening) {
      const interaction: Interaction = { ...opening, at: clock.now(), excused: false, followUps: 0 };
      all.set(interaction.id, interaction);
      const cancel = clock.after(answerWithin_ms + 1, () => runOut(interaction));
      const answered = new Promise<boolean>((settle) => waiting.set(interaction.id, { settle, cancel }));
      return { interaction, answered };
    },

    callback(id, token, body, files) {
      const interaction = all.get(id);
      if (interaction === undefined || interaction.token !== token) {
        court.note(`callback of an interaction that does not exist: ${id}`);
        throw refuse.unknownInteraction();
      }
      const what = `${named(interaction)}: callback`;
      if (interaction.acknowledged !== undefined) {
        if (!interaction.unheard) court.note(`${what}: acknowledged twice`);
        interaction.unheard = false;
        throw refuse.alreadyAcknowledged();
      }
      const age_ms = clock.now() - interaction.at;
      if (age_ms > answerWithin_ms) {
        if (!interaction.excused) court.note(`${what}: late, after ${age_ms} ms of 3000`);
        throw refuse.unknownInteraction();
      }
      const type = isRecord(body) ? Number(body.type) : Number.NaN;
      court.demand(what, typeFaults(interaction, type));
      court.demand(what, bodyFaults(schemaOf[type]!, body));
      const data = (isRecord(body) ? (body.data ?? {}) : {}) as MessageBody;
      answer(interaction, { type, data, files, what });
      waiting.get(id)?.settle(true);
      return interaction;
    },

    message: (token, which) => messageOf(token, which).kept,

    edit(token, which, raw, files) {
      const { interaction, kept } = messageOf(token, which);
      const what = `${named(interaction)}: edit`;
      court.demand(what, bodyFaults('IncomingWebhookUpdateRequestPartial', raw));
      judgeMessage(what, raw as MessageBody, files, kept);
      messages.edit(kept, raw as MessageBody, files);
      if (kept === interaction.original) interaction.sight.change({ state: 'answered' });
      return kept;
    },

    remove(token, which, { unheard }) {
      const { interaction, kept } = messageOf(token, which);
      messages.remove(kept);
      interaction.unheard = unheard;
    },

    followUp(token, raw, files) {
      const interaction = live(token);
      const what = `${named(interaction)}: follow-up`;
      court.demand(what, bodyFaults('IncomingWebhookRequestPartial', raw));
      const body = raw as MessageBody;
      judgeMessage(what, body, files);
      const ephemeral = ((body.flags ?? 0) & flag.ephemeral) !== 0;
      const first = interaction.original;
      // Straight after a deferral a follow-up fills the deferred message, which stays as visible as it was announced.
      if (first?.view.loading && !first.view.deleted) {
        if (first.view.ephemeral !== ephemeral) {
          court.note(`${what}: ${visible(ephemeral)}, but the deferral was ${visible(first.view.ephemeral)}`);
        }
        messages.edit(first, body, files);
        interaction.sight.change({ state: 'answered' });
        return first;
      }
      interaction.followUps += 1;
      // The limit of five is from memory.
      if (interaction.place.kind === 'user-install' && interaction.followUps > 5) {
        court.demand(what, ['more than 5 follow-ups where the bot is not a member']);
      }
      const { place, sight } = interaction;
      return messages.create({ place, body, files, sight, ephemeral, asked: askedBy(interaction) });
    },

    close() {
      for (const { cancel, settle } of waiting.values()) {
        cancel();
        settle(false);
      }
    },
  };

  function answer(
    interaction: Interaction,
    given: {
      readonly type: number;
      readonly data: MessageBody;
      readonly files: readonly SentFile[];
      readonly what: string;
    },
  ): void {
    const { type, data, files, what } = given;
    const { sight, place, source } = interaction;
    const ephemeral = ((data.flags ?? 0) & flag.ephemeral) !== 0;
    const asked = askedBy(interaction);
    if (type === callbackType.message) {
      judgeMessage(what, data, files);
      accept(interaction, type);
      interaction.original = messages.create({ place, body: data, files, sight, ephemeral, asked });
      sight.change({ state: 'answered' });
    } else if (type === callbackType.deferredMessage) {
      court.demand(
        what,
        (data.flags ?? 0) & ~flag.ephemeral ? [`a deferral can only be ephemeral, not ${data.flags}`] : [],
      );
      accept(interaction, type);
      interaction.original = messages.create({ place, body: {}, sight, ephemeral, loading: true, asked });
      sight.change({ state: 'deferred' });
    } else if (type === callbackType.choices) {
      const { choices = [] } = data as Pick<Seen, 'choices'>;
      court.demand(what, choiceListFaults(choices));
      accept(interaction, type);
      sight.change({ state: 'autocomplete', choices });
    } else if (type === callbackType.modal) {
      const modal = data as unknown as APIModalInteractionResponseCallbackData;
      court.demand(what, modalFaults(modal));
      accept(interaction, type);
      sight.change({ state: 'modal', modal });
    } else if (source) {
      if (type === callbackType.update) judgeMessage(what, data, files, source);
      accept(interaction, type);
      interaction.original = source;
      source.sights.add(sight);
      if (type === callbackType.update) messages.edit(source, data, files);
      sight.change({ messages: [source.view], state: type === callbackType.update ? 'answered' : 'deferred' });
    }
  }
}

function typeFaults(interaction: Interaction, type: number): readonly string[] {
  const { message, deferredMessage, deferredUpdate, update, choices, modal } = callbackType;
  const may: Record<number, readonly number[]> = {
    [interactionType.command]: [message, deferredMessage, modal],
    [interactionType.autocomplete]: [choices],
    [interactionType.component]: [message, deferredMessage, deferredUpdate, update, modal],
    [interactionType.modal]: [message, deferredMessage, ...(interaction.source ? [deferredUpdate, update] : [])],
  };
  return may[interaction.type]?.includes(type) ? [] : [`type ${type} does not answer this kind of interaction`];
}

/** Whether nothing would be left of a message after an edit. */
function isBlank({ view }: Kept, body: MessageBody, files: readonly SentFile[]): boolean {
  const content = body.content === undefined ? view.content : (body.content ?? '');
  const lists = (['embeds', 'components'] as const).map((key) => (body[key] === undefined ? view[key] : body[key]));
  const attached = (body.attachments ?? view.attachments).length + files.length;
  return content.trim() === '' && attached === 0 && lists.every((list) => !list?.length);
}

const visible = (ephemeral: boolean) => (ephemeral ? 'ephemeral' : 'for everybody');

const askedBy = ({ id, type, user }: Interaction) => ({ id, type, user });
