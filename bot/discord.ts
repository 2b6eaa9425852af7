import { startDiscord } from '../adapters/discord/gateway.ts';
import { slashManner } from '../adapters/discord/manner.ts';
import type { FileOut } from '../adapters/discord/message/payload.ts';
import { reminderRest, reminderSender } from '../adapters/discord/reminder.ts';
import { reachOf } from '../adapters/discord/reminder-reach.ts';
import type { Reply } from '../commands/card.ts';
import { commands } from '../commands/registry.ts';
import { answerWith } from './answer-with.ts';
import { createBudget } from './budget.ts';
import type { Config, DiscordConfig } from './config.ts';
import { openKept } from './discord-store.ts';
import { openLog } from './log.ts';
import { createMetrics, type Metrics } from './metrics.ts';
import { notKept, remindersOf, sentKeep_ms } from './reminders.ts';
import type { Running } from './serve.ts';
import { createWork, type Work } from './work/work.ts';

const manner = slashManner(commands);
const nobody = { asker: 'nobody', place: 'nowhere' };
const sweep_ms = 3_600_000;

/** The bot on Discord, until it is told to stop. Resolves once it is connected. */
export async function openDiscord(
  config: Pick<Config, 'log' | 'data' | 'databaseUrl'> & { readonly discord: DiscordConfig },
  {
    now = () => new Date(),
    metrics = createMetrics(),
    poll_ms,
  }: { now?: () => Date; metrics?: Metrics; poll_ms?: number } = {},
): Promise<Running> {
  const log = await openLog(config);
  const warn = (err: unknown) => log.warn({ err }, 'the store failed');
  const { memory, handled, states, outbox, close, ...kept } = await openKept(config, warn);
  const work = createWork({ memory });
  // The worker loads everything at its first question. With the first that anybody types, so that hardly anybody waits for
  // it, and a bot that nobody asks takes a third less memory.
  let isWarm = false;
  const warm = () => {
    if (isWarm) return;
    isWarm = true;
    work.answer({ command: 'help', options: {}, ...nobody }, { ...nobody, now: now() }).catch(warn);
  };
  const { token, api, shards } = config.discord;
  const rest = reminderRest({ token, api });
  const calling = { rest, states, now, log };
  const reminders = remindersOf('discord', { outbox, send: reminderSender(calling), now, log, poll_ms });
  const discord = startDiscord({
    token,
    api,
    shards,
    commands,
    answer: (ask, who, early) => {
      const { asker, place, mayModerate } = who;
      const reach = async () => (outbox ? reachOf(who, calling) : notKept);
      const context = { asker, place, mayModerate, now: now(), memory, reach, manner, ...(early ? { early } : {}) };
      return answerWith(ask, context, work);
    },
    picture: (reply) => pictureOf(reply, work),
    memory,
    handled,
    states,
    budget: createBudget(),
    now,
    log,
    tell(what) {
      metrics.tell('discord', what);
      warm();
    },
  });
  const missing = () => [...(discord.isConnected() ? [] : ['a connection to Discord']), ...kept.missing()];
  const sweeping = setInterval(() => {
    const long = new Date(now().getTime() - sentKeep_ms);
    Promise.all([handled.sweep(now()), states.sweep(now()), outbox?.sweep(long)]).catch(warn);
  }, sweep_ms);
  sweeping.unref();
  const stop = async () => {
    clearInterval(sweeping);
    await Promise.all([reminders.stop(), discord.stop()]);
    rest.clearHashSweeper();
    rest.clearHandlerSweeper();
    await work.close();
    await close();
  };
  try {
    await discord.ready;
  } catch (error) {
    await stop();
    throw error;
  }
  reminders.start();
  log.info({ commands: commands.length }, 'connected to Discord');
  return { stop, missing };
}

/** The platform's own page is dark for most, and a dark picture does not glare on a light one. */
const theme = 'dark';

/** Only what was drawn for the answer: a picture of its words would say nothing new. */
async function pictureOf({ card }: Extract<Reply, { kind: 'card' }>, work: Work): Promise<FileOut | undefined> {
  const shown = card.drawings?.[0] ?? card.chart;
  if (!shown) return undefined;
  const bytes = await work.picture(card, undefined, { units: card.units, theme });
  return { name: `${card.command.replaceAll(' ', '-')}.png`, bytes, alt: shown.alt };
}
