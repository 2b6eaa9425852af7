import { type ChildProcess, spawn } from 'node:child_process';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { openStore, type Store, type Where } from '../../bot/store/open.ts';
import type { NewReminder } from '../../commands/memory-weeks.ts';
import { type Peer, startDiscordPeer } from '../peers/discord/peer.ts';
import type { WorkerTask } from './reminder-worker.ts';

const worker = fileURLToPath(new URL('./reminder-worker.ts', import.meta.url));

export interface Delivered {
  readonly kills: number;
  readonly reminders: number;
  /** Due and never arrived. */
  readonly lost: readonly string[];
  /** Arrived twice or more. */
  readonly doubled: readonly string[];
  /** Arrived, and still waiting in the store. */
  readonly unmarked: number;
  readonly violations: readonly string[];
}

const workers = 3;
const lease_s = 2;
const places = 20;
const asker = 'discord:100000000000000001';

/**
 * Three processes deliver from one store to the loopback platform. Again and again one of them is killed while it works,
 * and started again; or `strike` breaks something else. There are always reminders due, `many` at a time.
 */
export async function killDelivering({
  where,
  kills,
  many = 2000,
  strike,
  patience_ms = 60_000,
}: {
  where: Where;
  kills: number;
  many?: number;
  strike?: () => Promise<void>;
  patience_ms?: number;
}): Promise<Delivered> {
  const peer = await startDiscordPeer({ shards: places, unlimited: true });
  let store = await openStore(where);
  const task: WorkerTask = { where, api: peer.rest, token: peer.token, lease_s };
  const crew = Array.from({ length: workers }, () => start(task));
  let set = 0;
  let killed = 0;
  try {
    while (killed < kills) {
      if ((await stillWaiting(store)) < many / 10) {
        await setDue(store, peer, set, many);
        set += many;
      }
      const at = Math.floor(Math.random() * workers);
      const one = crew[at]!;
      await Promise.race([one.ready, sleep(5000)]);
      await sleep(Math.random() * 250);
      if (strike) {
        await store.close();
        await strike();
        store = await openStore(where);
      } else {
        one.child.kill('SIGKILL');
        crew[at] = start(task);
      }
      killed += 1;
    }
    for (const end = performance.now() + patience_ms; (await stillWaiting(store)) > 0; await sleep(100)) {
      if (performance.now() > end) break;
    }
    // Whatever was still to come twice would have come.
    await sleep(lease_s * 1000 + 500);
    const unmarked = await stillWaiting(store);
    return { kills: killed, reminders: set, unmarked, violations: peer.violations, ...counted(peer, set) };
  } finally {
    for (const { child } of crew) child.kill('SIGKILL');
    await store.close();
    await peer.close();
  }
}

function start(task: WorkerTask): { readonly child: ChildProcess; readonly ready: Promise<void> } {
  const child = spawn(process.execPath, [worker, JSON.stringify(task)], { stdio: ['ignore', 'pipe', 'ignore'] });
  return { child, ready: new Promise((resolve) => child.stdout.once('data', () => resolve())) };
}

/** In so many channels, in one moment; the words tell them apart. */
async function setDue({ memory }: Store, peer: Peer, from: number, many: number): Promise<void> {
  const dueAt = new Date();
  const wanted = Array.from({ length: many }, (_, i): NewReminder => {
    const at = (from + i) % places;
    const place = `discord:${peer.guilds[at]}:${peer.channelId({ guild: at })}`;
    return {
      place,
      dueAt,
      zone: 'UTC',
      what: `weigh lining ${from + i}.`,
      holds: ['no rain into it'],
      facts: ['hot-work'],
    };
  });
  await memory.setReminders(asker, wanted);
}

const stillWaiting = async ({ memory }: Store): Promise<number> => (await memory.reminders(asker)).length;

function counted({ seen }: Peer, set: number): Pick<Delivered, 'lost' | 'doubled'> {
  const times = new Map<number, number>();
  for (const { messages } of seen) {
    const said = messages[0]?.embeds[0]?.description ?? messages[0]?.content ?? '';
    const number = /weigh lining (\d+)\./.exec(said)?.[1];
    if (number !== undefined) times.set(Number(number), (times.get(Number(number)) ?? 0) + 1);
  }
  const all = Array.from({ length: set }, (_, n) => n);
  return {
    lost: all.filter((n) => !times.has(n)).map((n) => `${n} never came`),
    doubled: all.flatMap((n) => ((times.get(n) ?? 0) > 1 ? [`${n} came ${times.get(n)} times`] : [])),
  };
}
