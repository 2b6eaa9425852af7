import { type ChildProcess, spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { Synapse } from './synapse.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

export interface Bot {
  readonly userId: string;
  /** Resolves once it is connected. */
  start(): Promise<void>;
  /** `SIGTERM` says goodbye, `SIGKILL` does not. Resolves with the exit code. */
  stop(signal?: NodeJS.Signals): Promise<number | null>;
  /** Its log since the last start. */
  log(): string;
}

/** The program as it is started by hand, with its account; `file`: another beginning of it. */
export async function makeBot(
  synapse: Synapse,
  {
    user = 'teemer',
    env = {},
    file = 'bot/main.ts',
  }: { user?: string; env?: Record<string, string>; file?: string } = {},
): Promise<Bot> {
  const { userId, password } = await synapse.register(user);
  let child: ChildProcess | undefined;
  let said = '';
  return {
    userId,
    log: () => said,
    async start() {
      said = '';
      const own = spawn(process.execPath, [file], {
        cwd: root,
        env: {
          PATH: process.env.PATH,
          TEEMER_LOG: 'info',
          MATRIX_HOMESERVER: synapse.url,
          MATRIX_USER: user,
          MATRIX_PASSWORD: password,
          ...env,
        },
        stdio: ['ignore', 'pipe', 'pipe'],
      });
      child = own;
      await new Promise<void>((resolve, reject) => {
        const hear = (text: string) => {
          said += text;
          if (said.includes('connected to Matrix')) resolve();
        };
        own.stdout.setEncoding('utf8').on('data', hear);
        own.stderr.setEncoding('utf8').on('data', hear);
        own.once('exit', (code) => reject(new Error(`the bot ended with ${code}: ${said}`)));
      });
    },
    async stop(signal = 'SIGTERM') {
      const own = child;
      child = undefined;
      if (!own || own.exitCode !== null) return own?.exitCode ?? null;
      const gone = new Promise<number | null>((resolve) => own.once('exit', resolve));
      own.kill(signal);
      return gone;
    },
  };
}
