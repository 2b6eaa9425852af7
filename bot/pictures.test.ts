import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { sampleChart, sampleDrawing, samplePattern } from '../adapters/picture/sample.ts';
import { sampleCard } from '../adapters/terminal/sample-card.ts';
import { filesFor, writePictures, writeSheets } from './pictures.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'pictures-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

const card = { ...sampleCard, drawings: [sampleDrawing, samplePattern], chart: sampleChart };

test('the first picture has the file’s own name, the others their id behind it', () => {
  expect(filesFor('out/size.png', ['section', 'plan', 'inner-form'])).toEqual([
    'out/size.png',
    'out/size-plan.png',
    'out/size-inner-form.png',
  ]);
  expect(filesFor('size', ['section', 'chart'])).toEqual(['size', 'size-chart']);
});

test('every picture is written, as SVG and as PNG', async () => {
  await writePictures(card, { png: join(folder, 'size.png'), svg: join(folder, 'size.svg'), theme: 'dark' });
  expect(readdirSync(folder).sort()).toEqual(
    ['size-chart.png', 'size-chart.svg', 'size-inner-form.png', 'size-inner-form.svg', 'size.png', 'size.svg'].sort(),
  );
  expect(readFileSync(join(folder, 'size.svg'), 'utf8')).toContain(`<title>${sampleDrawing.title}</title>`);
  expect(readFileSync(join(folder, 'size-chart.png')).subarray(1, 4).toString()).toBe('PNG');
});

test('only full-size patterns go to sheets', async () => {
  const sheets = join(folder, 'sheets', 'new');
  const count = await writeSheets(card, sheets);
  const files = readdirSync(sheets);
  expect(files).toHaveLength(count);
  expect(files).toContain('inner-form-1.svg');
  expect(readFileSync(join(sheets, 'inner-form-1.svg'), 'utf8')).toMatch(/(width|height)="210mm"/);
  expect(await writeSheets({ ...card, drawings: [sampleDrawing] }, sheets)).toBe(0);
});
