import { AskError } from '../../core/ask-error.ts';
import { sampleDoubt } from '../../core/doubt/sample.ts';
import { nearestDrills } from '../../core/fire/data/drills.ts';
import { formatSi } from '../../core/quantity/format.ts';
import type { Table } from '../card.ts';
import type { Answer, AnswerContext } from '../command.ts';
import { burnerChart } from './chart.ts';
import { burnerFigures } from './figures.ts';
import type { BurnerOptions } from './options.ts';
import { type BurnerOutput, type BurnerParts, RICH, type Tube } from './parts.ts';
import { type BurnerInputs, type BurnerKey, type BurnerQuestion, LOWER_J_kg, typicalOf } from './question.ts';
import { assumptions, doubtOf, headlineOf, kilowatts, notesOf } from './words.ts';
import { BALANCED_kg_kg, balancedTube_m, bottleOf, holdingOf, mended, pointOf, regulatorFor, tubeOf } from './work.ts';

/** A question at its typical values: with its regulator, and the tube that goes with it. */
export function burnerAt(asked: BurnerQuestion) {
  const point = mended(() => pointOf(asked, typicalOf(asked)));
  const regulator = regulatorFor(asked, point.pressure_Pa);
  const question = { ...asked, spreads: { ...asked.spreads, headroom_Pa: regulator.headroom_Pa } };
  const at = typicalOf(question);
  return { question, point, regulator, at, tube: mended(() => tubeFor(question, at)) };
}

export function burnerAnswer(asked: BurnerQuestion, options: BurnerOptions, context: AnswerContext): Answer {
  const { question, point, regulator, at, tube } = burnerAt(asked);
  const parts: BurnerParts = {
    question,
    options,
    context,
    point,
    regulator,
    tube,
    draw: mended(() => bottleOf(question, point, at)),
    doubt: sampled(question, tube?.bore_m),
  };
  const working = [
    ...point.jet.steps(),
    ...(tube ? [...tube.mixing.steps(), ...tube.holding.steps()] : []),
    ...parts.draw.steady.steps(),
    ...parts.draw.down.steps(),
  ];
  return {
    headline: headlineOf(parts),
    figures: burnerFigures(parts),
    table: drillTable(parts),
    chart: burnerChart(parts),
    notes: notesOf(parts),
    assumed: assumptions(parts),
    doubt: doubtOf(parts),
    sources: [...new Set([...working.map(({ source }) => source), 'lp-gas-properties', 'from-memory'])],
    working,
    handsOver: {
      fuel: 'propane',
      rate: kilowatts(point.flow_kg_s),
      propane: `${(point.flow_kg_s * 3600).toPrecision(4)} kg/h`,
      ...(options.altitude ? { altitude: options.altitude.text } : {}),
    },
    hazards: {
      facts: [
        ...(parts.draw.down.cold_s === undefined ? [] : ['frosted-cylinder']),
        ...(tube && !tube.chosen && tube.air < RICH ? ['rich-flame'] : []),
      ],
    },
    next: nextLines(parts),
  };
}

function tubeFor(question: BurnerQuestion, x: BurnerInputs): Tube | undefined {
  const point = pointOf(question, x);
  const bore_m = question.tube_m ?? balancedTube_m(question, point, x);
  if (bore_m === undefined) return undefined;
  const mixing = tubeOf(question, point, x, bore_m);
  return {
    bore_m,
    chosen: question.tube_m === undefined,
    mixing,
    holding: holdingOf(question, mixing, bore_m),
    air: mixing.air_kg_kg / BALANCED_kg_kg,
  };
}

function sampled(question: BurnerQuestion, tube_m: number | undefined) {
  return sampleDoubt<BurnerKey, BurnerOutput>({
    inputs: question.spreads,
    samples: 250,
    model: (x) => burnerOutputs(question, tube_m, x),
  });
}

/** A burner under one draw of its doubts, with one mixing tube whatever is drawn. */
export function burnerOutputs(
  question: BurnerQuestion,
  tube_m: number | undefined,
  x: BurnerInputs,
): Record<BurnerOutput, number> {
  const point = pointOf(question, x);
  const { lasts_s, steady_kg_s, drawn_kg } = bottleAt(question, point, x);
  return {
    flow: point.flow_kg_s,
    jet: point.jet_m,
    pressure: point.pressure_Pa,
    air: tube_m === undefined ? 1 : tubeOf(question, point, x, tube_m).air_kg_kg / BALANCED_kg_kg,
    lasts: lasts_s,
    steady: steady_kg_s,
    drawn: drawn_kg,
  };
}

/** A bottle that cannot feed the regulator at all lasts no time: an answer, not a gap in the range. */
function bottleAt(question: BurnerQuestion, point: BurnerParts['point'], x: BurnerInputs) {
  try {
    const { lasts_s, steady, drawn_kg } = bottleOf(question, point, x);
    return { lasts_s, steady_kg_s: steady.draw_kg_s * question.bottles, drawn_kg };
  } catch (error) {
    if (!(error instanceof AskError) || error.code !== 'impossible') throw error;
    return { lasts_s: 0, steady_kg_s: 0, drawn_kg: 0 };
  }
}

/** The drills nearest to the jet, and what each gives at this pressure. */
function drillTable({ point, context }: BurnerParts): Table {
  return {
    columns: ['nearest drill', 'bore', 'heat at this pressure', 'of the jet above'],
    rows: nearestDrills({ bore_m: Math.max(3e-4, point.jet_m) }).map(({ name, bore_m }) => {
      const share = (bore_m / point.jet_m) ** 2;
      return [
        name,
        formatSi(bore_m, 'm', context.units, 'sheet'),
        formatSi(share * point.flow_kg_s * LOWER_J_kg, 'W', context.units),
        `${Math.round(share * 100)} %`,
      ];
    }),
  };
}

function nextLines({ question, context, draw, point }: BurnerParts): NonNullable<Answer['next']> {
  const known = (name: string) => context.commands.some((one) => one.name === name);
  const US = context.units === 'US';
  const [drill] = nearestDrills({ bore_m: Math.max(3e-4, point.jet_m) });
  return [
    ...(question.known.finds === 'jet' && drill
      ? [{ label: 'with the nearest drill', line: `again jet=${drill.name}` }]
      : []),
    ...(draw.down.cold_s === undefined
      ? []
      : [{ label: 'with one bottle more', line: `again bottles=${question.bottles + 1}` }]),
    ...(question.air_K < 275 ? [] : [{ label: 'on a cold day', line: `again air=${US ? '32 °F' : '0 °C'}` }]),
    { label: 'how hot it burns', line: 'flame propane' },
    ...(known('fuel') ? [{ label: 'how much a melt burns', line: 'fuel propane amount=5 kg metal=aluminium' }] : []),
  ];
}
