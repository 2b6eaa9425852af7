import { mergeCautions } from '../../core/hazard/cautions.ts';
import type { Figure } from '../../core/quantity/figure.ts';
import { formatFigure } from '../../core/quantity/format.ts';
import { readName } from '../build/find.ts';
import { checkRoom } from '../build/room.ts';
import type { Card } from '../card.ts';
import type { Answer, AnswerContext } from '../command.ts';
import { cautionsOf } from './ask-next.ts';
import { figureOf, type Planned, sizeAsk, type Told, taken } from './plan.ts';
import { questions, SKIP } from './questions.ts';

/** Taken from the answers of size, mix and checklist, under the ids they have there. */
const shown = {
  'size.bore': 'bore',
  'size.height': 'inside height',
  'size.wall': 'wall',
  'size.crucible': 'crucible across',
  'size.crucible_height': 'crucible height',
  'size.whole': 'whole furnace',
  'mix.clay_mass': 'clay',
  'mix.sand_mass': 'sand',
  'mix.castable_mass': 'castable',
  'mix.water': 'water',
  'checklist.cost': 'lining, shell, fire and metal',
  'checklist.gear_cost': 'gear and tools, if you have none',
} as const;

export const startFigures = Object.fromEntries(
  Object.entries(shown).map(([id, label]) => [`start.${id.split('.')[1]}`, label]),
);

/** Keeps the build, opens its checklist here, and says what it came to. */
export async function finished(
  told: Told,
  { size, mix, recipe, because, cautions }: Planned,
  named: string | undefined,
  context: AnswerContext,
): Promise<Answer> {
  const { asker, place, memory, now, units, ask } = context;
  const name = readName(named ?? (await freeName(context)), 'name');
  const question = sizeAsk(told, context);
  await checkRoom(asker, name, memory);
  await memory.saveBuild(asker, { name, ask: await context.fill(question) }, now);
  const fuel = taken(told, 'burn') ?? 'charcoal';
  const opened = await ask({ command: 'checklist start', options: { name, recipe, fuel }, asker, place });
  const bought = await ask({ command: 'checklist shop', options: { list: name }, asker, place });
  const cards: readonly Card[] = [size, mix, ...(bought.kind === 'card' ? [bought.card] : [])];
  const figures = Object.entries(shown).flatMap(([id, label]): Figure[] => {
    const found = cards.map((card) => figureOf(card, id)).find((one) => one !== undefined);
    return found ? [{ ...plain(found), id: `start.${id.split('.')[1]}`, label }] : [];
  });
  const cost = figures.find(({ id }) => id === 'start.cost');
  const passed = questions.filter(({ id, otherwise }) => told[id] === SKIP && otherwise !== undefined);
  return {
    headline: `Kept as ${name}. ${size.headline}`,
    figures,
    notes: [
      mix.headline,
      because,
      ...(cost ? [budgetLine(told.spend, cost, units)] : []),
      opened.kind === 'card'
        ? opened.card.headline
        : `Its checklist could not be started: ${opened.error.what}. ${opened.error.expected}.`,
    ],
    ...(size.drawings ? { drawings: size.drawings } : {}),
    assumed: [
      ...passed.map(({ id, otherwise }) => ({ text: `${id}: ${otherwise}`, override: `start ${id}=…` })),
      { text: 'wall, gaps and weights as size and mix take them', override: `build show ${name}` },
    ],
    ...(size.doubt === undefined ? {} : { doubt: size.doubt }),
    sources: [...new Set([...size.sources, ...mix.sources])],
    cautions: mergeCautions([cautionsOf(told), cautions]),
    next: [
      { label: 'what to do first', line: `checklist list=${name}` },
      { label: 'what to buy', line: `checklist shop list=${name}` },
      { label: 'all its measures', line: `build show ${name}` },
      { label: 'the mix', line: `mix for=${name} recipe=${recipe}` },
      { label: 'when it is dry', line: `dry for=${name}` },
      { label: 'how hot the shell gets', line: `wall for=${name}` },
    ],
  };
}

/** What of a figure belongs to the list it stood in. */
const plain = ({ group: _, first: __, ...figure }: Figure): Figure => figure;

/** `first furnace`, `furnace 2`, …: whichever they have not yet. */
async function freeName({ asker, memory }: Pick<AnswerContext, 'asker' | 'memory'>): Promise<string> {
  const own = new Set((await memory.builds(asker)).map(({ name }) => name.toLowerCase()));
  const names = ['first furnace', ...Array.from({ length: own.size + 1 }, (_, at) => `furnace ${at + 2}`)];
  return names.find((name) => !own.has(name)) ?? 'first furnace';
}

/** Only a sum in the money of the prices can be held against them. */
function budgetLine(spend: string | undefined, cost: Figure, units: AnswerContext['units']): string {
  const { lead, range } = formatFigure(cost, units);
  const about = `About ${lead}${range === undefined ? '' : ` (${range})`} for lining, shell, fire and metal`;
  const dollars = /^\$?\s*(\d{1,6}(?:\.\d{1,2})?)\s*(?:usd|dollars?)?$/i.exec(spend?.trim() ?? '')?.[1];
  if (dollars === undefined) return `${about}, at common prices in US dollars; price … puts in yours.`;
  const sum = Number(dollars);
  const { low = cost.value, high = cost.value } = cost.range ?? {};
  if (sum >= high) return `${about}: within your $${dollars}, whatever has to be bought.`;
  if (sum >= cost.value) return `${about}: within your $${dollars}, unless much of it is dear where you are.`;
  if (sum >= low)
    return `${about}: your $${dollars} will do if some of it is at hand or second-hand; what you have costs nothing.`;
  return `${about}: more than your $${dollars}. A smaller can, clay and sand for castable, and a borrowed blower bring it down.`;
}
