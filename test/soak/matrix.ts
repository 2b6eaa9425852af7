import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { makeBot } from '../peers/matrix-bot.ts';
import { startSynapse } from '../peers/synapse.ts';
import { openAsker } from '../peers/synapse-asker.ts';
import { crowd, questions } from '../peers/synapse-crowd.ts';
import { table } from './table.ts';

/** Thousands of questions to one process of the bot on Matrix, and what it holds in memory after each thousand. */
const thousands = Number(process.env.TEEMER_SOAK_THOUSANDS ?? 10);

const synapse = await startSynapse();
const data = mkdtempSync(join(tmpdir(), 'teemer-soak-'));
const bot = await makeBot(synapse, { file: 'test/peers/unhurried-bot.ts', env: { TEEMER_DATA: data } });
const rows: (readonly string[])[] = [];
let sound = true;
try {
  await bot.start();
  const ann = await openAsker(synapse, 'ann', { encrypted: true });
  const bob = await openAsker(synapse, 'bob', { encrypted: true });
  const seats: { asker: typeof ann; room: string }[] = [];
  for (const encrypted of [false, true]) {
    for (const asker of [ann, bob]) seats.push({ asker, room: await asker.room([bot.userId], { encrypted }) });
  }
  const { ask, tally } = crowd(bot.userId, seats, { question: questions, inFlight: 5, patience_ms: 300_000 });
  for (let done = 1; done <= thousands; done++) {
    await ask(1000);
    const { answered, doubled, lost, wrong } = tally();
    const { rss, heapUsed } = await bot.held();
    sound &&= answered === done * 1000 && doubled.length + lost.length + wrong.length === 0;
    const counts = [done * 1000, answered, doubled.length, lost.length, wrong.length];
    const row = [...counts.map((one) => one.toLocaleString('en')), MB(rss), MB(heapUsed)];
    process.stdout.write(`${row.join(' · ')}\n`);
    rows.push(row);
    write();
  }
  await bot.stop();
} finally {
  await bot.stop('SIGKILL');
  await synapse.remove();
  rmSync(data, { recursive: true, force: true });
}
process.exit(sound ? 0 : 1);

function write(): void {
  writeFileSync(
    new URL('./MATRIX.md', import.meta.url),
    `# ${rows.at(-1)?.[0]} questions on Matrix

Made by \`npm run soak\` on Node ${process.version}, ${cpus().length} cores. Two people ask one process of the bot, started from source, in two plain and
two encrypted rooms on a homeserver of its own, twenty questions at a time, every fiftieth answered with a picture. _Twice_ counts
questions with more than one answer, _lost_ those with none, _wrong_ those with another one's. Memory is that of the process after a
collection of garbage: all that is resident, and the heap of its main thread. What reads TypeScript is part of it, which the bundle
does without.

${table([['Asked', 'Answered', 'Twice', 'Lost', 'Wrong', 'Resident, MB', 'Heap, MB'], ...rows])}
`,
  );
}

function MB(bytes: number): string {
  return (bytes / 1e6).toFixed(0);
}
