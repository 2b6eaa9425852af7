import { createHash } from 'node:crypto';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { FileOut } from '../adapters/matrix/content.ts';
import { type Matrix, startMatrix } from '../adapters/matrix/matrix.ts';
import type { Budget } from '../adapters/matrix/ports.ts';
import { type AskContext, answerLine } from '../commands/answer.ts';
import type { Card, Reply } from '../commands/card.ts';
import type { Ask, Command } from '../commands/command.ts';
import { parseLine } from '../commands/grammar.ts';
import type { Key, Memory } from '../commands/memory.ts';
import { commands } from '../commands/registry.ts';
import { AskError } from '../core/ask-error.ts';
import type { Caution } from '../core/hazard/caution.ts';
import { cautionsFor } from '../core/hazard/cautions.ts';
import { factsIn } from '../core/hazard/words.ts';
import { alone, type Turn } from './alone.ts';
import { answerWith } from './answer-with.ts';
import { createBudget } from './budget.ts';
import { type Config, ConfigError, type MatrixConfig } from './config.ts';
import { openLog } from './log.ts';
import { openMatrixStore } from './matrix-store.ts';
import { createMetrics, type Metrics } from './metrics.ts';
import { notKept, remindersOf } from './reminders.ts';
import type { Running } from './serve.ts';
import { onceEach } from './store/once-each.ts';
import { versions } from './versions.ts';
import { createWork, type Work } from './work/work.ts';

const sweep_ms = 3_600_000;
/** Long after a homeserver would deliver an event again. */
const answered_ms = 30 * 86_400_000;

/** The bot on Matrix, until it is told to stop. Resolves once it is connected. */
export async function openMatrix(
  config: Config & { readonly matrix: MatrixConfig },
  {
    now = () => new Date(),
    budget = createBudget(),
    metrics = createMetrics(),
    poll_ms,
  }: { now?: () => Date; budget?: Budget; metrics?: Metrics; poll_ms?: number } = {},
): Promise<Running & { readonly matrix: Matrix }> {
  const log = await openLog(config);
  const warn = (err: unknown) => log.warn({ err }, 'the store failed');
  const { memory, outbox, states, leases, close } = await openMatrixStore(config, warn);
  /** Whether what is remembered outlives the program. */
  const keeps = config.data !== undefined || config.databaseUrl !== undefined;
  const work = createWork({ memory });
  const { allow, prefix, ...account } = config.matrix;
  const sweeping = setInterval(() => {
    const before = new Date(now().getTime() - answered_ms);
    Promise.all([outbox.sweep(before), states.sweep(now())]).catch(warn);
  }, sweep_ms);
  sweeping.unref();
  const folder = config.data === undefined ? undefined : join(config.data, 'matrix');
  let turn: Turn | undefined;
  const closed = async () => {
    clearInterval(sweeping);
    await work.close();
    await turn?.end();
    await close();
  };
  try {
    // Before the keys are read: two that change them would spoil them for both.
    if (folder !== undefined) mkdirSync(folder, { recursive: true, mode: 0o700 });
    turn = await alone(leases, nameOf(account), {
      ...(folder === undefined ? {} : { file: join(folder, 'holder') }),
      now,
      log,
      lost: endNow,
    });
    const matrix = await startMatrix({
      account,
      allow,
      folder,
      prefix,
      questions: outbox,
      states,
      budget,
      now,
      log,
      isCommand: (line) => commandIn(line) !== undefined,
      isOnMessage: (line) => commands.some(({ name, onMessage }) => onMessage && name === line.trim().toLowerCase()),
      isUrgent,
      isPrivate: (line) => commandIn(line)?.private ?? false,
      answer: (line, who, early) => {
        const reach = async () => (keeps ? matrix.reach(who.place.slice('matrix:'.length)) : notKept);
        const { asking, ...whom } = who;
        const own = onceEach(memory, asking);
        return answerTyped(line, { ...whom, now: now(), memory: own, reach, ...(early ? { early } : {}) }, work);
      },
      cautions: (line, who) => cautionsIn(line, who, memory),
      last: async (who) => {
        const last = await memory.lastAsk(who);
        return last && { command: last.command, options: { ...last.options } };
      },
      recall: ({ command, options }, { asker, place }) => memory.rememberAsk({ command, options, asker, place }),
      files: (reply) => filesOf(reply, work),
      tell: (what) => metrics.tell('matrix', what),
    });
    const reminders = remindersOf('matrix', {
      outbox: keeps ? outbox : undefined,
      send: matrix.remind,
      now,
      log,
      poll_ms,
    });
    reminders.start();
    const missing = () => (matrix.isConnected() ? [] : ['a connection to Matrix']);
    log.info({ user: matrix.userId }, 'connected to Matrix');
    const stop = async () => {
      await reminders.stop();
      await matrix.stop();
      await closed();
    };
    return { stop, missing, matrix };
  } catch (error) {
    await closed();
    if (error instanceof Error && error.name === 'MatrixLoginError') throw new ConfigError(error.message);
    throw error;
  }
}

