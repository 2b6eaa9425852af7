import { AskError } from '../../core/ask-error.ts';
import { type Doubt, type Range, sampleDoubt } from '../../core/doubt/sample.ts';
import type { AvailableHeat } from '../../core/fire/gas/available-heat.ts';
import type { Flame } from '../../core/fire/gas/flame.ts';
import type { Figure } from '../../core/quantity/figure.ts';
import { formatFigure, formatSi } from '../../core/quantity/format.ts';
import type { Assumption, Table } from '../card.ts';
import type { Answer, AnswerContext } from '../command.ts';
import { capital } from '../sentence.ts';
import { flameChart } from './chart.ts';
import type { FlameOptions } from './options.ts';
import { type FlameInputs, type FlameQuestion, flameOf, heatLeft, typicalOf } from './question.ts';

/** How far a real flame stays below: it radiates, touches walls and mixes badly. From memory. */
const REAL_BELOW_dK = { low: 100, typical: 250, high: 400 } as const;
/** Dry oxygen between 1 and 3 % is what a well set burner leaves; below, CO starts. Common practice. */
const RICH_EXCESS = 0;
const CUBIC_FOOT_m3 = 0.028316846592;
const HUNDRED_BTU_J = 105_505.585;
/** Dry air at 20 °C and sea level. */
const AIR_kg_m3 = 1.204;

interface Parts {
  readonly question: FlameQuestion;
  readonly options: FlameOptions;
  readonly context: AnswerContext;
  readonly burned: Flame;
  readonly left: AvailableHeat;
  readonly doubt: Doubt<keyof FlameInputs, 'temperature' | 'left' | 'left_higher' | 'air' | 'oxygen'>;
}

export function flameAnswer(question: FlameQuestion, options: FlameOptions, context: AnswerContext): Answer {
  const burned = flameOf(question, typicalOf(question));
  const left = heatLeft(question, typicalOf(question));
  const doubt = sampleDoubt({
    inputs: question.spreads,
    samples: 300,
    model: (inputs) => {
      const { temperature_K, air_per_fuel } = flameOf(question, inputs);
      const { share_of_lower, share_of_higher, flue } = heatLeft(question, inputs);
      return {
        temperature: temperature_K,
        left: share_of_lower,
        left_higher: share_of_higher,
        air: air_per_fuel,
        oxygen: flue.dry.O2,
      };
    },
  });
  const parts: Parts = { question, options, context, burned, left, doubt };
  const rich = question.spreads.excess_air.typical < RICH_EXCESS;
  const { fuel } = question;
  return {
    headline: headlineOf(parts),
    figures: figuresOf(parts),
    table: gasTable(parts),
    chart: flameChart(question, context.units),
    notes: notesOf(parts),
    assumed: assumptions(parts),
    doubt: doubtOf(parts),
    sources: [...new Set(['nasa-tm-4513', fuel.lower_heat_J_kg.source, fuel.ash.source, 'from-memory'])],
    working: [...burned.steps(), ...left.steps()],
    handsOver: {
      fuel: fuel.id,
      // What is rich here is for nobody else to take over.
      ...(rich ? {} : { excess: `${(100 * question.spreads.excess_air.typical).toPrecision(3)}%` }),
      ...(options.flue || options.hot ? { flue: `${Math.round(question.spreads.flue_K.typical - 273.15)} °C` } : {}),
    },
    hazards: { facts: [...fuel.hazards, ...(rich ? ['rich-flame'] : [])] },
    next: nextLines(parts),
  };
}

const percent = (share: number, digits = 2): string => `${Number((share * 100).toPrecision(digits))} %`;

const sampled = (range: Range | undefined) =>
  range && range.high - range.low > 1e-3 * Math.abs(range.high)
    ? ({ range, rangeBasis: 'sampled' } as const)
    : ({ rangeBasis: 'none' } as const);

function headlineOf({ question, burned, left, doubt, context }: Parts): string {
  const { fuel, spreads } = question;
  const excess = spreads.excess_air.typical;
  const [flame] = flameFigures(burned, doubt.ranges.temperature);
  const { lead, range } = formatFigure(flame!, context.units);
  const air =
    excess < 0
      ? `${percent(-excess)} short of air`
      : excess === 0
        ? 'with just enough air'
        : `with ${percent(excess)} excess air`;
  const flue = formatSi(spreads.flue_K.typical, 'K', context.units);
  const share = left.share_of_lower;
  const heat =
    share > 0
      ? `at a flue of ${flue} ${percent(share)} of its lower heating value (${percent(left.share_of_higher)} of the higher) stays in the furnace`
      : `it cannot keep a flue of ${flue}: nothing would stay in the furnace`;
  return `${capital(fuel.name)} ${air}: a flame of ${lead}${range ? ` (${range})` : ''} at most, 100 to 400 K less in fact; ${heat}.`;
}

