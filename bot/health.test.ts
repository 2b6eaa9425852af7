import { afterEach, expect, test } from 'vitest';
import { type Health, serveHealth } from './health.ts';
import { createMetrics } from './metrics.ts';

let health: Health | undefined;
afterEach(() => health?.close());

test('alive, ready when nothing is missing, and counted', async () => {
  const metrics = createMetrics();
  let lacks: readonly string[] = ['discord'];
  health = await serveHealth({ port: 0, host: '127.0.0.1', metrics, missing: () => lacks });
  const get = async (path: string) => {
    const response = await fetch(`${health!.url}${path}`);
    return { status: response.status, text: await response.text() };
  };
  expect(await get('/healthz')).toMatchObject({ status: 200 });
  expect(await get('/readyz')).toMatchObject({ status: 503, text: expect.stringContaining('discord') });
  lacks = [];
  expect(await get('/readyz')).toMatchObject({ status: 200 });
  metrics.tell('discord', { kind: 'command', command: 'mix', outcome: 'answered', took_s: 0.01 });
  const { text } = await get('/metrics');
  expect(text).toContain(
    'teemer_interactions_total{platform="discord",kind="command",command="mix",outcome="answered"} 1',
  );
  expect(text).toContain('process_cpu_seconds_total');
});
