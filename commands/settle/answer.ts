import { mergeCautions } from '../../core/hazard/cautions.ts';
import type { Figure } from '../../core/quantity/figure.ts';
import { formatSi } from '../../core/quantity/format.ts';
import type { Step } from '../../core/step.ts';
import type { Assumption } from '../card.ts';
import type { Answer, AnswerContext } from '../command.ts';
import { modelErrorNote } from '../model-error.ts';
import { lineOf } from '../source.ts';
import { verdictChart } from './chart.ts';
import { measureName } from './measures.ts';
import type { Argument } from './shelf.ts';
import { supportOf } from './support.ts';
import type { Verdict } from './verdict.ts';
import {
  closeNote,
  doubtText,
  leadFigure,
  percent,
  type SettleParts,
  settledNote,
  turningTable,
  verdictText,
} from './words.ts';

export interface Settled extends SettleParts {
  readonly argument: Argument | undefined;
  /** Where the option that was to be moved turns the first verdict, and its name. */
  readonly flip: { readonly option: string; readonly at: readonly number[]; readonly unit: Figure['unit'] } | undefined;
  readonly context: AnswerContext;
}

const places = ['one', 'other', 'third', 'fourth'] as const;
const tail = (index: number): string => (index === 0 ? '' : String(index + 1));

/** Ids and labels: a group of figures for each of up to four things that are weighed. */
export const settleFigures: Readonly<Record<string, string>> = Object.fromEntries(
  [0, 1, 2, 3].flatMap((index) => {
    const which = index === 0 ? '' : `, ${['second', 'third', 'fourth'][index - 1]} figure weighed`;
    return [
      ...places.map((place) => [`settle.${place}${tail(index)}`, `${place} side${which}`]),
      [`settle.odds${tail(index)}`, `share of the samples in which the better beats the next${which}`],
      [`settle.difference${tail(index)}`, `by how much, better less next${which}`],
      ...(index === 0 ? [['settle.flip', 'value of the option that was moved at which the verdict turns']] : []),
    ];
  }),
);

export function settleAnswer(parts: Settled): Answer {
  const { sides, verdicts, units, argument, flip, context } = parts;
  const [first] = verdicts.all;
  const told = verdicts.all.slice(0, 2).map((verdict) => verdictText(verdict, parts));
  const chartOf = verdicts.all.find(({ measured }) => measured);
  const chart = chartOf && verdictChart(chartOf, sides, units);
  const table = chartOf && turningTable(chartOf, units);
  return {
    headline: `${argument ? `${argument.question} ` : ''}${told.join('. ')}.`,
    figures: verdicts.all.flatMap((verdict, index) => [
      ...figuresOf(verdict, index, parts),
      ...(index === 0 && flip?.at[0] !== undefined
        ? [
            {
              id: 'settle.flip',
              label: `even at ${flip.option} of`,
              value: flip.at[0],
              unit: flip.unit,
              rangeBasis: 'none' as const,
              group: verdict.measure.label,
            },
          ]
        : []),
    ]),
    ...(table ? { table } : {}),
    ...(chart ? { chart } : {}),
    notes: notesOf(parts),
    given: argument ? argument.sides.map(({ says }, index) => `${sides[index]?.name}: ${says}`) : [],
    assumed: assumedOf(parts),
    doubt: chartOf ? doubtText(chartOf, units) : 'not sampled: these questions show typical values only',
    sources: [...new Set(['derived', ...sides.flatMap(({ card }) => card.sources)])],
    working: workingOf(parts),
    cautions: mergeCautions(sides.map(({ card }) => card.cautions)),
    next: [
      // What asks this question again stands before what asks another one.
      ...(first && verdicts.all.length === 1 ? otherMeasure(parts, first) : []),
      ...sides.map(({ name, ask }) => ({ label: name.slice(0, 40), line: lineOf(ask, context.commands) })),
      { label: 'how that was worked out', line: 'why' },
    ].filter(({ line }) => line.length <= 900),
  };
}

function figuresOf(verdict: Verdict, index: number, { sides, verdicts }: SettleParts): readonly Figure[] {
  const { measure, measured, shares, odds } = verdict;
  const group = measure.label;
  const each = measure.figures.map((figure, side): Figure => {
    const { note: _, ...plain } = figure;
    const range = measured?.ranges[side];
    return {
      ...plain,
      id: `settle.${places[side]}${tail(index)}`,
      label: sides[side]!.name,
      group,
      ...(range && range.high > range.low ? { range, rangeBasis: 'sampled' as const } : {}),
      ...(shares ? { note: `best in ${percent(shares[side]!)}` } : {}),
    };
  });
  return [
    ...each,
    { ...leadFigure(verdict, `settle.difference${tail(index)}`), label: 'between the best two', group },
    ...(odds === undefined
      ? []
      : [
          {
            id: `settle.odds${tail(index)}`,
            label: `of ${verdicts.samples} samples, the better one wins`,
            value: odds,
            unit: '1' as const,
            shown: 'percent' as const,
            rangeBasis: 'none' as const,
            group,
            ...(verdict.close ? { note: 'too close to call' } : {}),
          },
        ]),
  ];
}

