import { spawn } from 'node:child_process';
import { programOf, root } from './program.ts';

export interface Ran {
  readonly out: string;
  readonly err: string;
  readonly code: number | null;
}

/** A real process with piped input, the way a shell starts it: of the source, or of the bundle. */
export function runProgram(
  file: string,
  typed: readonly string[],
  input = '',
  env: Readonly<Record<string, string>> = {},
): Promise<Ran> {
  const started = [programOf(file), ...typed];
  const child = spawn(process.execPath, started, { cwd: root, env: { PATH: process.env.PATH, ...env } });
  let out = '';
  let err = '';
  child.stdout.setEncoding('utf8').on('data', (text) => (out += text));
  child.stderr.setEncoding('utf8').on('data', (text) => (err += text));
  child.stdin.end(input);
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (code) => resolve({ out, err, code }));
  });
}
