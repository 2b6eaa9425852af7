import { Worker } from 'node:worker_threads';
import type { PictureLook } from '../../adapters/picture/theme.ts';
import type { AskContext } from '../../commands/answer.ts';
import type { Card, Reply } from '../../commands/card.ts';
import type { Ask } from '../../commands/command.ts';
import type { Memory } from '../../commands/memory.ts';
import { errorOf, type FromWorker, faultOf, type Job, type ToWorker } from './messages.ts';

/** Work that would make others wait, done in a thread of its own. */
export interface Work {
  /** One picture of a card as PNG: the first, or the one of that id. */
  picture(card: Card, which: string | undefined, look: PictureLook): Promise<Uint8Array>;
  /**
   * A whole question in, a whole reply out; `early` hears typical values before that, if there are any, and `memory` is
   * asked instead of that of all questions.
   */
  answer(ask: Ask, context: Omit<AskContext, 'memory'> & { readonly memory?: Memory }): Promise<Reply>;
  /** Ends the thread; what still waits is rejected. */
  close(): Promise<void>;
}

/** The worker's thread is gone, or took too long and was ended. */
export class WorkError extends Error {
  override readonly name = 'WorkError';
}

interface Request {
  readonly id: number;
  readonly job: Job;
  readonly early: AskContext['early'];
  readonly memory: Memory;
  readonly resolve: (value: unknown) => void;
  readonly reject: (error: Error) => void;
}

/** Beside this file as source, beside the bundle when bundled. */
const workerUrl = new URL(import.meta.url.endsWith('.ts') ? './worker.ts' : './work.js', import.meta.url);
/** A card and its pictures never come near it. */
const memoryLimit_MB = 512;
/** Room for what a picture makes and drops. More falls out of the processor's cache: a picture takes a tenth longer at 96. */
const nursery_MB = 32;

/**
 * Starts its thread at the first request. Requests are done one after another, so that when the thread dies it is
 * known whose fault it was: that one is rejected, the rest are done by a new thread.
 * `limit_ms` ends a request that never would.
 */
export function createWork({
  memory,
  limit_ms = 30_000,
  url = workerUrl,
}: {
  memory: Memory;
  limit_ms?: number;
  url?: URL;
}): Work {
  const queue: Request[] = [];
  let current: Request | undefined;
  let thread: Worker | undefined;
  let closed = false;
  let ids = 0;
  let timer: NodeJS.Timeout | undefined;

  const asked = (job: Job, early?: AskContext['early'], own = memory): Promise<unknown> =>
    new Promise((resolve, reject) => {
      if (closed) return reject(new WorkError('the work is closed'));
      queue.push({ id: ++ids, job, early, memory: own, resolve, reject });
      next();
    });

  function next(): void {
    if (current) return;
    current = queue.shift();
    if (!current) {
      // An idle thread keeps nobody from leaving.
      thread?.unref();
      return;
    }
    thread ??= started();
    thread.ref();
    timer = setTimeout(() => lost(new WorkError(`took longer than ${limit_ms} ms`)), limit_ms);
    try {
      send(thread, { kind: 'job', id: current.id, job: current.job });
    } catch (error) {
      // What can't be copied to another thread: this request's fault, and the thread is well.
      finish((request) => request.reject(errorOf(faultOf(error))));
    }
  }

  function finish(settle: (request: Request) => void): void {
    clearTimeout(timer);
    const request = current;
    current = undefined;
    if (request) settle(request);
    next();
  }

  /** The thread is of no more use: its request is rejected, the next one gets a new thread. */
  function lost(error: Error): void {
    const gone = thread;
    thread = undefined;
    void gone?.terminate();
    finish((request) => request.reject(error));
  }

  function started(): Worker {
    const worker = new Worker(url, {
      resourceLimits: { maxOldGenerationSizeMb: memoryLimit_MB, maxYoungGenerationSizeMb: nursery_MB },
    });
    const mine = (then: () => void) => {
      if (worker === thread) then();
    };
    worker.on('message', (message: FromWorker) => mine(() => hear(worker, message)));
    worker.on('error', (error) => mine(() => lost(errorOf(faultOf(error)))));
    worker.on('messageerror', (error) => mine(() => lost(error)));
    worker.on('exit', (code) => mine(() => lost(new WorkError(`the worker ended with code ${code}`))));
    return worker;
  }

  function hear(worker: Worker, message: FromWorker): void {
    if (message.kind === 'memory') {
      void remember(worker, message);
    } else if (message.id !== current?.id) {
      return;
    } else if (message.kind === 'early') {
      current.early?.(message.card);
    } else {
      finish(({ resolve, reject }) =>
        message.kind === 'done' ? resolve(message.value) : reject(errorOf(message.fault)),
      );
    }
  }

  async function remember(
    worker: Worker,
    { call, method, args }: Extract<FromWorker, { kind: 'memory' }>,
  ): Promise<void> {
    try {
      const value = await (
        (current?.memory ?? memory) as unknown as Record<string, (...all: readonly unknown[]) => unknown>
      )[method]!(...args);
      send(worker, { kind: 'remembered', call, value });
    } catch (error) {
      send(worker, { kind: 'forgotten', call, fault: faultOf(error) });
    }
  }

  return {
    picture: (card, which, look) =>
      asked({ kind: 'picture', card, look, ...(which === undefined ? {} : { which }) }) as Promise<Uint8Array>,
    answer: (ask, { asker, place, now, mayModerate = true, early, memory: own }) => {
      const context = { asker, place, now, mayModerate };
      return asked({ kind: 'answer', ask, context, early: early !== undefined }, early, own) as Promise<Reply>;
    },
    close: async () => {
      closed = true;
      clearTimeout(timer);
      const ended = thread?.terminate();
      thread = undefined;
      for (const { reject } of [...(current ? [current] : []), ...queue.splice(0)]) {
        reject(new WorkError('the work was closed'));
      }
      current = undefined;
      await ended;
    },
  };
}

const send = (worker: Worker, message: ToWorker): void => worker.postMessage(message);