function notesOf({ sides, verdicts, argument, flip, units }: Settled): readonly string[] {
  const names = [...new Set(sides.map(({ command }) => command.name))];
  const known = names.flatMap((name) => supportOf(name) ?? []);
  const unsampled = sides.filter(({ doubted }) => !doubted);
  const rest = verdicts.all.slice(2);
  return [
    ...rest.map((verdict) => `${verdictText(verdict, { sides, verdicts, units })}.`),
    ...(verdicts.all.some(({ close }) => close) ? [closeNote] : []),
    ...unsampled.map(({ name, command, card }) =>
      command.doubt
        ? `${name} has typical values only: ${card.doubt ?? 'no range'}.`
        : `${command.name} is not sampled here: typical values, without odds.`,
    ),
    ...(flip === undefined
      ? []
      : flip.at.length === 0
        ? [`No ${flip.option} in that range turns the verdict.`]
        : [
            `At typical values the verdict turns at ${flip.option} of ${flip.at.map((at) => formatSi(at, flip.unit, units)).join(' and ')}.`,
          ]),
    ...[
      settledNote({ ...verdicts, odds_error: Math.max(...verdicts.all.map(({ odds_error }) => odds_error)) }),
      modelErrorNote([...new Set(verdicts.all.flatMap(({ measure }) => measure.figures.map(({ id }) => id)))], units),
    ].filter((note) => note !== undefined),
    ...(verdicts.samples > 0
      ? [
          'Odds speak of the doubt in the inputs, drawn once for all sides where they share it; not of what the model leaves out.',
        ]
      : []),
    ...(argument ? [`Left out here: ${argument.leavesOut}.`] : []),
    ...known.map(({ leavesOut }, index) => `${names[index]} leaves out ${leavesOut}.`),
    ...(known.length > 0
      ? [
          `Held against the world outside in: ${[...new Set(known.flatMap(({ checks }) => checks))].join(', ')} (test/published).`,
        ]
      : []),
  ];
}

/** What all sides assume once; the rest is on their own cards. */
function assumedOf({ sides, argument }: Settled): readonly Assumption[] {
  const [first, ...others] = sides.map(({ card }) => card.assumed);
  const common = (first ?? []).filter(({ text }) => others.every((list) => list.some((one) => one.text === text)));
  return common.map(({ text, override }) => {
    if (override === undefined) return { text };
    if (argument) return { text, override };
    // A list within a condition could not be told from several conditions.
    return /[;,]\s/.test(override) ? { text } : { text, override: `at=${override.replace('=', ' ')}` };
  });
}

function workingOf({ sides, verdicts }: SettleParts): readonly Step[] {
  const steps = sides.flatMap(({ card }, index) =>
    card.working.map((step): Step => ({ ...step, formula: `${places[index]}: ${step.formula}` })),
  );
  const odds = verdicts.all.flatMap(({ odds: share, measure }): readonly Step[] =>
    share === undefined
      ? []
      : [
          {
            formula: `odds by ${measure.label} = samples in which the better one wins ÷ samples, a tie counting half`,
            inputs: { samples_count: verdicts.samples },
            gives: { odds: share },
            source: 'derived',
          },
        ],
  );
  return [...steps, ...odds];
}

/** Another figure that all sides have and that is likely to be asked for. */
function otherMeasure({ sides }: SettleParts, { measure }: Verdict): NonNullable<Answer['next']> {
  const asked = measure.figures[0]!.id;
  const likely = [
    'wall.stored',
    'wall.shell_peak',
    'fuel.cost',
    'fuel.time',
    'mix.cost',
    'mix.dry_mass',
    'flame.left',
    'blast.power',
  ];
  const id = likely.find(
    (one) => one !== asked && sides.every(({ card }) => card.figures.some((figure) => figure.id === one)),
  );
  if (!id) return [];
  const figure = sides[0]!.card.figures.find((one) => one.id === id);
  return [{ label: `by ${figure ? measureName(figure) : id}`, line: `again by=${id}` }];
}
