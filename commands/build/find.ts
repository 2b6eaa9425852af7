import { AskError } from '../../core/ask-error.ts';
import { nearest } from '../../core/materials/nearest.ts';
import type { Build, Memory } from '../memory.ts';

/** `club furnace`, or one revision of it: `club furnace 2`, `club furnace@2`. A build of that very name goes first. */
export async function findBuild(
  typed: string,
  { asker, memory, option = 'for' }: { asker: string; memory: Memory; option?: string },
): Promise<Build> {
  const name = tidyName(typed);
  const found = (await memory.build(asker, name)) ?? (await revisionOf(name, asker, memory));
  if (found) return found;
  const own = (await memory.builds(asker)).map((one) => one.name);
  const near = nearest(name, own, 3);
  throw new AskError({
    code: 'unknown-name',
    what: `you have no build called "${short(name)}"${own.length === 0 ? ', nor any other yet' : ''}`,
    expected: [
      ...(option === 'for' ? ['last', 'a line in parentheses'] : []),
      near.length === 0 ? 'a name that you gave by build save' : `a build of yours, perhaps ${near.join(', ')}`,
    ].join(', or '),
    example: near[0] ?? (option === 'for' ? 'last' : 'build save club furnace for=(mix 30 L)'),
    option,
  });
}

/** A build by its very name, for what is done to all of it: a revision's number behind it is refused, not overlooked. */
export async function findWhole(typed: string, { asker, memory }: { asker: string; memory: Memory }): Promise<Build> {
  const build = await findBuild(typed, { asker, memory, option: 'name' });
  if (await memory.build(asker, tidyName(typed))) return build;
  throw new AskError({
    code: 'refused',
    what: `that is one revision of ${build.name}, and this is done to a build as a whole`,
    expected: 'the name alone; build save keeps an older revision under a name of its own',
    example: build.name,
    option: 'name',
  });
}

function revisionOf(name: string, asker: string, memory: Memory): Promise<Build | undefined> | undefined {
  const [, bare, number] = /^(.+?) ?[@ ] ?(\d{1,6})$/.exec(name) ?? [];
  return bare === undefined ? undefined : memory.build(asker, bare, Number(number));
}

/** One way to write a name: single spaces, nothing invisible, no mark of a question behind it. */
const tidyName = (typed: string): string =>
  typed
    .normalize('NFC')
    .replace(/[\p{C}\p{Z}]+/gu, ' ')
    .replace(/[?! ]+$/, '')
    .trim();

const longest = 40;

/** A name to keep something under: what the grammar would read as its own is refused. */
export function readName(typed: string, option: string): string {
  const name = tidyName(typed);
  const refuse = (what: string, expected: string, example = 'club furnace') =>
    new AskError({ code: 'unreadable', what, expected, example, option });
  const { length } = [...name];
  if (length === 0) throw refuse('the name is empty', `a name of 1 to ${longest} characters`);
  if (length > longest) {
    throw refuse(
      `the name has ${length} characters`,
      `at most ${longest}`,
      [...name].slice(0, longest).join('').trim(),
    );
  }
  const mark = /[=()@]/.exec(name)?.[0];
  if (mark)
    throw refuse(
      `a name can't hold "${mark}", which means something in a question`,
      'letters, digits, spaces, hyphens',
      spared(name),
    );
  if (/(?:^|\s)vs\.?(?:\s|$)/i.test(name))
    throw refuse('"vs" stands between two builds, so it can\'t be part of a name', 'another word', spared(name));
  if (name.toLowerCase() === 'last') throw refuse('"last" always means your last answer', 'another name');
  return name;
}

const spared = (name: string): string =>
  name
    .replace(/[=()@]/g, ' ')
    .replace(/(?<=^|\s)vs\.?(?=\s|$)/gi, 'and')
    .replace(/ +/g, ' ')
    .trim() || 'club furnace';

const short = (name: string): string => [...name].slice(0, longest).join('');
