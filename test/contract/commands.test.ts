import { describe, expect, test } from 'vitest';
import type { Reply } from '../../commands/card.ts';
import type { Command } from '../../commands/command.ts';
import { commands } from '../../commands/registry.ts';
import { cautionsFor } from '../../core/hazard/cautions.ts';
import { sourceOf } from '../../core/sources/sources.ts';
import { conversation } from './conversation.ts';
import { linesBefore } from './prepared.ts';

/** What every command of the registry keeps to, whichever it is. */
const closing = 'local-rules';
/** A follow-up may turn out not to fit the case; it may never be one that can't be read. */
const unsuited = new Set(['unfit', 'impossible', 'refused', 'out-of-range']);

/** A family of commands that answer one question from several sides shares a stem: `size can`, `size melt`. */
const stemOf = (command: string) => command.split(' ', 1)[0];

const isHot = ({ hazards }: Command) => cautionsFor({ facts: hazards }).some(({ id }) => id === closing);

const examples = commands.flatMap((command) => command.examples.map(({ line }): [string, Command] => [line, command]));

/** A conversation in which an example of this command makes sense. */
async function prepared({ name }: Command) {
  const ask = conversation();
  for (const line of linesBefore(name)) expect((await ask(line)).kind, line).toBe('card');
  return ask;
}

describe.each(examples)('the example "%s"', (line, command) => {
  let answered: Promise<Reply> | undefined;
  const answer = () => {
    answered ??= prepared(command).then((ask) => ask(line));
    return answered;
  };

  test('is answered, with figures its command declares', async () => {
    const reply = await answer();
    if (reply.kind === 'error') expect.fail(`${reply.error.what}; expected ${reply.error.expected}`);
    const { card } = reply;
    const owner = commands.find(({ name }) => name === card.command);
    for (const { id } of card.figures) {
      expect(id.startsWith(`${stemOf(card.command)}.`)).toBe(true);
      expect(Object.keys(owner?.figures ?? {})).toContain(id);
    }
    const ids = card.figures.map(({ id }) => id);
    expect(ids).toEqual([...new Set(ids)]);
  });

  test('names sources that are in the one table, and steps that end somewhere', async () => {
    const reply = await answer();
    if (reply.kind === 'error') return expect.fail(reply.error.what);
    for (const id of reply.card.sources) expect(sourceOf(id).title).not.toBe('');
    for (const { source, gives } of reply.card.working) {
      expect(sourceOf(source).title).not.toBe('');
      expect(Object.values(gives).every(Number.isFinite)).toBe(true);
    }
  });

  test('offers follow-up questions that can be read', async () => {
    const ask = await prepared(command);
    const reply = await ask(line);
    if (reply.kind === 'error') return expect.fail(reply.error.what);
    for (const { line: follow } of reply.card.next) {
      const next = await ask(follow);
      if (next.kind === 'error' && !unsuited.has(next.error.code)) expect.fail(`"${follow}": ${next.error.what}`);
    }
  });

  if (isHot(command))
    test('says what can hurt and closes with local rules', async () => {
      const reply = await answer();
      const cautions = reply.kind === 'card' ? reply.card.cautions : reply.cautions;
      expect(cautions.length).toBeGreaterThan(1);
      expect(cautions.at(-1)?.id).toBe(closing);
    });
});

describe.each(commands.filter(isHot).map((command): [string, Command] => [command.name, command]))(
  'hot work in %s',
  (name, command) => {
    const badSubjects = command.subject === undefined ? [] : [`${name} qqqqzzz`, `${name} ${'9'.repeat(30)}`];
    const bad = [...badSubjects, `${name} zzz=1`, `${name} units=cubits`, `${name} for=(nothing)`];

    test.each(bad)('cautions reach the mistake "%s"', async (line) => {
      const reply = await conversation()(line);
      if (reply.kind === 'card') return expect.fail('this should be a mistake');
      expect(reply.cautions.length).toBeGreaterThan(1);
      expect(reply.cautions.at(-1)?.id).toBe(closing);
      expect(reply.error.example).not.toBe('');
    });
  },
);
