import { randomUUID } from 'node:crypto';
import { renderReply } from '../adapters/terminal/render.ts';
import { answerLine } from '../commands/answer.ts';
import type { Card, Reply } from '../commands/card.ts';
import { type Config, readConfig } from './config.ts';
import { type Flags, readFlags, usage } from './flags.ts';
import { logFault } from './log.ts';
import { lookOf } from './look.ts';
import { openMemory } from './store/remember.ts';
import { versions } from './versions.ts';
import { written } from './written.ts';

const answered = 0;
const faulty = 1;
const notAsked = 2;

/** One question from the command line. Returns the exit code: 0 a card, 2 an asker's mistake, 1 a fault. */
export async function askOnce(typed: readonly string[]): Promise<number> {
  const config = readConfig(process.env);
  const flags = readFlags(typed);
  if (flags.kind === 'refused') return complain(flags.why);
  if (flags.help) {
    process.stdout.write(`${usage}\n`);
    return answered;
  }
  const { memory, close } = await openMemory(config);
  try {
    const context = { asker: 'me', place: 'terminal', now: new Date(), memory, versions };
    return await show(await answerLine(flags.line, context), flags, config);
  } catch (error) {
    const id = randomUUID().slice(0, 8);
    await logFault(config, error, id);
    process.stderr.write(`That went wrong here, not with you. It is logged as ${id}.\n`);
    return faulty;
  } finally {
    await close();
  }
}

async function show(reply: Reply, flags: Flags, config: Config): Promise<number> {
  const { json, png, svg, sheets } = flags;
  if (reply.kind === 'error') {
    if (json) writeJson({ error: reply.error, cautions: reply.cautions });
    else process.stderr.write(`${renderReply(reply, lookOf(config, process.stderr))}\n`);
    return notAsked;
  }
  if (png ?? svg ?? sheets) return draw(reply.card, flags);
  if (json) writeJson(reply.card);
  else process.stdout.write(`${renderReply(await written(reply, config), lookOf(config))}\n`);
  return answered;
}

/** Nothing of the picture code is loaded for an answer in text. */
async function draw(card: Card, { png, svg, sheets, dark }: Flags): Promise<number> {
  const { writePictures, writeSheets } = await import('./pictures.ts');
  try {
    await writePictures(card, { png, svg, theme: dark ? 'dark' : undefined });
    if (sheets === undefined || (await writeSheets(card, sheets)) > 0) return answered;
    return complain(`${card.command} has no full-size pattern to print; --png FILE writes what it has`);
  } catch (error) {
    if (!(error instanceof Error && 'syscall' in error && 'code' in error)) throw error;
    const file = 'path' in error ? String(error.path) : (png ?? svg ?? sheets);
    return complain(`${file} can't be written (${error.code}); name a file in a folder that exists, such as mix.svg`);
  }
}

const writeJson = (value: unknown) => process.stdout.write(`${JSON.stringify(value, null, 2)}\n`);

function complain(why: string): number {
  process.stderr.write(`${why}\n`);
  return notAsked;
}
