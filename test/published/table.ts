import { existsSync, globSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';

const HERE = import.meta.dirname;
export const ROWS_DIRECTORY = join(HERE, '.rows');
const RESULTS = join(HERE, 'RESULTS.md');

/** One comparison of a number of ours with one from outside; `tolerance` is in the same unit. */
export interface Row {
  readonly subject: string;
  readonly quantity: string;
  readonly ours: number;
  readonly theirs: number;
  readonly unit: string;
  readonly source: string;
  readonly tolerance: number;
}

/** Around the whole run: what the comparisons recorded becomes RESULTS.md, if every one of them ran. */
export default function table(): () => void {
  rmSync(ROWS_DIRECTORY, { recursive: true, force: true });
  return () => {
    const files = globSync('*.test.ts', { cwd: HERE }).map((test) => join(ROWS_DIRECTORY, `${basename(test)}.jsonl`));
    if (files.length === 0 || !files.every((file) => existsSync(file))) return;
    const rows = files.flatMap((file) => readFileSync(file, 'utf8').trim().split('\n')).map((line) => JSON.parse(line));
    writeFileSync(RESULTS, resultsMarkdown(rows));
  };
}

/** Sorted by what is compared, not by which test ran first, so that the same numbers give the same file. */
export function resultsMarkdown(rows: readonly Row[]): string {
  const lines = [...new Set(rows.map(line))].sort();
  return [
    '# Our numbers beside numbers from outside',
    '',
    'Written by `npm test`. Do not edit: the tests in this directory record the rows.',
    '',
    '| Subject | Property | Ours | Outside | Difference | Tolerance | Source |',
    '| --- | --- | ---: | ---: | ---: | ---: | --- |',
    ...lines,
    '',
  ].join('\n');
}

function line({ subject, quantity, ours, theirs, unit, source, tolerance }: Row): string {
  const cells = [
    subject,
    quantity,
    `${shown(ours)} ${unit}`,
    `${shown(theirs)} ${unit}`,
    percent(ours - theirs, theirs),
    `${shown(tolerance)} ${unit}`,
    source,
  ];
  return `| ${cells.map((cell) => cell.trim().replaceAll('|', '\\|')).join(' | ')} |`;
}

const shown = (value: number): string => String(Number(value.toPrecision(4)));

/** To a hundredth of a percent, never `-0.00`: the last bits differ from machine to machine. */
function percent(difference: number, of: number): string {
  if (of === 0) return '–';
  const rounded = Math.round((difference / Math.abs(of)) * 10_000) / 100;
  return `${(rounded === 0 ? 0 : rounded).toFixed(2)} %`;
}
