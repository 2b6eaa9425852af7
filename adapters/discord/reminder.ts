import { DiscordAPIError, HTTPError, RateLimitError, REST, Routes } from 'discord.js';
import { type Due, type Sender, type Sent, saidOf } from '../../commands/remind/due.ts';
import { letterBody, plainLetterBodies } from './reminder-message.ts';

export interface ReminderParts {
  readonly rest: REST;
  readonly now: () => Date;
  readonly log: { warn(about: object, what: string): void };
}

/**
 * A way to the platform for what nobody waits for: it never takes all of the requests a second that the bot has, and
 * says when it is limited instead of waiting in silence.
 */
export const reminderRest = ({
  token,
  api,
  perSecond = 40,
}: {
  token: string;
  api?: string | undefined;
  perSecond?: number;
}): REST =>
  new REST({
    ...(api === undefined ? {} : { api }),
    retries: 0,
    timeout: 10_000,
    rejectOnRateLimit: () => true,
    globalRequestsPerSecond: perSecond,
  }).setToken(token);

/** The platform knows a message by its nonce for "the past few minutes"; certainly for these. */
const nonceKnown_s = 120;
const pageSize = 100;
const mostPages = 5;

interface SeenMessage {
  readonly id: string;
  readonly author: { readonly id: string };
  readonly embeds: readonly { readonly footer?: { readonly text: string } }[];
  readonly content: string;
}

/** Writes reminders into the channel they were asked for in, or where that is closed to the asker directly. */
export function reminderSender(parts: ReminderParts): Sender {
  const { rest, now, log } = parts;
  let me: string | undefined;

  return async (due) => {
    const { place, asker } = due.reminder;
    const channel = channelOf(place);
    const sent = channel === undefined ? { kind: 'gone' as const, fault: 'no channel' } : await into(channel, due, []);
    if (sent.kind !== 'gone' || place.startsWith('discord:dm:')) return sent;
    const direct = await directChannel(rest, userOf(asker)).catch((error) => faultOf(error));
    if (typeof direct !== 'string') return direct;
    return into(direct, due, ['I may no longer write where you asked for it.']);
  };

  async function into(channel: string, due: Due, remarks: readonly string[]): Promise<Sent> {
    try {
      const before = await wasSent(channel, due);
      if (before === 'yes') return { kind: 'sent' };
      const said = saidOf(due.reminder, { now: now(), mayBeRepeat: before === 'unknown' });
      const letter = {
        said: { ...said, remarks: [...remarks, ...said.remarks] },
        user: userOf(due.reminder.asker),
        nonce: due.key.slice(0, 25),
      };
      await post(channel, letter);
      return { kind: 'sent' };
    } catch (error) {
      return faultOf(error);
    }
  }

  async function post(channel: string, letter: Parameters<typeof letterBody>[0]): Promise<void> {
    try {
      await rest.post(Routes.channelMessages(channel), { body: letterBody(letter) });
    } catch (error) {
      if (!(error instanceof DiscordAPIError) || error.status !== 400) throw error;
      log.warn({ err: error }, 'a reminder was refused as it was, and is sent plainly');
      for (const body of plainLetterBodies(letter)) await rest.post(Routes.channelMessages(channel), { body });
    }
  }

  /** Of a try that nobody knows the end of: the nonce answers for the last minutes, the channel itself for longer. */
  async function wasSent(channel: string, { reminder, perhapsSent }: Due): Promise<'yes' | 'no' | 'unknown'> {
    if (!perhapsSent) return 'no';
    if (perhapsSent.tries <= 2 && perhapsSent.ago_s < nonceKnown_s) return 'no';
    me ??= ((await rest.get(Routes.user())) as { id: string }).id;
    const oldest = snowflakeAt(reminder.dueAt.getTime() - 60_000);
    let before: string | undefined;
    for (let page = 0; page < mostPages; page++) {
      const query = new URLSearchParams({ limit: String(pageSize), ...(before === undefined ? {} : { before }) });
      const found = (await readable(rest.get(Routes.channelMessages(channel), { query }))) as
        | readonly SeenMessage[]
        | undefined;
      // Who may not read the history is given an empty one.
      if (!found || (found.length === 0 && page === 0)) return 'unknown';
      if (found.some((one) => one.author.id === me && speaksOf(one, reminder.id))) return 'yes';
      before = found.at(-1)?.id;
      if (found.length < pageSize || before === undefined || BigInt(before) < oldest) return 'no';
    }
    return 'unknown';
  }
}

/** Undefined where the bot may not read. */
async function readable<Value>(reading: Promise<Value>): Promise<Value | undefined> {
  try {
    return await reading;
  } catch (error) {
    if (error instanceof DiscordAPIError && error.status === 403) return undefined;
    throw error;
  }
}

const speaksOf = ({ embeds, content }: SeenMessage, id: string): boolean =>
  [content, ...embeds.map(({ footer }) => footer?.text ?? '')].some((text) => text.includes(`Reminder ${id}`));

const epoch_ms = 1_420_070_400_000;
const snowflakeAt = (ms: number): bigint => BigInt(Math.max(0, Math.floor(ms) - epoch_ms)) << 22n;

/** `discord:<server>:<channel>`, `discord:dm:<channel>`. */
const channelOf = (place: string): string | undefined => place.split(':')[2];
export const userOf = (asker: string): string => asker.slice('discord:'.length);

export async function directChannel(rest: REST, user: string): Promise<string> {
  const { id } = (await rest.post(Routes.userChannels(), { body: { recipient_id: user } })) as { id: string };
  return id;
}

/** They take no direct messages from the bot. */
export const closedDirect = 50007;
const tooManyDirect = 40003;

export function faultOf(error: unknown): Exclude<Sent, { kind: 'sent' }> {
  const fault = (error instanceof Error ? `${error.name}: ${error.message}` : String(error)).slice(0, 200);
  if (error instanceof RateLimitError) {
    const wait_s = Math.max(error.retryAfter, error.timeToReset, 50) / 1000;
    return { kind: 'later', fault, wait_s, everywhere: error.global };
  }
  if (error instanceof DiscordAPIError) {
    if (error.code === tooManyDirect) return { kind: 'later', fault, wait_s: 60 };
    if (error.status === 401) return { kind: 'later', fault, wait_s: 60, everywhere: true };
    if (error.status === 429) return { kind: 'later', fault, wait_s: 5 };
    return { kind: 'gone', fault };
  }
  if (error instanceof HTTPError) return { kind: 'later', fault, perhaps: true };
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const refused = ['ECONNREFUSED', 'ENOTFOUND', 'EAI_AGAIN'].includes(code);
  return { kind: 'later', fault, ...(refused ? { everywhere: true } : { perhaps: true }) };
}
