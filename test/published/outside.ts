import { appendFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { expect, inject } from 'vitest';
import type { Covered } from './coverage.ts';
import type { Recorded, Row } from './table.ts';

export interface OutsideCase extends Row {
  /** Why the tolerance is what it is. */
  readonly reason: string;
}

const begun = new Set<string>();

/** Holds one of our numbers against one from outside the project, and keeps both for RESULTS.md. */
export function outside({ subject, quantity, ours, theirs, unit, source, tolerance, reason }: OutsideCase): void {
  record({ subject, quantity, ours, theirs, unit, source, tolerance });
  expect(
    Math.abs(ours - theirs),
    `${subject}, ${quantity}: ours ${ours} ${unit}, theirs ${theirs} ${unit} (${source}); at most ${tolerance} ${unit} apart: ${reason}`,
  ).toBeLessThanOrEqual(tolerance);
}

/** Keeps published values that stand beside our ranges for RESULTS.md. */
export function recordCoverage(rows: readonly Covered[]): void {
  for (const row of rows) record({ kind: 'coverage', ...row });
}

function record(row: Recorded): void {
  const file = join(inject('rowsDirectory'), `${basename(expect.getState().testPath ?? 'unknown')}.jsonl`);
  if (!begun.has(file)) {
    begun.add(file);
    writeFileSync(file, '');
  }
  appendFileSync(file, `${JSON.stringify(row)}\n`);
}
