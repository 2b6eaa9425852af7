import { mkdir, mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Reply } from '../commands/card.ts';

/** What goes with an answer as a file of its own is written, and the answer says where it is. */
export async function written(reply: Reply, { data }: { readonly data?: string | undefined }): Promise<Reply> {
  const attachment = reply.kind === 'card' ? reply.card.attachment : undefined;
  if (reply.kind !== 'card' || !attachment?.apart) return reply;
  const { card } = reply;
  const said = await place(attachment, data).catch(
    (error) => `${attachment.name} could not be written (${error instanceof Error ? error.message : error}).`,
  );
  return { kind: 'card', card: { ...card, notes: [...card.notes, said] } };
}

/** Beside what is remembered, where something is; else among what the machine clears away by itself. */
async function place({ name, text }: { name: string; text: string }, data: string | undefined): Promise<string> {
  const folder = data === undefined ? await mkdtemp(join(tmpdir(), 'teemer-')) : join(data, 'why');
  await mkdir(folder, { recursive: true, mode: 0o700 });
  const file = join(folder, name);
  await writeFile(file, text, { mode: 0o600 });
  return `The file: ${file}`;
}
