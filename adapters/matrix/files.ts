import { closeSync, fsyncSync, mkdirSync, openSync, readFileSync, renameSync, rmSync, writeSync } from 'node:fs';
import { dirname } from 'node:path';

/** The whole file or, after a crash at any moment, the one before. Readable by nobody else. */
export function writeSecret(file: string, bytes: string | Uint8Array): void {
  mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
  const beside = `${file}.new`;
  rmSync(beside, { force: true });
  const handle = openSync(beside, 'wx', 0o600);
  try {
    const whole = typeof bytes === 'string' ? Buffer.from(bytes) : bytes;
    for (let at = 0; at < whole.length; ) at += writeSync(handle, whole, at);
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
  renameSync(beside, file);
}

/** Undefined where there is none. */
export function readSecret(file: string): Buffer | undefined {
  try {
    return readFileSync(file);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
    throw error;
  }
}
