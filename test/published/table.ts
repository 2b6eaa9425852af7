import { existsSync, globSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { TestProject } from 'vitest/node';
import type { Covered } from './coverage.ts';
import { coverageMarkdown } from './coverage-table.ts';
import { markdownTable, shown } from './markdown-table.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Where this run keeps its rows: its own, so that two runs at once do not take each other's. */
    rowsDirectory: string;
  }
}

const HERE = import.meta.dirname;
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
export default function table(project: TestProject): () => void {
  const directory = join(HERE, '.rows', String(process.pid));
  rmSync(directory, { recursive: true, force: true });
  mkdirSync(directory, { recursive: true });
  project.provide('rowsDirectory', directory);
  return () => {
    const rows = completeRows(directory);
    if (rows !== undefined) writeFileSync(RESULTS, resultsMarkdown(rows.filter(isRow), rows.filter(isCovered)));
    rmSync(directory, { recursive: true, force: true });
  };
}

export type Recorded = Row | (Covered & { readonly kind: 'coverage' });
const isCovered = (row: Recorded): row is Covered & { readonly kind: 'coverage' } => 'kind' in row;
const isRow = (row: Recorded): row is Row => !isCovered(row);

/** `undefined` when some test file here recorded nothing: it was not run, and its rows would be lost. */
function completeRows(directory: string): readonly Recorded[] | undefined {
  const files = globSync('*.test.ts', { cwd: HERE }).map((test) => join(directory, `${basename(test)}.jsonl`));
  if (files.length === 0 || !files.every((file) => existsSync(file))) return undefined;
  return files.flatMap((file) => readFileSync(file, 'utf8').trim().split('\n')).map((line) => JSON.parse(line));
}

const HEADS = ['Subject', 'Property', 'Ours', 'Outside', 'Difference', 'Tolerance', 'Source'] as const;
const LEFT = new Set<string>(['Subject', 'Property', 'Source']);

/** Sorted by what is compared, not by which test ran first, so that the same numbers give the same file. */
export function resultsMarkdown(rows: readonly Row[], covered: readonly Covered[]): string {
  const lines = new Map(rows.map(cellsOf).map((cells) => [cells.join('|'), cells]));
  const body = [...lines].sort(([one], [other]) => (one < other ? -1 : 1)).map(([, cells]) => cells);
  return [
    '# Our numbers beside numbers from outside',
    '',
    'Written by `npm test`. Do not edit: the tests in this directory record the rows.',
    '',
    ...coverageMarkdown(covered),
    '## Comparisons',
    '',
    ...markdownTable(HEADS, LEFT, body),
    '',
  ].join('\n');
}

function cellsOf({ subject, quantity, ours, theirs, unit, source, tolerance }: Row): readonly string[] {
  return [
    subject,
    quantity,
    `${shown(ours)} ${unit}`,
    `${shown(theirs)} ${unit}`,
    percent(ours - theirs, theirs),
    `${shown(tolerance)} ${unit}`,
    source,
  ];
}

/** To a hundredth of a percent, never `-0.00`: the last bits differ from machine to machine. */
function percent(difference: number, of: number): string {
  if (of === 0) return '–';
  const rounded = Math.round((difference / Math.abs(of)) * 10_000) / 100;
  return `${(rounded === 0 ? 0 : rounded).toFixed(2)} %`;
}
