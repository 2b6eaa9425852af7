import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { openStore, type Where } from '../../bot/store/open.ts';
import { audit, type Ledger, record } from './ledger.ts';

const writer = fileURLToPath(new URL('./writer.ts', import.meta.url));

export interface Outcome {
  readonly kills: number;
  readonly acknowledged: number;
  readonly lost: readonly string[];
  readonly halves: readonly string[];
}

/**
 * Starts a writer, ends it or its server at a random moment, opens the store again and compares what is there with what
 * was acknowledged, this time and every time before; again and again on the same store.
 */
export async function killAgain({
  where,
  times,
  kill,
}: {
  where: Where;
  times: number;
  /** Ends the writer in some way; undefined kills its process. */
  kill?: () => Promise<void>;
}): Promise<Outcome> {
  const ledger: Ledger = new Map();
  const lost: string[] = [];
  const halves: string[] = [];
  let acknowledged = 0;
  for (let i = 0; i < times; i++) {
    const from = Math.max(0, ...ledger.keys()) + 1;
    acknowledged += record(ledger, await written(where, from, kill));
    const store = await openStore(where);
    const found = await audit(store, ledger);
    await store.close();
    lost.push(...found.lost);
    halves.push(...found.halves);
  }
  return { kills: times, acknowledged, lost, halves };
}

async function written(where: Where, from: number, kill?: () => Promise<void>): Promise<string> {
  const child = spawn(process.execPath, [writer, JSON.stringify({ where, from })], {
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  const ended = new Promise<void>((resolve) => child.on('close', () => resolve()));
  // After so many writes and a little, so that it hits one in the middle, on a fast machine and on a slow one.
  const enough = 15 + Math.random() * 150;
  let said = '';
  let writes = 0;
  const begun = new Promise<void>((resolve) => {
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      said += text;
      writes += text.split('\n').length - 1;
      if (writes >= enough) resolve();
    });
  });
  await Promise.race([begun, ended]);
  await new Promise((resolve) => setTimeout(resolve, Math.random() * 20));
  if (kill) await kill();
  else child.kill('SIGKILL');
  await ended;
  return said;
}
