import { describe, expect, test } from 'vitest';
import { answerLine } from '../../commands/answer.ts';
import { inProcessMemory, type Memory } from '../../commands/memory.ts';
import { AskError } from '../../core/ask-error.ts';
import { forgiving } from './forgiving.ts';
import { openMemory } from './remember.ts';

const key = { asker: 'ann', place: 'shed' };
const ask = { command: 'mix', options: {} };

/** Every call fails, and is counted. */
function broken() {
  const calls: string[] = [];
  const memory = new Proxy({} as Memory, {
    get: (_, method: string) => {
      // A promise is told from other things by this.
      if (method === 'then') return undefined;
      return async () => {
        calls.push(method);
        throw new Error('gone');
      };
    },
  });
  return { calls, memory };
}

describe('a memory that fails', () => {
  test('stops no answer, and is told of', async () => {
    const told: unknown[] = [];
    const memory = forgiving(
      async () => broken().memory,
      (error) => told.push(error),
    );
    const reply = await answerLine('mix 30 L', { ...key, now: new Date(0), memory });
    expect(reply.kind).toBe('card');
    expect(told).toEqual([new Error('gone')]);
  });

  test('also when it cannot even be opened', async () => {
    const memory = forgiving(
      () => Promise.reject(new Error('closed')),
      () => {},
    );
    expect((await answerLine('mix 30 L', { ...key, now: new Date(0), memory })).kind).toBe('card');
    expect(await memory.lastAsk(key)).toBeUndefined();
    expect(await memory.prices(key)).toEqual([]);
  });

  const asked: readonly (readonly [string, (memory: Memory) => Promise<unknown>])[] = [
    ['setUnits', (memory) => memory.setUnits({ asker: 'ann' }, 'US')],
    ['saveBuild', (memory) => memory.saveBuild('ann', { name: 'can', ask }, new Date(0))],
    ['build', (memory) => memory.build('ann', 'can')],
    ['builds', (memory) => memory.builds('ann')],
    ['revisions', (memory) => memory.revisions('ann', 'can')],
    ['dropBuild', (memory) => memory.dropBuild('ann', 'can')],
    ['shareBuild', (memory) => memory.shareBuild('ann', 'can')],
    ['sharedBuild', (memory) => memory.sharedBuild('ABCDEFGH')],
    [
      'setPrice',
      (memory) =>
        memory.setPrice(
          { asker: 'ann' },
          { item: 'sand', amount: { mass_kg: 1 }, price: 1, currency: 'USD' },
          new Date(0),
        ),
    ],
    ['dropPrice', (memory) => memory.dropPrice({ asker: 'ann' }, 'sand')],
    ['zone', (memory) => memory.zone('ann')],
    ['setZone', (memory) => memory.setZone('ann', 'Europe/Berlin')],
    ['setReminders', (memory) => memory.setReminders('ann', [])],
    ['reminders', (memory) => memory.reminders('ann')],
    ['dropReminders', (memory) => memory.dropReminders('ann')],
    ['openChecklist', (memory) => memory.openChecklist(key, { name: 'can', ask }, new Date(0))],
    ['checklist', (memory) => memory.checklist('shed')],
    ['checklists', (memory) => memory.checklists('shed')],
    ['tick', (memory) => memory.tick('ABCDEFGH', 'shell', { by: 'ann', now: new Date(0) })],
    ['untick', (memory) => memory.untick('ABCDEFGH', 'shell')],
    ['dropChecklist', (memory) => memory.dropChecklist('ABCDEFGH')],
    ['addEntry', (memory) => memory.addEntry('ann', { build: 'can', kind: 'burn', at: new Date(0), data: {} })],
    ['entries', (memory) => memory.entries('ann')],
    ['dropEntry', (memory) => memory.dropEntry('ann', 'ABCDEFGH')],
    ['kept', (memory) => memory.kept('ann')],
    ['forget', (memory) => memory.forget('ann')],
  ];
  test.each(asked)('never says that %s was done', async (method, call) => {
    const { calls, memory } = broken();
    await expect(
      call(
        forgiving(
          async () => memory,
          () => {},
        ),
      ),
    ).rejects.toThrow(AskError);
    expect(calls).toEqual([method]);
  });

  test('is left alone for a while, then tried again', async () => {
    let now = 0;
    const { calls, memory } = broken();
    const forgiven = forgiving(
      async () => memory,
      () => {},
      { rest_ms: 100, clock: () => now },
    );
    await forgiven.units(key);
    now = 99;
    await forgiven.lastAsk(key);
    await forgiven.rememberAsk({ ...key, ...ask });
    expect(calls).toEqual(['units']);
    now = 100;
    await forgiven.lastAsk(key);
    expect(calls).toEqual(['units', 'lastAsk']);
  });

  test('that does not fail is as it is', async () => {
    const kept = inProcessMemory();
    const memory = forgiving(
      async () => kept,
      () => {},
    );
    expect(Object.keys(memory).toSorted()).toEqual(Object.keys(kept).toSorted());
    await memory.rememberAsk({ ...key, ...ask });
    await memory.setUnits({ asker: 'ann' }, 'US');
    expect(await kept.lastAsk(key)).toEqual({ ...key, ...ask });
    expect(await memory.units(key)).toBe('US');
  });
});

describe('the memory of the settings', () => {
  test('a database that is out of reach stops no answer', async () => {
    const { memory, close } = await openMemory({ log: 'silent', databaseUrl: 'postgres://teemer@127.0.0.1:1/x' });
    expect((await answerLine('mix 30 L', { ...key, now: new Date(0), memory })).kind).toBe('card');
    await expect(memory.saveBuild('ann', { name: 'can', ask }, new Date(0))).rejects.toThrow(/cannot be reached/);
    await close();
  });

  test('a folder that can never do is a setting that cannot be used', async () => {
    await expect(openMemory({ log: 'silent', data: '/dev/null' })).rejects.toThrow(/may not be opened/);
  });
});
