import { DiscordAPIError, type REST, Routes } from 'discord.js';
import type { Reach } from '../../commands/reach.ts';
import { saying } from './message/error.ts';
import { bodyOf } from './message/payload.ts';
import { closedDirect, directChannel, userOf } from './reminder.ts';
import type { Who } from './request.ts';
import type { States } from './state.ts';

/** So long a direct channel that took a message is taken to be open; a closed one shows when it is written to. */
const open_s = 30 * 86_400;

/**
 * Where somebody can be called: in the channel they ask in, where the bot is a member and may write; else in direct
 * messages. Whether these are closed is only told by sending one, so the first time one is sent.
 */
export async function reachOf(
  who: Who,
  { rest, states, now }: { readonly rest: REST; readonly states: States; readonly now: () => Date },
): Promise<Reach> {
  const { asker, channel, guild } = who;
  if (channel !== undefined && who.writes) {
    return { kind: 'here', place: `discord:${guild ?? 'dm'}:${channel}`, said: here(guild !== undefined) };
  }
  const key = `discord:direct:${userOf(asker)}`;
  const known = await states.get(key, now()).catch(() => undefined);
  if (typeof known === 'string') return { kind: 'direct', place: `discord:dm:${known}`, said: directly };
  try {
    const direct = await directChannel(rest, userOf(asker));
    await rest.post(Routes.channelMessages(direct), { body: bodyOf(saying(firstWord)) });
    await states.put(key, direct, { now: now(), keep_s: open_s, asker }).catch(() => {});
    return { kind: 'direct', place: `discord:dm:${direct}`, said: tried };
  } catch (error) {
    const closed = error instanceof DiscordAPIError && error.code === closedDirect;
    return {
      kind: 'none',
      why: closed ? noWay : 'I cannot write here by myself, and could not reach you directly just now',
    };
  }
}

const here = (others: boolean): string =>
  others ? 'I write to you in this channel, where others read it too.' : 'I write to you here.';
const directly = 'I write to you in direct messages: here I cannot write by myself.';
const tried = `${directly} I have sent a first one to see that they arrive.`;
const firstWord = 'Your reminders will come here. This is a first word, to see that it arrives.';
const noWay = 'I cannot write here by myself, and you take no direct messages from me';