/**
 * Another process answers for the account: whatever this one still did, even saving its keys in order, would spoil it for
 * that one. Whoever looks after the program starts it again, and then it waits for its turn.
 */
function endNow(): void {
  process.exit(1);
}

/** The same for every process of one account, as far as the settings tell. */
function nameOf({ homeserver, user, token = '' }: Omit<MatrixConfig, 'allow' | 'prefix'>): string {
  const who = user?.replace(/^@/, '').split(':', 1)[0] ?? createHash('sha256').update(token).digest('hex').slice(0, 16);
  return `matrix:${new URL(homeserver).host}:${who}`;
}

const nobody = { asker: '', place: '' };

function asked(line: string, who: { asker: string; place: string } = nobody): Ask | undefined {
  try {
    return parseLine(line, commands, who);
  } catch (error) {
    if (error instanceof AskError) return undefined;
    throw error;
  }
}

/** The command a line begins with, even where the rest of it can't be read. */
function commandIn(line: string): Command | undefined {
  const lower = `${line.trim().toLowerCase()} `;
  const named = commands.filter(({ name }) => lower.startsWith(`${name} `));
  return named.toSorted((a, b) => b.name.length - a.name.length)[0];
}

/** Whether somebody may be hurt: then the answer waits for nothing. */
export function isUrgent(line: string): boolean {
  const name = asked(line)?.command ?? commandIn(line)?.name;
  return commands.some((command: Command) => command.name === name && command.urgent);
}

/** What can hurt in a question that could not be answered; of `again` and `why` in the one they are about. */
export async function cautionsIn(line: string, who: Key, memory: Pick<Memory, 'lastAsk'>): Promise<readonly Caution[]> {
  const command = commandIn(line);
  const last = command?.aboutLast ? await memory.lastAsk(who) : undefined;
  const about = commands.find(({ name }) => name === last?.command);
  const words = [line, ...Object.values(last?.options ?? {})].join(' ');
  const facts = [...(command?.hazards ?? []), ...(about?.hazards ?? []), ...factsIn(words)];
  return cautionsFor({ facts: [...new Set(facts)] });
}

/** A line that can't be read is told so here; one that can goes to whichever thread has time for it. */
export function answerTyped(line: string, context: AskContext, work: Pick<Work, 'answer'>): Promise<Reply> {
  const ask = asked(line, context);
  return ask ? answerWith(ask, context, work) : answerLine(line, { ...context, versions });
}

async function filesOf({ card }: Extract<Reply, { kind: 'card' }>, work: Work): Promise<readonly FileOut[]> {
  const shown = shownOf(card);
  const pictures: FileOut[] = [];
  for (const { id, alt } of shown) {
    const bytes = await work.picture(card, id, { units: card.units, theme: 'light' });
    const name = `${[...card.command.split(' '), id].join('-')}.png`;
    pictures.push({ name, type: 'image/png', bytes, alt, size_px: sizeOf(bytes) });
  }
  const { attachment } = card;
  if (!attachment) return pictures;
  const { name, text } = attachment;
  return [...pictures, { name, type: typeOf(name), bytes: new TextEncoder().encode(text), alt: name }];
}

const typeOf = (name: string): string =>
  name.endsWith('.md') ? 'text/markdown' : name.endsWith('.json') ? 'application/json' : 'text/plain';

/** The first drawing and the chart: only what was drawn for the answer, and no album of it. */
const shownOf = ({ drawings = [], chart }: Card): readonly { readonly id: string; readonly alt: string }[] => [
  ...drawings.slice(0, 1),
  ...(chart ? [{ id: 'chart', alt: chart.alt }] : []),
];

/** Width and height stand at fixed places in a PNG's first chunk. */
function sizeOf(png: Uint8Array): { width: number; height: number } {
  const view = new DataView(png.buffer, png.byteOffset);
  return { width: view.getUint32(16), height: view.getUint32(20) };
}
