import { type ChildProcess, execFile, spawn } from 'node:child_process';
import { once } from 'node:events';
import { type AddressInfo, createServer, type Socket } from 'node:net';
import { promisify } from 'node:util';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { type Peer, startDiscordPeer } from '../peers/discord/peer.ts';
import { freePort } from './free-port.ts';
import { programOf, root, startFlags } from './program.ts';

// Starting takes a second; on a machine busy with other tests many.
vi.setConfig({ testTimeout: 120_000 });

/** The program as it is started by hand, with nothing but its settings. */
const run = promisify(execFile);
let peer: Peer;
let program: ChildProcess | undefined;

beforeEach(async () => {
  peer = await startDiscordPeer({ shards: 2 });
});
afterEach(async () => {
  program?.kill('SIGKILL');
  await peer.close();
});

const settings = (more: Record<string, string> = {}) => ({
  PATH: process.env.PATH ?? '',
  DISCORD_TOKEN: peer.token,
  DISCORD_API: peer.rest,
  ...more,
});
const register = async (...typed: string[]) =>
  (await run(process.execPath, [programOf('bot/register.ts'), ...typed], { cwd: root, env: settings() })).stdout;

test('registers once, then finds nothing to change', async () => {
  expect(await register()).toMatch(/^\+ start: new\n[\s\S]*Registered \d+ commands\.\n$/);
  expect(await register()).toBe('Nothing to change.\n');
  expect(await register('--guild', peer.guilds[0] ?? '')).toContain(`in guild ${peer.guilds[0]}`);
  expect(peer.violations).toEqual([]);
});

test('answers on every shard, says when it is ready, and leaves when told to', async () => {
  await register();
  const port = await freePort();
  program = spawn(process.execPath, [...startFlags, programOf('bot/main.ts')], {
    cwd: root,
    env: settings({ TEEMER_PORT: String(port), TEEMER_LOG: 'info', TEEMER_SHARDS: '0-1/2' }),
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let logged = '';
  program.stderr?.on('data', (data) => {
    logged += String(data);
  });
  await expect.poll(() => logged, { timeout: 60_000 }).toContain('connected to Discord');
  expect((await fetch(`http://127.0.0.1:${port}/readyz`)).status).toBe(200);
  for (const guild of [0, 1]) {
    const seen = await peer.slash({ name: 'mix', options: { amount: '30 L' } }, { user: `on ${guild}`, guild });
    await seen.until(({ messages }) => messages.some(({ loading }) => !loading));
    expect(seen.messages[0]?.embeds[0]?.description).toContain('clay');
  }
  expect(await (await fetch(`http://127.0.0.1:${port}/metrics`)).text()).toContain('command="mix"');
  expect(logged).not.toContain('30 L');
  const left = once(program, 'exit');
  program.kill('SIGTERM');
  expect(await left).toEqual([0, null]);
  expect(peer.violations).toEqual([]);
});

test('a token that is refused ends the program, and the token is not said', async () => {
  const env = { ...settings(), DISCORD_TOKEN: 'c2VjcmV0.c2VjcmV0.c2VjcmV0' };
  const failed = await run(process.execPath, [programOf('bot/main.ts')], { cwd: root, env }).catch((error) => error);
  expect(failed.code).not.toBe(0);
  expect(`${failed.stdout}${failed.stderr}`).not.toContain('c2VjcmV0');
});

test('told to leave while it still connects it leaves in order', async () => {
  const silent = createServer().listen(0, '127.0.0.1');
  await once(silent, 'listening');
  const { port } = silent.address() as AddressInfo;
  program = spawn(process.execPath, [...startFlags, programOf('bot/main.ts')], {
    cwd: root,
    env: settings({ DISCORD_API: `http://127.0.0.1:${port}/api` }),
    stdio: 'ignore',
  });
  const [socket] = (await once(silent, 'connection')) as [Socket];
  socket.on('error', () => {});
  const left = once(program, 'exit');
  program.kill('SIGTERM');
  expect(await left).toEqual([0, null]);
  socket.destroy();
  silent.close();
});
