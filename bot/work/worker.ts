import { readlinkSync } from 'node:fs';
import { enableCompileCache } from 'node:module';
import { getPriority, setPriority } from 'node:os';
import { parentPort } from 'node:worker_threads';
import type { ToWorker } from './messages.ts';

// Before the rest is loaded, so that the rest is cached.
enableCompileCache();

const port = parentPort;
if (!port) throw new Error('this runs in a worker thread');

/** A half of the weight: more would starve it on a machine that others keep busy. */
const less = 3;
stepBack();

// Heard from the start; answered once everything is loaded.
const early: ToWorker[] = [];
const keep = (message: ToWorker) => void early.push(message);
port.on('message', keep);
const { serve } = await import('./serve.ts');
port.off('message', keep);
serve(port, early);

/** Where both want a core, the thread that people wait for has it first. Only Linux tells a thread its number. */
function stepBack(): void {
  try {
    const [, thread] = /\/task\/(\d+)$/.exec(readlinkSync('/proc/thread-self')) ?? [];
    if (thread !== undefined) setPriority(Number(thread), getPriority() + less);
  } catch {
    // It is only a courtesy.
  }
}
