import { AskError } from '../../core/ask-error.ts';
import { sampleDoubt } from '../../core/doubt/sample.ts';
import { fanPressure_Pa } from '../../core/fire/air/fan.ts';
import {
  type BlastInput,
  type BlastPoint,
  blastPoint,
  systemPressure_Pa,
} from '../../core/fire/air/operating-point.ts';
import { blastTies } from '../../core/fire/data/blast-ties.ts';
import { formatSi } from '../../core/quantity/format.ts';
import type { Table } from '../card.ts';
import type { Answer, AnswerContext } from '../command.ts';
import { blastChart } from './chart.ts';
import { blastFigures } from './figures.ts';
import { gainsOf, wideEnough_m } from './gains.ts';
import type { BlastOptions } from './options.ts';
import type { BlastOutput, BlastParts } from './parts.ts';
import {
  type BlastInputs,
  type BlastKey,
  type BlastQuestion,
  blastInput,
  burningOf,
  needed_m3_s,
  typicalOf,
} from './question.ts';
import { assumptions, doubtOf, headlineOf, notesOf } from './words.ts';

export function blastAnswer(question: BlastQuestion, options: BlastOptions, context: AnswerContext): Answer {
  const typical = typicalOf(question);
  const input = blastInput(question, typical);
  const point = pointOf(question, input);
  const burning = burningOf(question, typical);
  const need = needed_m3_s(question, burning);
  const fuel_kg_s = point.dry_air_kg_s / burning.air_kg_kg;
  const parts: BlastParts = {
    question,
    options,
    context,
    input,
    point,
    burning,
    fuel_kg_s,
    power_W: fuel_kg_s * burning.heat_J_kg,
    needed_m3_s: need,
    valve_Pa: need === undefined ? undefined : valveAt(input, need),
    gains: gainsOf(question),
    ...sampled(question),
  };
  return {
    headline: headlineOf(parts),
    figures: blastFigures(parts),
    table: gainsTable(parts),
    chart: blastChart(input, { point, needed_m3_s: need, units: context.units }),
    notes: notesOf(parts),
    assumed: assumptions(parts),
    doubt: doubtOf(parts),
    sources: [...new Set([...workingOf(parts).map(({ source }) => source), question.blower.source, 'fluids-fittings'])],
    working: workingOf(parts),
    handsOver: handsOver(parts),
    hazards: { facts: question.fuel.hazards },
    next: nextLines(parts),
  };
}

/** What the core refuses, said of the option that mends it. */
function pointOf(question: BlastQuestion, input: BlastInput): BlastPoint {
  try {
    return blastPoint(input);
  } catch (error) {
    if (!(error instanceof AskError) || error.option !== undefined) throw error;
    if (/no air goes in/.test(error.what)) throw error.with({ option: 'back' });
    const wide_m = wideEnough_m(question);
    if (wide_m === undefined) throw error.with({ option: 'blower', example: '35 cfm 2 inWC' });
    throw error.with({
      option: 'pipe',
      example: `${Math.ceil(wide_m * 1000)} mm x ${question.pipe.length_m.toFixed(2)} m`,
    });
  }
}

function sampled(question: BlastQuestion): Pick<BlastParts, 'doubt' | 'met'> {
  let met = 0;
  let count = 0;
  const doubt = sampleDoubt<BlastKey, BlastOutput>({
    inputs: question.spreads,
    together: blastTies,
    samples: 400,
    model: (x) => {
      const found = blastOutputs(question, x);
      count += 1;
      if (found.cover >= 1) met += 1;
      return found;
    },
  });
  return { doubt, met: question.need === undefined ? undefined : met / count };
}

export function blastOutputs(question: BlastQuestion, x: BlastInputs): Record<BlastOutput, number> {
  try {
    const { flow_m3_s, dry_air_kg_s, fan_Pa } = blastPoint(blastInput(question, x));
    const burning = burningOf(question, x);
    const need = needed_m3_s(question, burning) ?? 1;
    const fuel = dry_air_kg_s / burning.air_kg_kg;
    return {
      flow: flow_m3_s,
      need,
      cover: flow_m3_s / need,
      fuel,
      power: fuel * burning.heat_J_kg,
      pressure: fan_Pa,
    };
  } catch (error) {
    if (!(error instanceof AskError)) throw error;
    const none = Number.NaN;
    return { flow: none, need: none, cover: none, fuel: none, power: none, pressure: none };
  }
}

