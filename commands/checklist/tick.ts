import { z } from 'zod';
import { AskError } from '../../core/ask-error.ts';
import { type ItemState, type Missing, missingFor } from '../../core/build/progress.ts';
import { factsOf } from '../../core/build/stage.ts';
import { restsOn } from '../../core/build/stages.ts';
import type { Command } from '../command.ts';
import { text } from '../options.ts';
import { ageOf } from '../prices.ts';
import { checklistFigures, family, listOption } from './family.ts';
import { type Found, findItem } from './find-item.ts';
import { needList, type Opened, progressWith } from './opened.ts';
import { listAnswer } from './show.ts';
import { heldWords, whoOf } from './words.ts';

const options = z.strictObject({
  item: text({ label: 'what is done', most: 80 }),
  list: listOption(),
});

export const checklistTick = {
  ...family,
  name: 'checklist tick',
  summary: 'Tick what is done; refused while something that it rests on is open.',
  options,
  subject: 'item',
  examples: [
    { line: 'checklist tick 1.1', says: 'by its number; 1 is the whole stage' },
    { line: 'checklist tick burn water', says: 'by words of it' },
  ],
  figures: checklistFigures,
  async answer({ item: typed, list: name }, context) {
    const { memory, asker, now } = context;
    const open = await needList(name, context);
    const found = findItem(
      typed,
      open.progress,
      ({ id, ticked }) => !ticked && missingFor(id, open.progress).length === 0,
    );
    const items = found.items.filter(({ ticked }) => !ticked);
    refuseHeld(found, items, open);
    const fresh: ItemState[] = [];
    for (const item of items) if (await memory.tick(open.list.id, item.id, { by: asker, now })) fresh.push(item);
    // Somebody else may have been quicker: then the list is not as it was read.
    const quicker = fresh.length < items.length;
    const read = quicker ? await memory.checklist(context.place, open.list.name) : undefined;
    const mine = fresh.map(({ id }) => ({ item: id, by: asker, at: now }));
    const list = read ?? { ...open.list, ticks: [...open.list.ticks, ...mine] };
    const after: Opened = { ...open, list, progress: progressWith(list, open.kind, open.logged) };
    const answer = listAnswer(after, context, fresh.length > 0 ? tickedWords(found, fresh) : beforeWords(found, after));
    const facts = [...factsOf(found.at.stage, open.kind), ...(answer.hazards?.facts ?? [])];
    return { ...answer, hazards: { facts } };

    function beforeWords({ items: all }: Found, { list: { ticks } }: Opened): string {
      const last = ticks.findLast(({ item }) => all.some(({ id }) => id === item));
      const who = last ? `, by ${whoOf(ticks, asker)(last)}, ${ageOf(last.at, now)}` : '';
      return `That was ticked already${who}.`;
    }
  },
} satisfies Command<typeof options>;

const tickedWords = ({ at, whole }: Found, fresh: readonly ItemState[]): string => {
  const [only] = fresh;
  return whole
    ? `Ticked stage ${at.number}, ${at.stage.name} (${fresh.length} ${fresh.length === 1 ? 'thing' : 'things'}).`
    : `Ticked ${only!.number}, ${only!.text}.`;
};

/** What is ticked together may rest on each other; all else must be done before. */
function refuseHeld({ at, whole }: Found, items: readonly ItemState[], { list, kind, progress }: Opened): void {
  const together = new Set(items.map(({ id }) => id));
  const missing = items.flatMap((item) =>
    missingFor(item.id, progress).flatMap((one): Missing[] => {
      const others = one.items.filter(({ id }) => !together.has(id));
      return others.length === 0 ? [] : [{ ...one, items: others }];
    }),
  );
  if (missing.length === 0) return;
  const held = [...Map.groupBy(missing, (one) => one.at.number).values()].map(([one]) => one!);
  held.sort((a, b) => a.at.number - b.at.number);
  const [first] = held;
  const what = whole ? `stage ${at.number}, ${at.stage.name}` : `${items[0]!.number}, ${items[0]!.text},`;
  const logged = held.find((one) => one.at.stage.logged !== undefined && restsOn(at.stage.id).has(one.at.stage.id));
  throw new AskError({
    code: 'refused',
    what: `${what} is held: first ${heldWords(held)}`,
    expected: [
      `${first!.at.stage.name} done and ticked`,
      ...(logged ? [`log ${logged.at.stage.logged}, where the scale agrees, counts for ${logged.at.stage.name}`] : []),
    ].join('; '),
    example: `checklist tick ${first!.items[0]!.id} list=${list.name}`,
    facts: [at, first!.at, ...(logged ? [logged.at] : [])].flatMap(({ stage }) => factsOf(stage, kind)),
  });
}
