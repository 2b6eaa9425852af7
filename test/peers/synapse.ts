import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { appendFileSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';

/** The Python of the reference values: the homeserver and another client are installed beside them. */
export const python = fileURLToPath(new URL('../reference/.venv/bin/python', import.meta.url));

/** A throwaway homeserver on loopback, its files in a temporary folder; anybody may register, nobody is slowed down. */
export interface Synapse {
  readonly url: string;
  readonly name: string;
  /** `SIGKILL` is what a power cut looks like to it. */
  stop(signal?: NodeJS.Signals): Promise<void>;
  start(): Promise<void>;
  /** A new account; the password is the name's. */
  register(user: string): Promise<{ readonly userId: string; readonly password: string }>;
  /** Stopped, and its files gone. */
  remove(): Promise<void>;
}

/** A build machine must have it; on another the tests that need it are skipped. */
export function synapseMissing(): boolean {
  const missing = !(existsSync(python) && installed());
  if (missing && process.env.CI === 'true') throw new Error('Synapse is not in the reference environment');
  return missing;
}

function installed(): boolean {
  try {
    execFileSync(python, ['-c', 'import synapse, nio'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

/**
 * `limits`: those that a homeserver has unless told otherwise. `openMedia`: pictures without a token, for clients that
 * have not heard of one.
 */
export async function startSynapse({ limits = false, openMedia = false } = {}): Promise<Synapse> {
  const folder = mkdtempSync(join(tmpdir(), 'teemer-synapse-'));
  const config = join(folder, 'homeserver.yaml');
  const name = 'teemer.test';
  let url = '';
  const module = ['-m', 'synapse.app.homeserver', '-c', config];
  const made = ['--generate-config', '--server-name', name, '--report-stats', 'no', '--data-directory', folder];
  execFileSync(python, [...module, ...made], { cwd: folder, stdio: 'ignore' });
  const generated = readFileSync(config, 'utf8');
  let server: ChildProcess | undefined;

  async function start(): Promise<void> {
    const child = spawn(python, module, { cwd: folder, stdio: 'ignore' });
    server = child;
    for (let tries = 0; tries < 600 && child.exitCode === null; tries++) {
      const there = await fetch(`${url}/_matrix/client/versions`).then(
        ({ ok }) => ok,
        () => false,
      );
      if (there) return;
      await sleep(100);
    }
    child.kill('SIGKILL');
    const log = join(folder, 'homeserver.log');
    throw new Error(`Synapse did not start: ${existsSync(log) ? readFileSync(log, 'utf8').slice(-2000) : ''}`);
  }

  async function stop(signal: NodeJS.Signals = 'SIGTERM'): Promise<void> {
    const child = server;
    server = undefined;
    if (!child || child.exitCode !== null) return;
    const gone = new Promise((resolve) => child.once('exit', resolve));
    child.kill(signal);
    await gone;
  }

  /** Somebody else may take a port before the homeserver has it: then it is another. */
  async function startAnywhere(): Promise<void> {
    for (let tries = 1; ; tries++) {
      const port = await freePort();
      url = `http://127.0.0.1:${port}`;
      writeFileSync(config, generated);
      settle(config, folder, port, { limits, openMedia });
      try {
        return await start();
      } catch (error) {
        if (tries === 3) throw error;
      }
    }
  }

  await startAnywhere();
  return {
    url,
    name,
    start,
    stop,
    async register(user) {
      const password = `${user} of the Millpond casters`;
      const body = { username: user, password, auth: { type: 'm.login.dummy' }, inhibit_login: true };
      const answer = await fetch(`${url}/_matrix/client/v3/register`, { method: 'POST', body: JSON.stringify(body) });
      if (!answer.ok) throw new Error(`${user} could not be registered: ${await answer.text()}`);
      return { userId: `@${user}:${name}`, password };
    },
    async remove() {
      await stop('SIGKILL');
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

function settle(
  config: string,
  folder: string,
  port: number,
  { limits, openMedia }: { limits: boolean; openMedia: boolean },
): void {
  const made = readFileSync(config, 'utf8')
    .replace(/port: 8008/, `port: ${port}`)
    .replace(/- ::1\n/, '')
    .replace(/trusted_key_servers:\n.*\n/, 'trusted_key_servers: []\n');
  writeFileSync(config, made);
  const none = '{ per_second: 100000, burst_count: 100000 }';
  appendFileSync(
    config,
    [
      '',
      'enable_registration: true',
      'enable_registration_without_verification: true',
      'bcrypt_rounds: 4',
      // Nobody looks at what these keep, and they take half the time of a message.
      'presence: { enabled: false }',
      'push: { enabled: false }',
      'stats: { enabled: false }',
      'user_directory: { enabled: false }',
      `enable_authenticated_media: ${!openMedia}`,
      ...(limits ? [] : unlimited(none)),
      '',
    ].join('\n'),
  );
  writeFileSync(
    join(folder, 'teemer.test.log.config'),
    [
      'version: 1',
      'formatters: { plain: { format: "%(asctime)s %(levelname)s %(name)s %(message)s" } }',
      `handlers: { file: { class: logging.FileHandler, formatter: plain, filename: ${join(folder, 'homeserver.log')} } }`,
      'root: { level: WARNING, handlers: [file] }',
      'disable_existing_loggers: false',
      '',
    ].join('\n'),
  );
}

const unlimited = (none: string): readonly string[] => [
  ...['message', 'registration', 'room_creation', 'key_requests'].map((name) => `rc_${name}: ${none}`),
  `rc_login: { address: ${none}, account: ${none}, failed_attempts: ${none} }`,
  `rc_joins: { local: ${none}, remote: ${none} }`,
  `rc_joins_per_room: ${none}`,
  `rc_invites: { per_room: ${none}, per_user: ${none}, per_issuer: ${none} }`,
  `rc_media_create: ${none}`,
];

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  await new Promise((resolve) => server.close(resolve));
  if (address === null || typeof address === 'string') throw new Error('no port');
  return address.port;
}