function valveAt(input: BlastInput, flow_m3_s: number): number | undefined {
  const taken_Pa = systemPressure_Pa(input, flow_m3_s);
  if (taken_Pa === undefined) return undefined;
  const { fan, density_kg_m3, speed } = input;
  const spare_Pa = fanPressure_Pa({ fan, flow_m3_s, density_kg_m3, speed }) - taken_Pa;
  return spare_Pa > 0 ? spare_Pa : undefined;
}

function gainsTable({ gains, point, context }: BlastParts): Table {
  return {
    columns: ['would it help', 'more air', 'then'],
    rows: gains.map(({ says, gain }) => [
      says,
      `${Math.round(gain * 100)} %`,
      formatSi(point.flow_m3_s * (1 + gain), 'm3/s', context.units),
    ]),
  };
}

const workingOf = ({ point, question, burning, input, options }: BlastParts) => [
  {
    formula: 'dry air = humid air without its vapour, at this altitude, temperature and humidity',
    inputs: {
      altitude_m: question.altitude_m,
      air_K: input.air_K,
      humidity: options.humidity?.si ?? 0.5,
      pressure_Pa: input.pressure_Pa,
    },
    gives: { density_kg_m3: input.density_kg_m3, dry_density_kg_m3: input.dry_density_kg_m3 },
    source: 'iso-2533',
  },
  ...point.steps(),
  {
    formula: 'heat set free, less what CO takes away: fuel = dry air ÷ air per fuel; power = fuel × heat',
    inputs: {
      dry_air_kg_s: point.dry_air_kg_s,
      air_per_fuel_count: burning.air_kg_kg,
      heat_J_kg: burning.heat_J_kg,
      co_share: question.spreads.co_share.typical,
    },
    gives: {
      fuel_kg_s: point.dry_air_kg_s / burning.air_kg_kg,
      power_W: (point.dry_air_kg_s / burning.air_kg_kg) * burning.heat_J_kg,
    },
    source: 'derived',
  },
];

function handsOver({ question, point, fuel_kg_s, burning, options }: BlastParts): Readonly<Record<string, string>> {
  return {
    fuel: question.fuel.id,
    rate: `${((fuel_kg_s * burning.fuel.lower_heat_J_kg) / 1000).toPrecision(4)} kW`,
    blast: `${(point.flow_m3_s * 3600).toPrecision(4)} m3/h`,
    ...(options.altitude ? { altitude: options.altitude.text } : {}),
    ...(options.bore ? { bore: options.bore.text } : {}),
  };
}

function nextLines({ question, context, gains, met, options }: BlastParts): NonNullable<Answer['next']> {
  const known = (name: string) => context.commands.some((one) => one.name === name);
  const length = (m: number) =>
    context.units === 'US' ? `${Number((m / 0.0254).toFixed(2))} in` : `${Number((m * 1000).toFixed(0))} mm`;
  const { pipe } = question;
  const pipeWay =
    context.units === 'US'
      ? `${Number((pipe.length_m / 0.3048).toFixed(2))} ft`
      : `${Number(pipe.length_m.toFixed(2))} m`;
  const kind =
    pipe.kind === 'steel pipe'
      ? ''
      : ` ${pipe.kind.split(' ').find((word) => /rusty|plastic|tube|hose/.test(word)) ?? ''}`;
  const wider = gains[0]?.change === 'pipe' || gains[0]?.change === 'tuyere';
  return [
    ...(met === undefined ? [{ label: 'is it enough for 20 kW', line: 'again rate=20 kW' }] : []),
    wider
      ? {
          label: 'with a wider pipe',
          line: `again pipe=${length(1.5 * pipe.bore_m)} x ${pipeWay}${kind}${options.tuyere ? ` tuyere=${length(1.5 * question.tuyere_m)}` : ''}`,
        }
      : { label: 'with a stronger blower', line: 'again blower=forge blower' },
    { label: 'high up', line: `again altitude=${context.units === 'US' ? '6000 ft' : '2000 m'}` },
    { label: 'how hot it burns', line: `flame ${question.fuel.id}` },
    ...(known('fuel')
      ? [{ label: 'how much a melt burns', line: `fuel ${question.fuel.id} amount=5 kg metal=aluminium` }]
      : []),
  ];
}
