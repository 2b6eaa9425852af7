import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { expect, test } from 'vitest';
import { type Bot, makeBot } from '../peers/matrix-bot.ts';
import type { Synapse } from '../peers/synapse.ts';
import { until } from '../peers/synapse-asker.ts';

/** Nothing listens there. */
const nowhere = { url: 'http://127.0.0.1:9' } as Synapse;

test('a process whose turn another has taken ends, even while it is being started', { timeout: 60_000 }, async () => {
  const data = mkdtempSync(join(tmpdir(), 'teemer-lost-'));
  const like = { userId: '@teemer:teemer.test', password: 'x' } as Bot;
  const bot = await makeBot(nowhere, { like, env: { TEEMER_DATA: data } });
  try {
    const ended = expect(bot.start()).rejects.toThrow(/ended with 1/);
    await until(() => bot.log().includes('the homeserver does not answer'), 'the start to be under way', 40_000);
    const file = new DatabaseSync(join(data, 'teemer.sqlite'));
    file.exec(`update leases set holder = 'another', until = ${Date.now() + 3_600_000}`);
    file.close();
    await ended;
    expect(bot.log()).toContain('another process has taken over');
    expect(bot.log()).not.toContain('the store could not say who answers');
  } finally {
    await bot.stop('SIGKILL');
    rmSync(data, { recursive: true, force: true });
  }
});