function flameFigures({ temperature_K }: Flame, range: Range | undefined): readonly Figure[] {
  const { low, typical, high } = REAL_BELOW_dK;
  return [
    {
      id: 'flame.temperature',
      label: 'flame, upper bound',
      value: temperature_K,
      unit: 'K',
      ...sampled(range),
      note: 'adiabatic',
    },
    {
      id: 'flame.real',
      label: 'real flame, about',
      value: temperature_K - typical,
      unit: 'K',
      range: { low: temperature_K - high, high: temperature_K - low },
      rangeBasis: 'judged',
      note: 'from memory',
    },
  ];
}

function figuresOf({ question, burned, left, doubt }: Parts): readonly Figure[] {
  const { ranges } = doubt;
  const { dry } = left.flue;
  const share = (id: string, label: string, value: number, range?: Range): Figure => ({
    id: `flame.${id}`,
    label,
    value,
    unit: '1',
    shown: 'percent',
    ...sampled(range),
  });
  const heat = (id: string, label: string, value: number): Figure => ({
    id: `flame.${id}`,
    label,
    value,
    unit: 'J/kg',
    rangeBasis: 'none',
  });
  const excess = question.spreads.excess_air;
  return [
    ...flameFigures(burned, ranges.temperature),
    share('left', 'stays, of the lower heat', left.share_of_lower, ranges.left),
    share('left_higher', 'stays, of the higher heat', left.share_of_higher, ranges.left_higher),
    share('excess', 'excess air', excess.typical, excess),
    share('oxygen', 'oxygen in the dry flue', dry.O2, ranges.oxygen),
    share('carbon_monoxide', 'CO in the dry flue', dry.CO),
    {
      id: 'flame.air',
      label: 'kg of air for a kg of it',
      value: burned.air_per_fuel,
      unit: 'count',
      ...sampled(ranges.air),
    },
    heat('lower_heat', 'lower heat, as fired', burned.fuel.lower_heat_J_kg),
    heat('higher_heat', 'higher heat, as fired', burned.fuel.higher_heat_J_kg),
  ];
}

function gasTable({ left, burned }: Parts): Table {
  const rows = (['CO2', 'H2O', 'O2', 'CO', 'H2', 'N2'] as const).map((gas): readonly string[] => [
    gas,
    gas === 'H2O' ? '–' : percent(left.flue.dry[gas], 3),
    percent(left.flue.wet[gas], 3),
    percent(burned.wet[gas], 3),
  ]);
  return { columns: ['gas', 'dry flue, as a meter reads', 'wet flue', 'in the flame'], rows };
}

/** Handbook: 1 ft³ of air for 100 Btu. */
function handbookAir({ burned, question }: Parts): string {
  const balanced_kg = burned.air_per_fuel / (1 + question.spreads.excess_air.typical);
  const feet = (balanced_kg / AIR_kg_m3 / CUBIC_FOOT_m3 / burned.fuel.higher_heat_J_kg) * HUNDRED_BTU_J;
  return `Without excess it takes ${feet.toFixed(2)} ft³ of air for 100 Btu of its higher heat; the handbook's rule says 1 (from memory).`;
}

function notesOf(parts: Parts): readonly string[] {
  const { question, burned } = parts;
  const excess = question.spreads.excess_air.typical;
  const { kind } = question.fuel;
  return [
    ...(kind === 'solid'
      ? ['A deep, blown bed leaves part of its carbon as CO, cooler than this: blast counts with that share.']
      : []),
    ...(excess < 0
      ? [
          `${percent(parts.left.loss.unburned_J_kg / burned.fuel.lower_heat_J_kg)} of the lower heat leaves unburned, as CO and hydrogen.`,
        ]
      : []),
    ...(burned.soot > 1e-4 ? [`It sets soot free: ${percent(burned.soot)} of the fuel's mass.`] : []),
    ...(parts.options.reads
      ? ['Air that leaks in before the probe reads as excess air; take the gas inside the vent, and only without CO.']
      : []),
    'What sets the temperature is the air: fuels differ by less than 100 K at their best.',
    handbookAir(parts),
  ];
}

