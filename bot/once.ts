import { randomUUID } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import { textPage } from '../adapters/picture/page.ts';
import { renderReply } from '../adapters/terminal/render.ts';
import { answerLine } from '../commands/answer.ts';
import type { Reply } from '../commands/card.ts';
import { inProcessMemory } from '../commands/memory.ts';
import { type Config, readConfig } from './config.ts';
import { type Flags, readFlags, usage } from './flags.ts';
import { logFault } from './log.ts';
import { lookOf } from './look.ts';

const answered = 0;
const faulty = 1;
const notAsked = 2;
/** Columns of a picture: it reads at the width of a chat window. */
const pictureColumns = 100;

/** One question from the command line. Returns the exit code: 0 a card, 2 an asker's mistake, 1 a fault. */
export async function askOnce(typed: readonly string[]): Promise<number> {
  const config = readConfig(process.env);
  const flags = readFlags(typed);
  if (flags.kind === 'refused') return complain(flags.why);
  if (flags.help) {
    process.stdout.write(`${usage}\n`);
    return answered;
  }
  try {
    const context = { asker: 'me', place: 'terminal', now: new Date(), memory: inProcessMemory() };
    return show(await answerLine(flags.line, context), flags, config);
  } catch (error) {
    const id = randomUUID().slice(0, 8);
    await logFault(config, error, id);
    process.stderr.write(`That went wrong here, not with you. It is logged as ${id}.\n`);
    return faulty;
  }
}

function show(reply: Reply, { json, picture }: Flags, config: Config): number {
  if (reply.kind === 'error') {
    if (json) writeJson({ error: reply.error, cautions: reply.cautions });
    else process.stderr.write(`${renderReply(reply, lookOf(config, process.stderr))}\n`);
    return notAsked;
  }
  const { card } = reply;
  if (picture !== undefined) {
    return writePicture(
      picture,
      textPage(renderReply(reply, { color: false, width: pictureColumns }), { title: card.headline }),
    );
  }
  if (json) writeJson(card);
  else process.stdout.write(`${renderReply(reply, lookOf(config))}\n`);
  return answered;
}

function writePicture(file: string, svg: string): number {
  try {
    writeFileSync(file, svg);
    return answered;
  } catch (error) {
    const why = error instanceof Error && 'code' in error ? String(error.code) : 'unknown reason';
    return complain(`${file} can't be written (${why}); name a file in a folder that exists, such as mix.svg`);
  }
}

const writeJson = (value: unknown) => process.stdout.write(`${JSON.stringify(value, null, 2)}\n`);

function complain(why: string): number {
  process.stderr.write(`${why}\n`);
  return notAsked;
}
