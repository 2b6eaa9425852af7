import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { globSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { freePort } from '../end-to-end/free-port.ts';
import { startFlags } from '../end-to-end/program.ts';
import { type Peer, startDiscordPeer } from '../peers/discord/peer.ts';
import { slashOf } from '../peers/discord/typed.ts';
import { startSynapse, synapseMissing } from '../peers/synapse.ts';
import { buildImage, type Image } from './build.ts';

// It installs everything anew, which only a machine that checks the whole has time for.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 600_000 });

test('the image stands on the Node that the tests run on', () => {
  const { dependencies } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));
  const bases = readFileSync(new URL('../../Dockerfile', import.meta.url), 'utf8').match(/^FROM node:[\d.]+/gm);
  expect(new Set(bases)).toEqual(new Set([`FROM node:${dependencies.node}`]));
});

test('the image and the README start the program with the flags of npm start', () => {
  const told = (file: string) => readFileSync(new URL(`../../${file}`, import.meta.url), 'utf8');
  const [, command = ''] = /^CMD (.*)$/m.exec(told('Dockerfile')) ?? [];
  expect(JSON.parse(command)).toEqual(['node', ...startFlags, 'dist/main.js']);
  expect(told('README.md')).toContain(`node_modules/.bin/node ${startFlags.join(' ')} bot/main.ts`);
});

describe.skipIf(!process.env.CI)('the Dockerfile’s steps in a clean folder', () => {
  let image: Image;
  let peer: Peer;
  let bot: ChildProcess;
  let logged = '';
  let env: Record<string, string>;

  beforeAll(async () => {
    image = buildImage();
    peer = await startDiscordPeer();
    env = {
      PATH: process.env.PATH ?? '',
      ...image.env,
      TEEMER_PORT: String(await freePort()),
      DISCORD_TOKEN: peer.token,
      DISCORD_API: peer.rest,
    };
    bot = start(image.cmd, { ...env });
    bot.stderr?.setEncoding('utf8').on('data', (text) => {
      logged += text;
    });
    await vi.waitFor(() => expect(logged).toContain('connected to Discord'), { timeout: 60_000, interval: 100 });
  });
  afterAll(async () => {
    bot?.kill('SIGKILL');
    await peer?.close();
    image?.remove();
  });

  /** As an engine starts it: the image's folder, settings and user, nothing else. */
  const start = ([program = '', ...typed]: readonly string[], settings: Record<string, string>) =>
    spawn(programOf(program), typed, {
      cwd: image.workdir,
      env: settings,
      stdio: ['ignore', 'pipe', 'pipe'],
      ...image.as,
    });
  const programOf = (program: string) => (program === 'node' ? process.execPath : program);

  test('leave nothing in the image but what runs', () => {
    expect(readdirSync(image.workdir).toSorted()).toEqual(['dist', 'node_modules', 'package.json']);
    const files = globSync('**', { cwd: image.workdir, withFileTypes: true }).filter((file) => file.isFile());
    expect(files.filter(({ name }) => /\.(ts|map)$|\.test\./.test(name) && !name.endsWith('.d.ts'))).toEqual([]);
    const bytes = files.reduce((sum, { parentPath, name }) => sum + statSync(`${parentPath}/${name}`).size, 0);
    // Measured 30 MB, of which 12 are fonts and 9 what encrypts on the other platform.
    expect(bytes).toBeLessThan(50e6);
  });

  test('make one that runs as nobody special, and writes only what it remembers', () => {
    if (process.getuid?.() !== 0) return;
    expect(readFileSync(`/proc/${bot.pid}/status`, 'utf8')).toMatch(/^Uid:\t1000\t1000/m);
    const tries = 'require("node:fs").writeFileSync("dist/main.js", "")';
    expect(spawnSync(process.execPath, ['-e', tries], { cwd: image.workdir, ...image.as }).status).not.toBe(0);
    expect(readdirSync(image.env.TEEMER_DATA ?? '')).toContain('teemer.sqlite');
  });

  test('make one whose health check tells life from death', () => {
    const [program = '', ...typed] = image.health;
    const check = (port: string) =>
      spawnSync(programOf(program), typed, { env: { ...env, TEEMER_PORT: port }, ...image.as }).status;
    expect(check(env.TEEMER_PORT ?? '')).toBe(0);
    // Nothing listens at 9.
    expect(check('9')).toBe(1);
  });

  test('make one that registers its commands and answers with a picture', async () => {
    const registering = start(['node', 'dist/register.js'], env);
    expect(await once(registering, 'exit')).toEqual([0, null]);
    const line = 'size can 20 gal crucible=6 in x 8 in';
    const seen = await peer.slash(slashOf(line), { user: 'ada' });
    await seen.until(({ messages }) => messages.some(({ loading }) => !loading), 30_000);
    expect(seen.messages[0]?.embeds[0]?.description).toContain('crucible');
    expect(seen.messages[0]?.attachments.map(({ name }) => name)).toContain('size-can.png');
    expect(peer.violations).toEqual([]);
  });

  test.skipIf(synapseMissing())('make one that encrypts on Matrix', async () => {
    const synapse = await startSynapse();
    try {
      const { userId, password } = await synapse.register('teemer');
      const settings = { MATRIX_HOMESERVER: synapse.url, MATRIX_USER: userId, MATRIX_PASSWORD: password };
      const { DISCORD_TOKEN: _token, TEEMER_PORT: _port, ...rest } = env;
      const other = start(image.cmd, { ...rest, ...settings });
      let said = '';
      other.stderr?.setEncoding('utf8').on('data', (text) => {
        said += text;
      });
      await vi.waitFor(() => expect(said).toContain('connected to Matrix'), { timeout: 60_000, interval: 100 });
      expect(said).toContain('this device is signed');
      const left = once(other, 'exit');
      other.kill('SIGTERM');
      expect(await left).toEqual([0, null]);
    } finally {
      await synapse.remove();
    }
  });

  test('make one that leaves when it is told to', async () => {
    const left = once(bot, 'exit');
    bot.kill('SIGTERM');
    expect(await left).toEqual([0, null]);
  });
});
