import { AskError } from '../../core/ask-error.ts';
import { nearest } from '../../core/materials/nearest.ts';
import type { Figure, SiUnit } from '../../core/quantity/figure.ts';
import type { AskedSide } from './ask-side.ts';

/** What sides are held against each other by: each side's own figure, all of one unit. */
export interface Measure {
  readonly label: string;
  readonly figures: readonly Figure[];
  readonly unit: SiUnit;
  readonly better: 'lowest' | 'highest';
}

/** Short names, and the figures they stand for: the first that a side has. */
const short: Readonly<Record<string, readonly string[]>> = {
  shell: ['wall.shell_peak'],
  stored: ['wall.stored', 'fuel.stored'],
  heat: ['wall.heat_in', 'melt.heat'],
  cost: ['fuel.staged_cost', 'fuel.total_cost', 'fuel.cost', 'mix.cost'],
  weight: ['size.whole', 'mix.dry_mass'],
  time: ['fuel.total_time', 'fuel.time', 'melt.time'],
  fuel: ['fuel.total_mass', 'fuel.mass', 'blast.fuel', 'wall.charcoal'],
  touch: ['wall.touch43'],
  cool: ['wall.touch43'],
  loss: ['wall.total_loss', 'wall.loss'],
  behind: ['wall.interface1'],
  air: ['blast.flow', 'fuel.air', 'flame.air', 'burner.air'],
  power: ['blast.power', 'burner.rate', 'fuel.power'],
  flame: ['flame.temperature'],
  temperature: ['flame.temperature', 'wall.shell_peak'],
  left: ['flame.left', 'fuel.left'],
  efficiency: ['fuel.efficiency'],
  water: ['mix.water'],
  limit: ['mix.limit'],
};

/** What a figure is called where it stands alone. */
export const measureName = ({ id, label }: Pick<Figure, 'id' | 'label'>): string => labels[id] ?? label;

/** Short names of what a question of a command can be weighed by. */
export const measuresOf = (command: string): readonly string[] =>
  Object.entries(short).flatMap(([name, ids]) => (ids.some((id) => id.startsWith(`${command}.`)) ? [name] : []));

/** Where the card's own label leans on the line before it. */
const labels: Readonly<Record<string, string>> = {
  'wall.shell_peak': 'hottest shell',
  'wall.stored': 'heat stored in the wall',
  'wall.heat_in': 'heat the side wall takes',
  'wall.loss': 'loss through the shell',
  'wall.total_loss': 'loss by every path',
  'wall.touch43': 'time until a hand may rest on the shell',
  'wall.interface1': 'temperature behind the first layer',
  'fuel.mass': 'fuel burned',
  'fuel.total_mass': 'fuel burned',
  'fuel.time': 'time to the pour',
  'fuel.total_time': 'time to the pour',
  'fuel.cost': 'cost of the fuel',
  'fuel.total_cost': 'cost of the fuel',
  'fuel.staged_cost': 'cost of the fuel',
  'flame.left': 'share of the heat that stays',
  'flame.temperature': 'flame at its hottest',
  'blast.power': 'heat set free',
  'mix.dry_mass': 'weight, dry',
};

/** Held against each other by these where nothing was said. */
const usual: Readonly<Record<string, string>> = {
  wall: 'shell',
  fuel: 'fuel',
  mix: 'cost',
  blast: 'air',
  flame: 'flame',
  melt: 'heat',
  burner: 'power',
};

/** More of these is what people want; of all others, less. */
const moreIsBetter = new Set([
  'flame.temperature',
  'flame.real',
  'flame.left',
  'flame.left_higher',
  'fuel.left',
  'fuel.left_higher',
  'fuel.efficiency',
  'fuel.again_efficiency',
  'blast.flow',
  'blast.cover',
  'blast.power',
  'blast.pressure',
  'burner.rate',
  'burner.lasts',
  'burner.air',
  'burner.steady',
  'burner.melts',
  'melt.left',
  'wall.depth900',
  'mix.limit',
  'mix.volume',
  'size.working',
  'size.insulation_bottom',
]);

const mostMeasures = 4;

/** `shell, stored`: one or several figures that all sides have. */
export function readMeasures(said: string | undefined, sides: readonly AskedSide[]): readonly Measure[] {
  const first = sides[0]!.command.name.split(' ')[0] ?? '';
  const words = (said ?? usual[first] ?? 'weight').split(/\s*[,;]\s*|\s+and\s+/).filter((word) => word !== '');
  if (words.length === 0) throw unknown(said ?? '', sides);
  if (words.length > mostMeasures)
    throw new AskError({
      code: 'too-long',
      what: `${words.length} figures to weigh by`,
      expected: `at most ${mostMeasures}`,
      example: words.slice(0, mostMeasures).join(', '),
      option: 'by',
    });
  return words.map((word) => measureOf(word, sides));
}

function measureOf(word: string, sides: readonly AskedSide[]): Measure {
  const found = sides.map(({ card }) => figureFor(word, card.figures));
  const figures = found.filter((one) => one !== undefined);
  if (figures.length < found.length) throw unknown(word, sides);
  const [first] = figures;
  const odd = figures.find(({ unit }) => unit !== first!.unit);
  if (odd)
    throw new AskError({
      code: 'impossible',
      what: `${first!.label} (${first!.unit}) and ${odd.label} (${odd.unit}) are not of one kind`,
      expected: 'a figure that every side has in one unit',
      example: common(sides)[0] ?? 'cost',
      option: 'by',
    });
  return {
    label: measureName(first!),
    figures,
    unit: first!.unit,
    better: moreIsBetter.has(first!.id) ? 'highest' : 'lowest',
  };
}

/** By id, by short name, by the noun of an id, or by its label. */
export function figureFor(word: string, figures: readonly Figure[]): Figure | undefined {
  const said = word.trim().toLowerCase();
  const noun = said.replaceAll(/[\s-]+/g, '_');
  const of = (id: string) => figures.find((one) => one.id === id);
  const ids = short[said] ?? [];
  return (
    of(said) ??
    ids.map(of).find((one) => one !== undefined) ??
    figures.find(({ id }) => id.endsWith(`.${noun}`)) ??
    figures.find(({ label }) => label.toLowerCase() === said)
  );
}

const nounOf = (id: string): string => id.slice(id.indexOf('.') + 1);

/** Words that work for these sides. */
function common(sides: readonly AskedSide[]): readonly string[] {
  const [first, ...others] = sides;
  const nouns = (first?.card.figures ?? []).map(({ id }) => nounOf(id));
  return [...Object.keys(short), ...nouns].filter(
    (word) => first && figureFor(word, first.card.figures) && others.every(({ card }) => figureFor(word, card.figures)),
  );
}

function unknown(word: string, sides: readonly AskedSide[]): AskError {
  const known = common(sides);
  const near = nearest(word.toLowerCase(), known, 3);
  return new AskError({
    code: 'unknown-name',
    what: `not every side has a figure called "${word.slice(0, 40)}"`,
    expected: `one of ${[...near, ...known.filter((one) => !near.includes(one))].slice(0, 12).join(', ')}`,
    example: near[0] ?? known[0] ?? 'cost',
    option: 'by',
  });
}
