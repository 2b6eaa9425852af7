import { PassThrough } from 'node:stream';
import { expect, test, vi } from 'vitest';
import type { Reply } from '../../commands/card.ts';
import { prompt } from './prompt.ts';
import { sampleCard } from './sample-card.ts';

const card = (line: string): Reply => ({ kind: 'card', card: { ...sampleCard, headline: `answer to ${line}` } });

async function talk(lines: readonly string[], ask: (line: string) => Promise<Reply>, isTTY = false) {
  const input = Object.assign(new PassThrough(), { isTTY });
  const output = Object.assign(new PassThrough(), { isTTY });
  const onFault = vi.fn();
  let said = '';
  output.on('data', (chunk) => {
    said += String(chunk);
  });
  input.end(`${lines.join('\n')}\n`);
  await prompt({ ask, commands: [], input, output, look: () => ({ color: false, width: 80 }), onFault });
  return { said, onFault };
}

test('a fault is logged under the id that is shown, and the next line is answered', async () => {
  const ask = async (line: string) => {
    if (line === 'break') throw new Error('broken');
    return card(line);
  };
  const { said, onFault } = await talk(['break', 'go on'], ask);
  const [error, id] = onFault.mock.calls[0] ?? [];
  expect(error).toEqual(new Error('broken'));
  expect(id).toMatch(/^[0-9a-f]{8}$/);
  expect(said).toContain(id);
  expect(said).not.toContain('broken');
  expect(said).toContain('answer to go on');
});

test('numbers ask the follow-ups of the last answer', async () => {
  const asked: string[] = [];
  const { said } = await talk(['1', 'one', '1', '2', '3'], async (line) => {
    asked.push(line);
    return card(line);
  });
  expect(asked).toEqual(['one', 'again damp=0%', 'why']);
  expect(said).toContain('no numbered question');
  expect(said).toContain('go from 1 to 2');
});

test('after a mistake, 1 sends the line that works', async () => {
  const asked: string[] = [];
  await talk(['mx', '1'], async (line) => {
    asked.push(line);
    const error = { code: 'unknown-command', what: 'no mx', expected: 'mix', example: 'mix 3 L' } as const;
    return { kind: 'error', error, cautions: [] };
  });
  expect(asked).toEqual(['mx', 'mix 3 L']);
});

test('someone at a terminal sees the prompt, a pipe does not', async () => {
  expect((await talk(['a'], async (line) => card(line), true)).said).toContain('teemer> ');
  expect((await talk(['a'], async (line) => card(line))).said).not.toContain('teemer> ');
});

test.each(['exit', 'quit', 'EXIT'])('%s leaves', async (word) => {
  const ask = vi.fn(async (line: string) => card(line));
  await talk([word, 'after'], ask);
  expect(ask).not.toHaveBeenCalled();
});
