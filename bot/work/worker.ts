import { enableCompileCache } from 'node:module';
import { parentPort } from 'node:worker_threads';
import type { ToWorker } from './messages.ts';

// Before the rest is loaded, so that the rest is cached.
enableCompileCache();

const port = parentPort;
if (!port) throw new Error('this runs in a worker thread');

// Heard from the start; answered once everything is loaded.
const early: ToWorker[] = [];
const keep = (message: ToWorker) => void early.push(message);
port.on('message', keep);
const { serve } = await import('./serve.ts');
port.off('message', keep);
serve(port, early);
