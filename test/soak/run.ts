import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { startPostgres } from '../peers/postgres.ts';
import { killAgain, type Outcome } from './kill.ts';
import { soakReminders, withSection } from './reminders-run.ts';
import { table } from './table.ts';

/** Kills what writes to the store, many times, and writes down what came of it: `npm run soak`. */
const kills = 30;
const stops = 8;

const data = mkdtempSync(join(tmpdir(), 'teemer-soak-'));
const postgres = await startPostgres();
const rows: (readonly [string, Outcome])[] = [];
try {
  const tell = async (what: string, outcome: Promise<Outcome>) => {
    rows.push([what, await outcome]);
    process.stdout.write(`${row(what, await outcome).join(' · ')}\n`);
  };
  await tell('folder (SQLite), writer killed', killAgain({ where: { data }, times: kills }));
  const databaseUrl = await postgres.database();
  await tell('PostgreSQL, client killed', killAgain({ where: { databaseUrl }, times: kills }));
  const restart = async () => {
    await postgres.stop('immediate');
    await postgres.start();
  };
  const other = { databaseUrl: await postgres.database() };
  await tell('PostgreSQL, server stopped at once', killAgain({ where: other, times: stops, kill: restart }));
} finally {
  await postgres.remove();
  rmSync(data, { recursive: true, force: true });
}

const reminders = await soakReminders();
writeFileSync(
  new URL('./RESULTS.md', import.meta.url),
  withSection(
    `# Killed while writing

Made by \`npm run soak\` on Node ${process.version}, ${cpus().length} cores. A process writes without pause and says which writes were
acknowledged. After a random number of writes, 15 to 165, it is killed (SIGKILL), or its server stopped as by a power cut.
Then the store is opened again and everything acknowledged so far is looked for. A write counts as half where a part
of it is there: one person's text that is not what was written, or a forgetting that left some of it.

${table([['What was killed', 'Times', 'Writes acknowledged', 'Lost', 'Half'], ...rows.map(([what, outcome]) => row(what, outcome))])}

A machine that loses power may still lose writes if its disk says "written" before it is.
`,
    reminders.section,
  ),
);
const faults = [...rows.flatMap(([, { lost, halves }]) => [...lost, ...halves]), ...reminders.faults];
for (const fault of faults) process.stderr.write(`${fault}\n`);
process.exitCode = faults.length > 0 ? 1 : 0;
if (process.exitCode === 0) await import('./matrix.ts');

function row(what: string, { kills: times, acknowledged, lost, halves }: Outcome): readonly string[] {
  return [what, String(times), acknowledged.toLocaleString('en'), String(lost.length), String(halves.length)];
}
