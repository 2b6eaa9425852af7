import type { Caution } from '../../core/hazard/caution.ts';
import type { Figure } from '../../core/quantity/figure.ts';
import { formatBoth, formatFigure } from '../../core/quantity/format.ts';
import { readKey } from '../../core/quantity/key.ts';
import type { Source, SourceId } from '../../core/sources/source.ts';
import { sourceOf } from '../../core/sources/sources.ts';
import type { Step } from '../../core/step.ts';
import { putIn, siText } from '../../core/working/put-in.ts';
import type { Card } from '../card.ts';
import { blocks, code, list, md, table } from './markdown.ts';
import { numbersOf } from './step-lines.ts';

/** What was asked and with what it was answered, so that somebody else can come to the same. */
export interface Origin {
  /** As it would be typed. */
  readonly line: string;
  /** Each as name and value: the program, what runs it, its data. */
  readonly versions: readonly (readonly [name: string, value: string])[];
}

type Block = readonly string[];

/** The whole working as Markdown: a page that can be printed, checked line by line, and repeated. */
export function workingFile(card: Card, { line, versions }: Origin): string {
  const sources = [...new Set([...card.working.map(({ source }) => source), ...card.sources])];
  const number = (id: SourceId) => sources.indexOf(id) + 1;
  return blocks([
    [`# How ${code(line)} was worked out`],
    [`**${md(card.headline)}**`],
    ...hurting(card.cautions),
    ...answered(card),
    ...basis(card),
    ...worked(card, number),
    ...balances(card),
    ...sourced(sources, card, number),
    ['## To repeat it'],
    list([
      `Ask: ${code(line)}`,
      ...versions.map(([name, value]) => `${name}: ${md(value)}`),
      'Samples are drawn from a fixed sequence, so the same question gives the same ranges.',
    ]),
  ]);
}

function hurting(cautions: readonly Caution[]): readonly Block[] {
  if (cautions.length === 0) return [];
  const said = ({ severity, text, reason, standing }: Caution) =>
    `**${{ danger: 'Danger', caution: 'Caution', note: 'Note' }[severity]}:** ${md(text)} ${md(reason)} (${standing})`;
  return [['## What can hurt'], list(cautions.map(said))];
}

const bases: Readonly<Record<Figure['rangeBasis'], string>> = {
  sampled: 'central 95 % of the samples',
  judged: 'judged',
  none: 'no range',
};

function answered({ figures, table: shown, notes, units }: Card): readonly Block[] {
  const rows = figures.map((figure) => {
    const { lead, other, range } = formatFigure(figure, units);
    const label = figure.group === undefined ? figure.label : `${figure.group}: ${figure.label}`;
    const si = siText(figure.value, figure.unit);
    return [label, lead, other, range ?? '', bases[figure.rangeBasis], si, figure.note ?? ''].map(md);
  });
  return [
    ['## The answer'],
    ...(rows.length === 0
      ? []
      : [table(['what', 'value', 'or', 'likely range', 'basis of the range', 'in SI', 'beside it'], rows)]),
    ...(shown
      ? [
          table(
            shown.columns.map(md),
            shown.rows.map((row) => row.map(md)),
          ),
        ]
      : []),
    list(notes.map(md)),
  ];
}

function basis({ given, assumed, doubt }: Card): readonly Block[] {
  return [
    ['## What was given'],
    given.length === 0 ? ['Nothing but the question itself.'] : list(given.map(md)),
    ['## What was assumed'],
    assumed.length === 0
      ? ['Nothing.']
      : list(assumed.map(({ text, override }) => (override ? `${md(text)}, unless ${code(override)}` : md(text)))),
    ...(doubt === undefined ? [] : [['## The biggest doubt'], [md(doubt)]]),
  ];
}

function worked({ working, units }: Card, number: (id: SourceId) => number): readonly Block[] {
  if (working.length === 0) return [['## The working'], ['There is none: nothing was calculated for this.']];
  return [
    ['## The working'],
    [
      'Numbers are put in as SI with five digits, so that each line can be reckoned again as it stands; a step without such a line is a table, a correlation or a solver, and says which.',
    ],
    ...working.flatMap((step, at) => stepBlocks(step, at + 1, units, number)),
  ];
}

function stepBlocks(step: Step, at: number, units: Card['units'], number: (id: SourceId) => number): readonly Block[] {
  const { formula, inputs, gives, source } = step;
  return [
    [`### Step ${at}: ${md([...sideOf(formula), ...Object.keys(gives).map((key) => readKey(key).label)].join(', '))}`],
    [code(formula)],
    list([
      ...putIn(step).map(({ text }) => `put in: ${code(text)}`),
      ...(Object.keys(inputs).length === 0 ? [] : [`from: ${md(numbersOf(inputs, units))}`]),
      `gives: ${md(numbersOf(gives, units))}`,
      `source: [${number(source)}]`,
    ]),
  ];
}

/** Where several things are weighed, which of them a step is about. */
const sideOf = (formula: string): readonly string[] => /^(?:one|other|third|fourth)(?=: )/.exec(formula) ?? [];

/** Where a calculation knows its whole by two ways: both, and what is left between them. */
function balances({ working, units }: Card): readonly Block[] {
  const closing = working.flatMap((step, at) => (step.closes ? [{ step, at: at + 1 }] : []));
  if (closing.length === 0) return [];
  return [
    ['## Whether the energy adds up'],
    ...closing.flatMap(({ step, at }): readonly Block[] => {
      const [key = '', whole = Number.NaN] = Object.entries(step.gives)[0] ?? [];
      const { label, unit } = readKey(key);
      const sum = Object.values(step.inputs).reduce((total, each) => total + each, 0);
      const row = (name: string, value: number) => [
        md(name),
        md(formatBoth(value, unit, units)),
        percent(value / whole),
      ];
      return [
        [`### Step ${at}: ${md(step.formula.slice(0, Math.max(0, step.formula.lastIndexOf(': '))) || label)}`],
        table(
          ['where it went', 'heat', `of ${md(label)}`],
          [
            ...Object.entries(step.inputs).map(([name, value]) => row(readKey(name).label, value)),
            row('together', sum),
            row(`${label}, as it was worked out`, whole),
            ['left between the two', md(formatBoth(whole - sum, unit, units)), percent((whole - sum) / whole)],
          ],
        ),
      ];
    }),
  ];
}

const percent = (share: number): string =>
  share !== 0 && Math.abs(share) < 5e-4 ? `${(100 * share).toExponential(0)} %` : `${(100 * share).toFixed(1)} %`;

const standings: Readonly<Record<Source['opened'], string>> = {
  whole: 'published, read whole',
  table: 'published, its table read',
  excerpt: 'published, an excerpt read',
  abstract: 'published, its abstract read',
  library: 'published, as a library of programs has it',
  derived: 'derived',
  memory: 'from memory',
  practice: 'common practice',
};

function sourced(ids: readonly SourceId[], { working }: Card, number: (id: SourceId) => number): readonly Block[] {
  if (ids.length === 0) return [];
  return [
    ['## Sources'],
    ids.map((id) => {
      const { title, opened, note } = sourceOf(id);
      const steps = working.flatMap(({ source }, at) => (source === id ? [at + 1] : []));
      const used = steps.length === 0 ? 'data' : `step${steps.length > 1 ? 's' : ''} ${steps.join(', ')}`;
      return `${number(id)}. ${md(title)} (${standings[opened]}; ${used})${note === undefined ? '' : `. ${md(note)}`}`;
    }),
  ];
}