function assumptions({ question, options, context }: Parts): readonly Assumption[] {
  const show = (K: number) => formatSi(K, 'K', context.units);
  const { spreads, fuel, air_K } = question;
  const rows: (Assumption | false)[] = [
    !options.excess &&
      !options.reads && { text: `${percent(spreads.excess_air.typical)} excess air`, override: 'reads=4%' },
    !options.flue &&
      !options.hot && { text: `gas leaves at ${show(spreads.flue_K.typical)}`, override: `flue=${show(1373.15)}` },
    options.hot !== undefined &&
      !options.flue && {
        text: 'gas leaves as hot as the face, or up to 100 K below',
        override: `flue=${show(1373.15)}`,
      },
    !options.air && { text: `air at ${show(air_K)}`, override: `air=${show(673.15)}` },
    !options.humidity && { text: 'air outside half saturated with water', override: 'humidity=80%' },
    fuel.kind !== 'gas' &&
      !options.ash && { text: `ash ${percent(fuel.ash.low)} to ${percent(fuel.ash.high)}`, override: 'ash=5%' },
    fuel.kind !== 'gas' &&
      !options.moisture && {
        text: `water ${percent(fuel.moisture.low)} to ${percent(fuel.moisture.high)} of the mass`,
        override: 'moisture=6%',
      },
  ];
  return rows.filter((row) => row !== false);
}

/** How each doubt can be narrowed at home. */
const atHome: Readonly<Record<keyof FlameInputs, { is: string; measure: string }>> = {
  excess_air: { is: 'excess air', measure: 'a meter with a fresh cell, read inside the vent' },
  flue_K: { is: "the flue's temperature", measure: 'hold a type K thermocouple in the vent' },
  dry_J_kg: { is: 'the heating value', measure: 'the bag or the supplier may state it; there is no way at home' },
  ash: { is: 'ash', measure: 'burn 200 g to white ash on a steel lid outdoors and weigh what stays' },
  moisture: { is: 'water in the fuel', measure: 'weigh 200 g, dry them at 105 °C (220 °F) over night, weigh again' },
};

/** Where all that is sampled is known: what no formula holds. */
const mixed = `how well air and gas mix, by which a real flame stays ${REAL_BELOW_dK.low} to ${REAL_BELOW_dK.high} K below, and the true excess air: oxygen and CO read inside the vent show both, then reads=; a thermocouple there gives flue=`;

function doubtOf({ doubt }: Parts): string {
  const { temperature, left } = doubt.movesMost;
  const said = [
    ...(temperature ? [{ of: 'the flame', ...temperature }] : []),
    ...(left && left.input !== temperature?.input ? [{ of: 'the heat left', ...left }] : []),
  ];
  if (said.length === 0) return mixed;
  return said
    .map(({ of, input, share }) => {
      const { is, measure } = atHome[input];
      return `for ${of}, ${is} (${Math.round(share * 100)} % of the spread): ${measure}`;
    })
    .join('; ');
}

function nextLines({ question, context }: Parts): NonNullable<Answer['next']> {
  const { fuel, spreads } = question;
  const known = (name: string) => context.commands.some((one) => one.name === name);
  return [
    spreads.excess_air.typical < 0.5
      ? { label: 'with more air', line: 'again excess=50%' }
      : { label: 'with less air', line: 'again excess=10%' },
    { label: 'at a hotter flue', line: `again flue=${formatSi(1473.15, 'K', context.units)}` },
    { label: 'with warmed air', line: `again air=${formatSi(673.15, 'K', context.units)}` },
    ...(fuel.kind === 'gas'
      ? known('burner') && fuel.hazards.includes('propane')
        ? [{ label: 'jet, pressure and bottle', line: 'burner 20 kW' }]
        : []
      : known('blast')
        ? [{ label: 'air, pipe and blower', line: `blast ${fuel.id}` }]
        : []),
  ];
}

/** Refuses what no furnace is: said here because the flame itself is fine. */
export function checkReading(options: FlameOptions): void {
  const most = options.oxygen?.si ?? 0.2095;
  if (!options.reads || options.reads.si < most) return;
  throw new AskError({
    code: 'out-of-range',
    what: `a flue that reads ${options.reads.text} oxygen holds as much as the air: nothing burns`,
    expected: 'a reading below the oxygen of the air blown in',
    example: '4%',
    option: 'reads',
  });
}
