import { randomUUID } from 'node:crypto';
import { createInterface } from 'node:readline/promises';
import type { Card, Reply } from '../../commands/card.ts';
import type { Command } from '../../commands/command.ts';
import { completer } from './complete.ts';
import { renderReply } from './render.ts';
import { type Look, paint, wrap } from './text.ts';

export interface PromptParts {
  readonly ask: (line: string) => Promise<Reply>;
  readonly commands: readonly Command[];
  readonly input: NodeJS.ReadableStream & { readonly isTTY?: boolean };
  readonly output: NodeJS.WritableStream & { readonly isTTY?: boolean };
  /** Asked before every answer: a window can be resized. */
  readonly look: () => Look;
  /** A fault of the program: the id is what the reader was shown. */
  readonly onFault: (error: unknown, id: string) => void | Promise<void>;
}

const farewells = new Set(['exit', 'quit']);

/** Questions and answers until the input ends. Piped lines are answered without any prompt text. */
export async function prompt({ ask, commands, input, output, look, onFault }: PromptParts): Promise<void> {
  const live = Boolean(input.isTTY && output.isTTY);
  const say = (text: string) => output.write(`${text}\n`);
  const lines = createInterface({
    input,
    ...(live ? { output, terminal: true, completer: completer(commands), historySize: 200 } : { terminal: false }),
    prompt: paint('cyan', 'teemer> ', look()),
    removeHistoryDuplicates: true,
  });
  // Lines typed ahead are still answered after the input has ended, but there is nothing left to prompt for.
  let open = true;
  lines.on('close', () => {
    open = false;
  });
  lines.on('SIGINT', () => lines.close());
  if (live) {
    say(
      wrap('Ask about linings and mixes, in your own units. help lists the questions, exit leaves.', look().width).join(
        '\n',
      ),
    );
    lines.prompt();
  }
  let next: Card['next'] = [];
  for await (const typed of lines) {
    const line = typed.trim();
    if (farewells.has(line.toLowerCase())) break;
    if (line !== '') {
      const answer = await answerTo(line);
      say(live ? `\n${answer}\n` : `${answer}\n`);
    }
    if (live && open) lines.prompt();
  }
  if (live && !open) say('');
  lines.close();

  async function answerTo(line: string): Promise<string> {
    const meant = /^\d{1,2}$/.test(line) ? next[Number(line) - 1]?.line : line;
    if (meant === undefined) return noSuchNumber(next.length);
    try {
      const reply = await ask(meant);
      next = reply.kind === 'card' ? reply.card.next : [{ label: '', line: reply.tryLine ?? reply.error.example }];
      const asked = meant === line ? '' : `${paint('dim', `> ${meant}`, look())}\n\n`;
      return asked + renderReply(reply, look());
    } catch (error) {
      const id = randomUUID().slice(0, 8);
      await onFault(error, id);
      return wrap(faultText(id), look().width).join('\n');
    }
  }
}

export const faultText = (id: string): string =>
  `That went wrong here, not with you. It is logged as ${id}; the next question is answered as usual.`;

const noSuchNumber = (count: number): string =>
  count === 0 ? 'There is no numbered question to ask yet.' : `The numbered questions go from 1 to ${count}.`;
