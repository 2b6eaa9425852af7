import { randomUUID } from 'node:crypto';
import { readFileSync, readlinkSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { setTimeout as sleep } from 'node:timers/promises';
import type { Leases } from './store/leases.ts';

/** A process that dies without a word holds up the next for so long; where both see one file, not even that. */
const lease_s = 15;
const renew_ms = 4000;
const look_ms = 500;

interface Log {
  info(about: object, what: string): void;
  warn(about: object, what: string): void;
  error(about: object, what: string): void;
}

/** What one process at a time may do. */
export interface Turn {
  /** Lets the next one at it. */
  end(): Promise<void>;
}

/**
 * Waits until no other process does what `name` says, then keeps others from it. `file`, in a folder that they share on
 * one machine, tells whether the one before is still alive. `lost`: another has it all the same, since this process or
 * the store was away for too long; whoever is told may do nothing more of it, and had best end.
 */
export async function alone(
  leases: Leases,
  name: string,
  { file, now, log, lost }: { file?: string; now: () => Date; log: Log; lost: () => void },
): Promise<Turn> {
  // Numbers of processes and names of machines may be those of another that lives: `id` is nobody else's.
  const holder = JSON.stringify({ host: hostname(), pid: process.pid, pids: pidsHere(), id: randomUUID() });
  const take = () => leases.take(name, { holder, now: now(), lease_s });

  let told = false;
  while (!(await take())) {
    const before = file === undefined ? undefined : readHolder(file);
    if (before !== undefined && isDead(before) && (await leases.release(name, before))) continue;
    if (!told) log.warn({ name }, 'another process answers for this account: this one waits until that ends');
    told = true;
    await sleep(look_ms);
  }
  if (told) log.warn({ name }, 'the other process has ended: this one answers now');
  if (file !== undefined) writeFileSync(file, holder, { mode: 0o600 });

  const renewing = setInterval(async () => {
    try {
      if (await take()) return;
      clearInterval(renewing);
      log.error({ name }, 'another process has taken over: this one no longer answers');
      lost();
    } catch (err) {
      log.warn({ err, name }, 'the store could not say who answers');
    }
  }, renew_ms);
  renewing.unref();
  return {
    async end() {
      clearInterval(renewing);
      await leases.release(name, holder).catch((err: unknown) => log.warn({ err }, 'the next process has to wait'));
    },
  };
}

function readHolder(file: string): string | undefined {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return undefined;
  }
}

/**
 * Among which processes a number is one process's alone: containers that share a machine's name each count from 1. Not
 * told where there are no containers.
 */
function pidsHere(): string | undefined {
  try {
    const boot = readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim();
    return `${boot} ${readlinkSync('/proc/self/ns/pid')}`;
  } catch {
    return undefined;
  }
}

/** True only where it is certain: a process among these that is no more, or whose number is this one's by now. */
function isDead(holder: string): boolean {
  try {
    const { host, pid, pids } = JSON.parse(holder) as { host: string; pid: number; pids?: string };
    if (host !== hostname() || pids !== pidsHere()) return false;
    if (pid === process.pid) return true;
    process.kill(pid, 0);
    return false;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'ESRCH';
  }
}
