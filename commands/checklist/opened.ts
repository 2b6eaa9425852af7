import { AskError } from '../../core/ask-error.ts';
import { type Progress, progressOf } from '../../core/build/progress.ts';
import { type BuildKind, itemsOf } from '../../core/build/stage.ts';
import { stagesFor } from '../../core/build/stages.ts';
import { nearest } from '../../core/materials/nearest.ts';
import type { AnswerContext, Ask } from '../command.ts';
import type { Checklist, LogEntry } from '../memory-weeks.ts';
import { nestedLine } from '../source.ts';
import { type Chosen, kindOf } from './kind.ts';

/** A checklist with what it is of and how far it is. */
export interface Opened {
  readonly list: Checklist;
  readonly question: Ask;
  readonly chosen: Chosen;
  readonly kind: BuildKind;
  readonly progress: Progress;
  /** By kind, the newest: what the log says of this build. */
  readonly logged: ReadonlyMap<string, LogEntry>;
}

type Reading = Pick<AnswerContext, 'asker' | 'place' | 'memory' | 'parse' | 'commands' | 'units'>;

/** The one of that name in this place, else its newest; nothing where there is none at all. */
export async function findList(name: string | undefined, context: Reading): Promise<Opened | undefined> {
  const { memory, place } = context;
  const list = await memory.checklist(place, name);
  if (list) return opened(list, context);
  if (name === undefined) return undefined;
  const here = (await memory.checklists(place)).map((one) => one.name);
  const [near] = nearest(name, here, 1);
  throw new AskError({
    code: 'unknown-name',
    what: `no checklist here is called "${name.slice(0, 40)}"`,
    expected: here.length === 0 ? 'one that was started here' : `one of ${here.slice(0, 8).join(', ')}`,
    example: near === undefined ? startLine : near,
    ...(near === undefined ? {} : { option: 'list' }),
  });
}

export async function needList(name: string | undefined, context: Reading): Promise<Opened> {
  const found = await findList(name, context);
  if (found) return found;
  throw new AskError({
    code: 'nothing-before',
    what: 'no checklist has been started here',
    expected: 'checklist start with the name of a build, or for= and its question',
    example: startLine,
  });
}

const startLine = 'checklist start for=(size can 20 gal crucible=6 in x 8 in)';

export async function opened(list: Checklist, context: Reading): Promise<Opened> {
  const question = questionOf(list, context);
  const chosen = chosenOf(list);
  const kind = kindOf(question, chosen, context);
  // What is ticked through needs no log, and most of a build's weeks come after that.
  const ticked = new Set(list.ticks.map(({ item }) => item));
  const asksLog = stagesFor(kind.traits).some(
    (stage) => stage.logged !== undefined && itemsOf(stage, kind.traits).some(({ id }) => !ticked.has(id)),
  );
  const entries = asksLog ? await context.memory.entries(list.owner, list.name) : [];
  const logged = new Map(entries.map((entry) => [entry.kind, entry]));
  return { list, question, chosen, kind, logged, progress: progressWith(list, kind, logged) };
}

export const chosenOf = ({ ask: { options } }: Checklist): Chosen => ({
  ...(options.recipe === undefined ? {} : { recipe: options.recipe }),
  ...(options.fuel === undefined ? {} : { fuel: options.fuel as NonNullable<Chosen['fuel']> }),
});

export const progressWith = ({ ticks }: Checklist, { traits }: BuildKind, logged: Opened['logged']): Progress =>
  progressOf(traits, { ticked: new Set(ticks.map(({ item }) => item)), logged: new Set(logged.keys()) });

/** The list is kept with its own question in parentheses: a build that is changed or dropped leaves it as it is. */
export function questionOf({ name, ask }: Checklist, { parse }: Reading): Ask {
  try {
    return parse(nestedLine(ask.options.for ?? '') ?? '');
  } catch (error) {
    if (!(error instanceof AskError)) throw error;
    throw error.with({
      what: `the checklist ${name} is of a question that an earlier version of me kept: ${error.what}`,
      example: `checklist start ${name} for=(${error.example})`,
    });
  }
}
