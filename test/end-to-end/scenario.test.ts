import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { picturesOf } from '../../adapters/picture/pictures.ts';
import { pngOf } from '../../adapters/picture/png.ts';
import { renderReply } from '../../adapters/terminal/render.ts';
import type { Card } from '../../commands/card.ts';
import { conversation } from '../contract/conversation.ts';
import { runProgram } from './run-program.ts';
import { scenario } from './scenario.ts';

/** `WRITE_PICTURES=1 npx vitest run test/end-to-end/scenario.test.ts` draws the committed pictures anew. */
const folder = new URL('pictures/', import.meta.url);
const shown: readonly { line: string; id: string; file: string; theme: 'light' | 'dark' }[] = [
  { line: scenario[0]!.line, id: 'section', file: 'size-section', theme: 'light' },
  { line: scenario[0]!.line, id: 'section', file: 'size-section-dark', theme: 'dark' },
  { line: scenario[0]!.line, id: 'plan', file: 'size-plan', theme: 'light' },
  { line: scenario[0]!.line, id: 'inner-form', file: 'size-inner-form', theme: 'light' },
  { line: scenario[0]!.line, id: 'outer-form', file: 'size-outer-form', theme: 'light' },
  { line: scenario[0]!.line, id: 'roll', file: 'size-roll', theme: 'light' },
  { line: scenario[2]!.line, id: 'chart', file: 'wall-chart', theme: 'light' },
  { line: scenario[2]!.line, id: 'chart', file: 'wall-chart-dark', theme: 'dark' },
];

const cards = new Map<string, Card>();
const ask = conversation();
for (const { line } of scenario) {
  const reply = await ask(line);
  if (reply.kind === 'card') cards.set(line, reply.card);
}

describe.each(scenario)('the club asks: $line', ({ line, shows, warns, pictures }) => {
  test('and is answered, with what can hurt', () => {
    const card = cards.get(line);
    if (!card) return expect.fail('no answer');
    const text = renderReply({ kind: 'card', card }, { color: false, width: 100 }).replace(/\s+/g, ' ');
    for (const wanted of shows) expect(text).toMatch(wanted);
    expect(card.cautions.map(({ text: words }) => words).join(' ')).toMatch(warns);
    expect(card.cautions.at(-1)?.id).toBe('local-rules');
    for (const id of pictures ?? []) expect(picturesOf(card).map((one) => one.id)).toContain(id);
  });
});

test('the evening, typed at the terminal from start to end', { timeout: 120_000 }, async () => {
  const { out, err, code } = await runProgram('bot/main.ts', [], `${scenario.map(({ line }) => line).join('\n')}\n`);
  expect({ err, code }).toEqual({ err: '', code: 0 });
  const flat = out.replace(/\s+/g, ' ');
  for (const { shows } of scenario) for (const wanted of shows) expect(flat).toMatch(wanted);
});

describe('the committed pictures are those the program draws', () => {
  test.each(shown)('$file', async ({ line, id, file, theme }) => {
    const card = cards.get(line);
    const picture = card && picturesOf(card).find((one) => one.id === id);
    if (!picture) return expect.fail(`no picture ${id}`);
    const svg = await picture.svg({ theme, units: card.units });
    const at = new URL(`${file}.svg`, folder);
    if (process.env.WRITE_PICTURES) {
      mkdirSync(folder, { recursive: true });
      writeFileSync(at, svg);
      writeFileSync(new URL(`${file}.png`, folder), pngOf(svg, { width_px: 1100 }));
    }
    expect(svg).toBe(readFileSync(at, 'utf8'));
  });
});
