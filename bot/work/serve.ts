import type { MessagePort } from 'node:worker_threads';
import { picturesOf } from '../../adapters/picture/pictures.ts';
import { pngOf } from '../../adapters/picture/png.ts';
import { layout_px } from '../../adapters/picture/theme.ts';
import { answerAsk } from '../../commands/answer.ts';
import type { Card } from '../../commands/card.ts';
import type { Key, Memory } from '../../commands/memory.ts';
import { versions } from '../versions.ts';
import { errorOf, type Fault, type FromWorker, faultOf, type Job, type ToWorker } from './messages.ts';

interface Waiting {
  readonly resolve: (value: unknown) => void;
  readonly reject: (error: Error) => void;
}

/** The worker's side: does each job and sends back what came of it. */
export function serve(port: MessagePort, early: readonly ToWorker[]): void {
  const calls = new Map<number, Waiting>();
  const send = (message: FromWorker) => port.postMessage(message);
  let lastCall = 0;
  const memory = memoryThrough((method, ...args) => {
    const call = ++lastCall;
    return new Promise<never>((resolve, reject) => {
      calls.set(call, { resolve: resolve as Waiting['resolve'], reject });
      send({ kind: 'memory', call, method, args });
    });
  });
  const settle = (call: number, then: (waiting: Waiting) => void) => {
    const waiting = calls.get(call);
    calls.delete(call);
    if (waiting) then(waiting);
  };
  const hear = (message: ToWorker) => {
    if (message.kind === 'remembered') settle(message.call, ({ resolve }) => resolve(message.value));
    else if (message.kind === 'forgotten') settle(message.call, ({ reject }) => reject(errorOf(message.fault)));
    else void work(message.id, message.job);
  };
  const work = async (id: number, job: Job) => {
    try {
      const value = owned(await done(job, memory, (card) => send({ kind: 'early', id, card })));
      port.postMessage(
        { kind: 'done', id, value } satisfies FromWorker,
        value instanceof Uint8Array ? [value.buffer as ArrayBuffer] : [],
      );
    } catch (error) {
      send({ kind: 'failed', id, fault: faultOf(error) satisfies Fault });
    }
  };
  port.on('message', hear);
  for (const message of early) hear(message);
}

/** Bytes in memory of their own, that can change hands: a copy would be made by the thread that people wait for. */
const owned = (value: unknown): unknown =>
  value instanceof Uint8Array && value.byteLength !== value.buffer.byteLength ? new Uint8Array(value) : value;

async function done(job: Job, memory: Memory, early: (card: Card) => void): Promise<unknown> {
  if (job.kind === 'answer')
    return answerAsk(job.ask, { ...job.context, memory, versions, ...(job.early ? { early } : {}) });
  const { card, which, look } = job;
  const pictures = picturesOf(card);
  const picture = which === undefined ? pictures[0] : pictures.find(({ id }) => id === which);
  if (!picture) throw new RangeError(`no picture "${which}" among ${pictures.map(({ id }) => id).join(', ')}`);
  return pngOf(await picture.svg(look), { width_px: look.width_px ?? layout_px });
}

type Call = (method: keyof Memory, ...args: readonly unknown[]) => Promise<never>;

/** Every method of the port, so that none is forgotten here when the port grows. */
const methods = {
  lastAsk: byKey,
  rememberAsk: asIs,
  units: byKey,
  setUnits: asIs,
  saveBuild: asIs,
  build: asIs,
  builds: asIs,
  revisions: asIs,
  dropBuild: asIs,
  shareBuild: asIs,
  sharedBuild: asIs,
  prices: byKey,
  setPrice: asIs,
  dropPrice: asIs,
  zone: asIs,
  setZone: asIs,
  draft: byKey,
  keepDraft: byKey,
  setReminders: asIs,
  reminders: asIs,
  dropReminders: asIs,
  openChecklist: byKey,
  checklist: asIs,
  checklists: asIs,
  tick: asIs,
  untick: asIs,
  dropChecklist: asIs,
  addEntry: asIs,
  entries: asIs,
  dropEntry: asIs,
  kept: asIs,
  forget: asIs,
} satisfies Record<keyof Memory, (call: Call, method: keyof Memory) => unknown>;

function asIs(call: Call, method: keyof Memory) {
  return (...args: readonly unknown[]) => call(method, ...args);
}

/** A key may be a whole context, which does not cross between threads. */
function byKey(call: Call, method: keyof Memory) {
  return ({ asker, place }: Key, ...args: readonly unknown[]) => call(method, { asker, place }, ...args);
}

const memoryThrough = (call: Call): Memory =>
  Object.fromEntries(
    Object.entries(methods).map(([method, through]) => [method, through(call, method as keyof Memory)]),
  ) as unknown as Memory;
