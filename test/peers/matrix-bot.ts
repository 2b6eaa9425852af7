import { type ChildProcess, spawn } from 'node:child_process';
import { programOf, root, startFlags } from '../end-to-end/program.ts';
import type { Synapse } from './synapse.ts';

export interface Bot {
  readonly userId: string;
  readonly password: string;
  /** Resolves once it is connected. */
  start(): Promise<void>;
  /** `SIGTERM` says goodbye, `SIGKILL` does not. Resolves with the exit code. */
  stop(signal?: NodeJS.Signals): Promise<number | null>;
  /** Its log since the last start. */
  log(): string;
  /** What it holds, garbage apart; only of `unhurried-bot.ts`. */
  held(): Promise<{ readonly rss: number; readonly heapUsed: number; readonly external: number }>;
}

/**
 * The program as it is started by hand, with an account of its own or that of `like`; `file`: another beginning of it.
 */
export async function makeBot(
  synapse: Synapse,
  {
    user = 'teemer',
    env = {},
    file = 'bot/main.ts',
    like,
  }: { user?: string; env?: Record<string, string>; file?: string; like?: Bot } = {},
): Promise<Bot> {
  const { userId, password } = like ?? (await synapse.register(user));
  let child: ChildProcess | undefined;
  let said = '';
  return {
    userId,
    password,
    log: () => said,
    async held() {
      const before = said.length;
      child?.kill('SIGUSR2');
      for (;;) {
        const [, json] = /^holds (.*)\n/m.exec(said.slice(before)) ?? [];
        if (json !== undefined) return JSON.parse(json);
        await new Promise((resolve) => setTimeout(resolve, 20));
      }
    },
    async start() {
      said = '';
      const own = spawn(process.execPath, [...startFlags, file.startsWith('bot/') ? programOf(file) : file], {
        cwd: root,
        env: {
          PATH: process.env.PATH,
          TEEMER_LOG: 'info',
          MATRIX_HOMESERVER: synapse.url,
          MATRIX_USER: userId,
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
