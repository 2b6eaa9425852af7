import { AskError } from '../../core/ask-error.ts';
import { readName } from '../build/find.ts';
import type { AnswerContext, Ask } from '../command.ts';
import { longestLine } from '../grammar.ts';
import { lineOf, readSource } from '../source.ts';
import { type Chosen, kindOf, metalOf, sizedRecipe } from './kind.ts';
import { readLining } from './lining.ts';
import { chosenOf, type Opened, opened, questionOf } from './opened.ts';

const mostLists = 40;

interface Wanted {
  readonly name: string | undefined;
  readonly for: string | undefined;
  readonly chosen: Chosen;
}

/** Starts the list of a build, or opens the one of that name with its question renewed: what was ticked stays ticked. */
export async function startList(
  { name: typed, for: source, chosen: asked }: Wanted,
  context: AnswerContext,
): Promise<Opened & { readonly renewed: boolean }> {
  const { asker, place, memory, now, commands } = context;
  const { ask: question, name } = await questionFor(typed, source, context);
  const line = lineOf(question, commands);
  if (line.length > longestLine - 100) throw tooLong(line.length);
  const here = await memory.checklists(place);
  const before = await memory.checklist(place, name);
  // What was chosen before holds until something else is.
  const chosen = { ...(before ? chosenOf(before) : {}), ...asked };
  refuseLining(question, chosen, name, context);
  if (before && before.owner !== asker && !context.mayModerate) throw anothers(before.name);
  if (!before && here.length >= mostLists) throw full(here.length);
  const { recipe, fuel } = chosen;
  const options = {
    name,
    for: `(${line})`,
    ...(recipe === undefined ? {} : { recipe }),
    ...(fuel === undefined ? {} : { fuel }),
  };
  const list = await memory.openChecklist(
    { asker, place },
    { name, ask: { command: 'checklist start', options } },
    now,
  );
  return { ...(await opened(list, context)), renewed: before !== undefined };
}

/** Refused now rather than when it is rammed: a furnace nobody can start, and a lining that does not stand its metal. */
function refuseLining(question: Ask, chosen: Chosen, name: string, context: AnswerContext): void {
  const again = `checklist start ${name} for=(${lineOf(question, context.commands)})`;
  kindOf(question, chosen, context);
  if (question.command === 'wall') return;
  const recipe = chosen.recipe ?? sizedRecipe(question);
  const metal = metalOf(question, context);
  const options =
    question.command === 'mix' && recipe === undefined
      ? question.options
      : { amount: '10 L', recipe: recipe ?? 'clay-sand', ...(metal === undefined ? {} : { metal }) };
  readLining(options, context, again);
}

/** By for=, by the name of a build or of a list that is here, or the only build there is. */
async function questionFor(
  typed: string | undefined,
  source: string | undefined,
  context: AnswerContext,
): Promise<{ readonly ask: Ask; readonly name: string }> {
  const { asker, place, memory, parse, commands, fill } = context;
  const named = source ?? typed ?? (await onlyBuild(context));
  const here: Ask = { command: 'checklist start', options: {}, asker, place };
  const kept = source === undefined && typed !== undefined ? await memory.checklist(place, typed) : undefined;
  if (kept && !(await memory.build(asker, kept.name))) return { ask: questionOf(kept, context), name: kept.name };
  const { ask, build } = await readSource(named, here, { memory, parse });
  const expand = commands.find((one) => one.name === ask.command)?.expand;
  const meant = expand ? (await expand(ask, { memory, parse, commands })).ask : ask;
  // What stands bare is a name of its own only beside for=: alone it may be a revision, or last.
  const name = (source === undefined ? undefined : typed) ?? build?.name ?? 'furnace';
  return { ask: await fill(meant), name: readName(name, 'name') };
}

async function onlyBuild({ asker, memory }: AnswerContext): Promise<string> {
  const builds = await memory.builds(asker);
  const [first, second] = builds;
  if (first && !second) return first.name;
  throw new AskError({
    code: 'missing',
    what: first
      ? `you have ${builds.length} builds, and the checklist is of one`
      : 'there is no checklist here, and you have kept no build to make one of',
    expected: first
      ? `one of ${builds
          .slice(0, 6)
          .map(({ name }) => name)
          .join(', ')}`
      : 'for= and the question of a furnace',
    example: first ? `checklist start ${first.name}` : 'checklist start for=(size can 20 gal crucible=6 in x 8 in)',
  });
}

const anothers = (name: string) =>
  new AskError({
    code: 'refused',
    what: `${name} is a checklist that somebody else started here`,
    expected: 'another name; anybody here may tick that one',
    example: `checklist list=${name}`,
  });

const full = (count: number) =>
  new AskError({
    code: 'refused',
    what: `this place has ${count} checklists, which is all that is kept`,
    expected: 'one dropped by checklist drop',
    example: 'checklist',
  });

const tooLong = (length: number) =>
  new AskError({
    code: 'too-long',
    what: `the build’s question has ${length} characters`,
    expected: `at most ${longestLine - 100}`,
    example: 'checklist start for=(size can 20 gal crucible=6 in x 8 in)',
    option: 'for',
  });
