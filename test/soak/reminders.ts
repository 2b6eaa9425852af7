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
}: {
  where: Where;
  kills: number;
  many?: number;
  strike?: () => Promise<void>;
}): Promise<Delivered> {
  const peer = await startDiscordPeer({ shards: places, unlimited: true });
  let store = await openStore(where);
  const task: WorkerTask = { where, api: peer.rest, token: peer.token, lease_s };
  const crew = Array.from({ length: workers }, () => supervised(task));
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
      await (strike ? Promise.all(crew.map((each) => each.ready())) : one.ready());
      await sleep(Math.random() * 250);
      if (strike) {
        await store.close();
        await strike();
        store = await openStore(where);
      } else one.kill();
      killed += 1;
    }
    await doneOrStuck(store);
    // Whatever was still to come twice would have come.
    await sleep(lease_s * 1000 + 500);
    const unmarked = await stillWaiting(store);
    return { kills: killed, reminders: set, unmarked, violations: peer.violations, ...counted(peer, set) };
  } finally {
    for (const each of crew) each.end();
    await store.close();
    await peer.close();
  }
}

/** A process that is started again whenever it has ended, as a supervisor would. */
function supervised(task: WorkerTask) {
  let child: ChildProcess;
  let ready: Promise<void>;
  let over = false;
  const begin = () => {
    const own = spawn(process.execPath, [worker, JSON.stringify(task)], { stdio: ['ignore', 'pipe', 'ignore'] });
    child = own;
    ready = new Promise((resolve) => own.stdout.once('data', () => resolve()));
    own.once('exit', () => !over && begin());
  };
  begin();
  return {
    /** That it delivers; of the one that was started last. */
    async ready(): Promise<void> {
      for (let waited: ChildProcess | undefined; waited !== child; ) {
        waited = child;
        await Promise.race([ready, new Promise((resolve) => child.once('exit', resolve))]);
      }
    },
    kill: () => child.kill('SIGKILL'),
    end(): void {
      over = true;
      child.kill('SIGKILL');
    },
  };
}

/** Waits while there are fewer from look to look: a busy machine takes its time. */
async function doneOrStuck(store: Store): Promise<void> {
  let least = Number.POSITIVE_INFINITY;
  let since_ms = performance.now();
  while (performance.now() - since_ms < 30_000) {
    const left = await stillWaiting(store);
    if (left === 0) return;
    if (left < least) [least, since_ms] = [left, performance.now()];
    await sleep(200);
  }
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
