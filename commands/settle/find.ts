import { AskError } from '../../core/ask-error.ts';
import { nearest } from '../../core/materials/nearest.ts';
import type { Answer } from '../command.ts';
import { type Argument, shelf } from './shelf.ts';

export function listAnswer(): Answer {
  return {
    headline: `${shelf.length} standing arguments: settle and a name computes the verdict now.`,
    figures: [],
    assumed: [],
    sources: [],
    table: { columns: ['settle …', 'the question'], rows: shelf.map(({ name, question }) => [name, question]) },
    notes: ['Change what is assumed by name=value behind it, or make it about a build of yours with for=.'],
    next: shelf.slice(0, 4).map(({ name, question }) => ({ label: question.slice(0, 60), line: `settle ${name}` })),
  };
}

/** An argument by its name, with options for every side behind it: `lump or briquettes amount=10 kg`. */
export function argumentFor(typed: string): { argument: Argument; more: Readonly<Record<string, string>> } {
  const starts = [...typed.matchAll(/(?<=^|\s)([\p{L}]+)\s*=/gu)];
  const name = typed.slice(0, starts[0]?.index ?? typed.length).trim();
  const more = Object.fromEntries(
    starts.map((match, index) => [
      (match[1] ?? '').toLowerCase(),
      typed.slice(match.index + match[0].length, starts[index + 1]?.index ?? typed.length).trim(),
    ]),
  );
  const wanted = plain(name);
  const argument = shelf.find((one) => [one.name, ...one.aliases].some((known) => plain(known) === wanted));
  if (argument) return { argument, more };
  const near = nearest(
    wanted,
    shelf.flatMap((one) => [one.name, ...one.aliases]),
    3,
  );
  const own = shelf.filter((one) => near.some((known) => known === one.name || one.aliases.includes(known)));
  throw new AskError({
    code: 'unknown-name',
    what: `"${name.slice(0, 60)}" is one side, or an argument that is not on the shelf`,
    expected: `another to set against it: other=, or " vs " between the two; or one of settle list, perhaps ${own.map((one) => one.name).join(', ')}`,
    example: `settle ${own[0]?.name ?? 'list'}`,
  });
}

/** Either way round, whatever stands between. */
const plain = (name: string): string =>
  name
    .toLowerCase()
    .replace(/\b(?:the|a|an)\s+/g, '')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()
    .split(/ (?:or|vs|versus) /)
    .sort()
    .join(' or ');
