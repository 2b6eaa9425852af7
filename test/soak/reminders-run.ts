import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { startPostgres } from '../peers/postgres.ts';
import { type Delivered, killDelivering } from './reminders.ts';
import { table } from './table.ts';

/** Kills what delivers reminders, many times, and says what came of it, as a section of RESULTS.md. */
const kills = 100;
const stops = 8;
const heading = '# Killed while reminding';
const results = new URL('./RESULTS.md', import.meta.url);

export async function soakReminders(): Promise<{ readonly section: string; readonly faults: readonly string[] }> {
  const data = mkdtempSync(join(tmpdir(), 'teemer-soak-'));
  const postgres = await startPostgres();
  const rows: (readonly string[])[] = [['What was killed', 'Times', 'Reminders', 'Lost', 'Twice', 'Not marked']];
  const faults: string[] = [];
  const tell = async (what: string, working: Promise<Delivered>) => {
    const { kills: times, reminders, lost, doubled, unmarked, violations } = await working;
    const counts = [times, reminders, lost.length, doubled.length, unmarked].map((count) => count.toLocaleString('en'));
    rows.push([what, ...counts]);
    faults.push(...lost, ...doubled, ...violations);
    process.stdout.write(`${[what, ...counts].join(' · ')}\n`);
  };
  try {
    await tell('folder (SQLite), one of three', killDelivering({ where: { data }, kills }));
    const databaseUrl = await postgres.database();
    await tell('PostgreSQL, one of three', killDelivering({ where: { databaseUrl }, kills }));
    const strike = async () => {
      await postgres.stop('immediate');
      await postgres.start();
    };
    const other = { databaseUrl: await postgres.database() };
    await tell('PostgreSQL, server stopped at once', killDelivering({ where: other, kills: stops, strike }));
  } finally {
    await postgres.remove();
    rmSync(data, { recursive: true, force: true });
  }
  const section = `${heading}

Made by \`npm run soak\` on Node ${process.version}, ${cpus().length} cores. Three processes share a store and deliver reminders that are due,
2,000 at a time, to a loopback Discord that knows a message by its nonce for five minutes. One of them is killed (SIGKILL)
while it works and started again, or the server of the store is stopped as by a power cut. Then every reminder is looked
for among the messages that arrived.

${table(rows)}
`;
  return { section, faults };
}

/** The section in the place of an earlier one, or at the end. */
export function withSection(text: string, section: string): string {
  const at = text.indexOf(heading);
  const before = at < 0 ? text : text.slice(0, at);
  return `${before.trimEnd()}\n\n${section}`;
}

if (import.meta.main) {
  const { section, faults } = await soakReminders();
  writeFileSync(results, withSection(readFileSync(results, 'utf8'), section));
  for (const fault of faults) process.stderr.write(`${fault}\n`);
  process.exitCode = faults.length > 0 ? 1 : 0;
}
