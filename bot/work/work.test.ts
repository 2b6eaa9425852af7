import { writeFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { sampleChart, sampleDrawing } from '../../adapters/picture/sample.ts';
import { sampleCard } from '../../adapters/terminal/sample-card.ts';
import { answerAsk } from '../../commands/answer.ts';
import { inProcessMemory, type Memory } from '../../commands/memory.ts';
import { createWork, type Work } from './work.ts';

const look = { units: 'US', theme: 'light', width_px: 300 } as const;
const card = { ...sampleCard, drawings: [sampleDrawing], chart: sampleChart };
const me = { asker: 'ann', place: 'shed', now: new Date(0) };
const mix = { command: 'mix', options: { amount: '30 L' }, asker: 'ann', place: 'shed' };

let work: Work;
const opened = (parts: Parameters<typeof createWork>[0]) => {
  work = createWork(parts);
  return work;
};
afterEach(() => work.close());

describe('work in a thread of its own', () => {
  it('draws the first picture, or the one that is named', async () => {
    const { picture } = opened({ memory: inProcessMemory() });
    const first = await picture(card, undefined, look);
    expect([...first.slice(1, 4)].map((byte) => String.fromCharCode(byte)).join('')).toBe('PNG');
    expect(await picture(card, 'section', look)).toEqual(first);
    expect(await picture(card, 'chart', look)).not.toEqual(first);
    await expect(picture(card, 'elevation', look)).rejects.toThrow('no picture "elevation" among section, chart');
  });

  it('answers as the main thread does, and remembers there', async () => {
    const [here, there] = [inProcessMemory(), inProcessMemory()];
    const { answer } = opened({ memory: there });
    expect(await answer(mix, me)).toEqual(await answerAsk(mix, { ...me, memory: here }));
    expect(await there.lastAsk(me)).toEqual(mix);
    expect(await answer({ ...mix, command: 'why', options: {} }, me)).toMatchObject({
      kind: 'card',
      card: { command: 'why' },
    });
  });

  it('tells typical values before the ranges are there, and the same answer in the end', async () => {
    const fuel = { ...mix, command: 'fuel', options: { fuel: 'propane', amount: '3 kg' } };
    const { answer } = opened({ memory: inProcessMemory() });
    const heard: string[] = [];
    const early = (card: { readonly headline: string }) => void heard.push(card.headline);
    const reply = await answer(fuel, { ...me, early });
    expect(heard).toEqual([expect.stringContaining('Typical values so far')]);
    expect(reply).toEqual(await answer(fuel, me));
    expect(heard).toHaveLength(1);
    await answer(mix, { ...me, early });
    expect(heard).toHaveLength(1);
  });

  it('asks the main thread’s memory for units', async () => {
    const asked: unknown[] = [];
    const memory: Memory = {
      ...inProcessMemory(),
      units: async (key) => {
        asked.push(key);
        return 'US';
      },
    };
    expect(await opened({ memory }).answer(mix, me)).toMatchObject({ card: { units: 'US' } });
    expect(asked).toEqual([{ asker: 'ann', place: 'shed' }]);
  });

  it('an asker’s mistake is a reply; a fault of memory is an error with its words', async () => {
    const { answer } = opened({
      memory: { ...inProcessMemory(), rememberAsk: () => Promise.reject(new RangeError('the disk is full')) },
    });
    expect(await answer({ ...mix, options: { amount: '3 volts' } }, me)).toMatchObject({ kind: 'error' });
    await expect(answer(mix, me)).rejects.toMatchObject({ name: 'RangeError', message: 'the disk is full' });
  });

  it('what can’t cross to the thread is refused, and the next one is done', async () => {
    const { answer } = opened({ memory: inProcessMemory() });
    const bad = { ...mix, options: { amount: (() => '30 L') as unknown as string } };
    await expect(answer(bad, me)).rejects.toMatchObject({ name: 'DataCloneError' });
    expect(await answer(mix, me)).toMatchObject({ kind: 'card' });
  });

  it('after it is closed nothing waits for ever', async () => {
    const { answer, close } = opened({ memory: inProcessMemory() });
    const waiting = [answer(mix, me), answer(mix, me)];
    const ends = Promise.allSettled(waiting);
    await close();
    expect((await ends).map(({ status }) => status)).toEqual(['rejected', 'rejected']);
    await expect(answer(mix, me)).rejects.toMatchObject({ name: 'WorkError' });
  });
});

/** A thread that dies, hangs or answers by what is asked of it: the real one does not die on demand. */
const fragile = `
import { parentPort, threadId } from 'node:worker_threads';
parentPort.on('message', ({ id, job }) => {
  if (job.ask.command === 'die') throw new RangeError('no room');
  if (job.ask.command === 'leave') process.exit(3);
  if (job.early) parentPort.postMessage({ kind: 'early', id, card: { headline: 'typical' } });
  if (job.ask.command === 'hang') return;
  parentPort.postMessage({ kind: 'done', id, value: { thread: threadId } });
});
`;

describe('a thread that dies', () => {
  let folder: string;
  let url: URL;
  const ask = (command: string) => work.answer({ ...mix, command }, me) as unknown as Promise<{ thread: number }>;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'work-'));
    writeFileSync(join(folder, 'fragile.mjs'), fragile);
    url = pathToFileURL(join(folder, 'fragile.mjs'));
  });
  afterAll(() => rm(folder, { recursive: true }));

  it('may have told typical values before, which no other question hears', async () => {
    opened({ memory: inProcessMemory(), url, limit_ms: 300 });
    const heard: string[] = [];
    const hearing = (who: string) => ({ ...me, early: () => void heard.push(who) });
    const hung = expect(work.answer({ ...mix, command: 'hang' }, hearing('hung'))).rejects.toMatchObject({
      message: 'took longer than 300 ms',
    });
    await Promise.all([work.answer(mix, me), work.answer(mix, hearing('next'))]);
    await hung;
    expect(heard).toEqual(['hung', 'next']);
  });

  it.each([
    ['die', { name: 'RangeError', message: 'no room' }],
    ['leave', { name: 'WorkError', message: 'the worker ended with code 3' }],
    ['hang', { name: 'WorkError', message: 'took longer than 300 ms' }],
  ])('%s: that request is rejected, those behind it are done by a new one', async (command, error) => {
    opened({ memory: inProcessMemory(), url, limit_ms: 300 });
    const before = await ask('fine').catch(() => ask('fine'));
    const bad = expect(ask(command)).rejects.toMatchObject(error);
    const [after, last] = await Promise.all([ask('fine'), ask('fine')]);
    await bad;
    expect(after.thread).not.toBe(before.thread);
    expect(last.thread).toBe(after.thread);
  });
});
