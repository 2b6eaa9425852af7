import { execFileSync, spawn } from 'node:child_process';
import { chownSync, globSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import pg from 'pg';

/** A throwaway PostgreSQL server on loopback, its files in a temporary folder. */
export interface Postgres {
  /** The URL of a new, empty database. */
  database(): Promise<string>;
  /** `immediate` is what a power cut looks like to it. */
  stop(how: 'fast' | 'immediate'): Promise<void>;
  start(): Promise<void>;
  /** Stopped, and its files gone. */
  remove(): Promise<void>;
}

/** The folder of PostgreSQL's programs, if it is on this machine: on the path, or where Debian puts it. */
export function findPostgres(): string | undefined {
  const found = [
    ...(process.env.PATH ?? '').split(':'),
    ...globSync('/usr/lib/postgresql/*/bin').toSorted().toReversed(),
  ];
  return found.find((folder) => folder !== '' && globSync(join(folder, 'initdb')).length > 0);
}

/** A build machine must have it; on another the tests that need it are skipped. */
export function postgresMissing(): boolean {
  const missing = findPostgres() === undefined;
  if (missing && process.env.CI === 'true') throw new Error('PostgreSQL (initdb) is not on this build machine');
  return missing;
}

/** `durable: false` saves the wait for the disk where no test pulls the plug. */
export async function startPostgres({ durable = true } = {}): Promise<Postgres> {
  const programs = findPostgres();
  if (programs === undefined) throw new Error('PostgreSQL is not on this machine');
  const folder = mkdtempSync(join(tmpdir(), 'teemer-postgres-'));
  const user = unprivileged();
  if (user) chownSync(folder, user.uid, user.gid);
  const data = join(folder, 'data');
  const port = await freePort();
  const url = (name: string) => `postgres://teemer@127.0.0.1:${port}/${name}`;
  let databases = 0;

  // A server that starts keeps its starter's output open, so that none is listened to.
  const run = (program: string, args: readonly string[]) =>
    new Promise<void>((resolve, reject) => {
      const child = spawn(join(programs, program), args, { cwd: folder, stdio: 'ignore', ...user });
      child.on('error', reject);
      child.on('close', (code) => (code === 0 ? resolve() : reject(new Error(`${program} ended with ${code}`))));
    });
  const settings = `-c listen_addresses=127.0.0.1 -c port=${port} -c unix_socket_directories=${folder} -c fsync=${durable ? 'on' : 'off'}`;
  const start = () => run('pg_ctl', ['start', '-w', '-D', data, '-l', join(folder, 'server.log'), '-o', settings]);
  const stop = (how: string) => run('pg_ctl', ['stop', '-w', '-D', data, '-m', how]);

  await run('initdb', ['-D', data, '-U', 'teemer', '-A', 'trust', '-E', 'UTF8', '--no-locale', '--no-sync']);
  await start();
  return {
    start,
    stop,
    async database() {
      const client = new pg.Client({ connectionString: url('postgres') });
      await client.connect();
      const name = `test_${++databases}`;
      await client.query(`create database ${name}`);
      await client.end();
      return url(name);
    },
    async remove() {
      await stop('immediate').catch(() => {});
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** PostgreSQL does not run as root. */
function unprivileged(): { uid: number; gid: number } | undefined {
  if (process.getuid?.() !== 0) return undefined;
  const id = (flag: string) => Number(execFileSync('id', [flag, 'postgres'], { encoding: 'utf8' }));
  return { uid: id('-u'), gid: id('-g') };
}

async function freePort(): Promise<number> {
  const server = createServer();
  await promisify((done: () => void) => server.listen(0, '127.0.0.1', done))();
  const address = server.address();
  await promisify(server.close.bind(server))();
  if (address === null || typeof address === 'string') throw new Error('no port');
  return address.port;
}
