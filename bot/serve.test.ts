import { once } from 'node:events';
import { type AddressInfo, createServer } from 'node:net';
import { expect, test } from 'vitest';
import { type Platform, type Running, serve } from './serve.ts';

const get = async (url: string, path: string) => {
  const response = await fetch(`${url}${path}`);
  return { status: response.status, text: await response.text() };
};

/** A platform that connects when it is told to. */
function platformOf(name: string) {
  const lacks: string[] = [];
  const seen = { stopped: 0 };
  const connecting = Promise.withResolvers<Running>();
  const running: Running = { missing: () => lacks, stop: async () => void seen.stopped++ };
  const platform: Platform = { name, open: () => connecting.promise };
  return { platform, lacks, seen, connect: () => connecting.resolve(running), refuse: connecting.reject };
}

async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as AddressInfo;
  server.close();
  return port;
}

/** On a port that was free a moment ago: where somebody else has taken it since, on another. */
async function served(platforms: readonly Platform[]): Promise<{ url: string; serving: ReturnType<typeof serve> }> {
  for (;;) {
    const port = await freePort();
    const url = `http://127.0.0.1:${port}`;
    const serving = serve({ port, log: 'silent' }, platforms);
    const there = expect.poll(() => get(url, '/healthz').catch(() => undefined)).toMatchObject({ status: 200 });
    try {
      await Promise.race([there, serving]);
      return { url, serving };
    } catch (error) {
      there.catch(() => {});
      if ((error as NodeJS.ErrnoException).code !== 'EADDRINUSE') throw error;
    }
  }
}

test('readiness names every platform that is not connected, from the start', async () => {
  const [discord, matrix] = [platformOf('Discord'), platformOf('Matrix')];
  const metered: Platform = {
    name: 'Discord',
    async open(metrics) {
      metrics.tell('discord', { kind: 'command', command: 'mix', outcome: 'answered', took_s: 0.01 });
      return discord.platform.open(metrics);
    },
  };
  const { url, serving } = await served([metered, matrix.platform]);
  const lacks = async () => JSON.parse((await get(url, '/readyz')).text).lacks;
  expect(await lacks()).toEqual(['a connection to Discord', 'a connection to Matrix']);
  expect((await get(url, '/readyz')).status).toBe(503);

  matrix.connect();
  await expect.poll(lacks).toEqual(['a connection to Discord']);
  discord.connect();
  const { stop } = await serving;
  expect((await get(url, '/readyz')).status).toBe(200);
  expect((await get(url, '/metrics')).text).toContain('platform="discord"');

  matrix.lacks.push('a connection to Matrix');
  expect(await lacks()).toEqual(['a connection to Matrix']);
  expect((await get(url, '/readyz')).status).toBe(503);
  await stop();
  expect([discord.seen.stopped, matrix.seen.stopped]).toEqual([1, 1]);
  await expect(get(url, '/healthz')).rejects.toThrow();
});

test('where one is refused the others are stopped, those that connect later too', async () => {
  const [one, two, three] = [platformOf('one'), platformOf('two'), platformOf('three')];
  const serving = serve(
    { log: 'silent' },
    [one, two, three].map(({ platform }) => platform),
  );
  one.connect();
  await Promise.resolve();
  two.refuse(new Error('the token is refused'));
  await expect(serving).rejects.toThrow('the token is refused');
  expect(one.seen.stopped).toBe(1);
  three.connect();
  await expect.poll(() => three.seen.stopped).toBe(1);
});

test('what fails and nobody waits for ends nothing, whatever platform it is of', async () => {
  const before = process.listeners('unhandledRejection');
  const one = platformOf('one');
  const serving = serve({ log: 'silent' }, [one.platform]);
  // From the start: connecting may leave something behind too.
  await expect.poll(() => process.listeners('unhandledRejection').length).toBe(before.length + 1);
  const guard = process.listeners('unhandledRejection').find((listener) => !before.includes(listener))!;
  expect(() => guard(new Error('stray'), Promise.resolve())).not.toThrow();
  one.connect();
  await (await serving).stop();
  expect(process.listeners('unhandledRejection')).toEqual(before);
});
