import { existsSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { renderReply } from '../adapters/terminal/render.ts';
import { answerLine } from '../commands/answer.ts';
import type { Card, Reply } from '../commands/card.ts';
import { inProcessMemory } from '../commands/memory.ts';
import { written } from './written.ts';

const folders: string[] = [];
afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});
const folder = () => {
  const made = mkdtempSync(join(tmpdir(), 'written-'));
  folders.push(made);
  return made;
};

async function why(): Promise<Card> {
  const memory = inProcessMemory();
  const context = { asker: 'me', place: 'terminal', now: new Date(), memory };
  await answerLine('mix 30 L', context);
  return cardOf(await answerLine('why', context));
}
function cardOf(reply: Reply): Card {
  if (reply.kind === 'error') throw new Error(reply.error.what);
  return reply.card;
}
const fileIn = ({ notes }: Card): string =>
  notes.find((note) => note.startsWith('The file: '))!.slice('The file: '.length);

describe('a file that goes with an answer', () => {
  it('is written beside what is remembered, for nobody else to read, and the answer says where', async () => {
    const card = await why();
    const data = folder();
    const reply = await written({ kind: 'card', card }, { data });
    const file = fileIn(cardOf(reply));
    expect(file).toBe(join(data, 'why', 'why-mix.md'));
    expect(readFileSync(file, 'utf8')).toBe(card.attachment!.text);
    expect(statSync(file).mode & 0o777).toBe(0o600);
    const shown = renderReply(reply, { color: false, width: 400 });
    expect(shown).toContain(file);
    expect(shown).not.toContain('## The working');
  });

  it('is written anew for the next question of the same command', async () => {
    const data = folder();
    const card = await why();
    await written({ kind: 'card', card }, { data });
    const next = { ...card, attachment: { ...card.attachment!, text: 'another\n' } };
    expect(readFileSync(fileIn(cardOf(await written({ kind: 'card', card: next }, { data }))), 'utf8')).toBe(
      'another\n',
    );
  });

  it('is among what the machine clears away where nothing is remembered', async () => {
    const file = fileIn(cardOf(await written({ kind: 'card', card: await why() }, { data: undefined })));
    folders.push(dirname(file));
    expect(file.startsWith(tmpdir())).toBe(true);
    expect(existsSync(file)).toBe(true);
  });

  it('that can’t be written takes no answer away', async () => {
    const blocked = join(folder(), 'a file');
    writeFileSync(blocked, '');
    const card = cardOf(await written({ kind: 'card', card: await why() }, { data: blocked }));
    expect(card.notes.at(-1)).toMatch(/^why-mix\.md could not be written \(/);
  });

  it('leaves alone what is shown where it stands', async () => {
    const reply = await answerLine('mydata', { asker: 'me', place: 'x', now: new Date(), memory: inProcessMemory() });
    expect(await written(reply, { data: folder() })).toBe(reply);
  });
});
