import { AskError } from '../ask-error.ts';
import { type Mover, type Range, sampleDoubt } from '../doubt/sample.ts';
import { wallPaths } from '../heat/wall-paths.ts';
import type { Draw, Fineness } from '../heat/wall-question.ts';
import type { Step, WithSteps } from '../step.ts';
import { type Furnace, longestClimb_s } from './balance-climb.ts';
import { endsShare } from './balance-ends.ts';
import type { Fire } from './balance-fire.ts';
import {
  type Melts,
  type Neighbour,
  neighbourOf,
  type Programme,
  phasesOf,
  solveMelts,
  solveNear,
} from './balance-melt.ts';
import { type BalanceModel, type BalanceQuestion, balanceModel, doubts } from './balance-question.ts';
import { balanceSteps } from './balance-steps.ts';

export type { BalanceQuestion, ChargeQuestion, FiringQuestion } from './balance-question.ts';

export type BalanceOutput = 'fuel' | 'time' | 'again_fuel' | 'again_time' | 'efficiency' | 'again_efficiency' | 'cost';

export interface Balance extends WithSteps {
  readonly model: BalanceModel;
  readonly fire: Fire;
  readonly furnace: Furnace;
  readonly melts: Melts;
  /** Lid and floor, of what the side wall takes. */
  readonly ends: number;
  /** Central 95 %; empty where none was asked for. */
  readonly ranges: Readonly<Partial<Record<BalanceOutput, Range>>>;
  /** What moves the fuel of the first melt most. */
  readonly doubt?: Mover<string>;
}

/** The shown melts run as fine as `wall` shows them, so that both tell the same stored heat. */
const fineness: Fineness = { cells: 20, tolerance_dK: 0.3 };
/** See `sampleFineness` of the wall: heat within 0.7 %. */
const sampleFineness: Fineness = { cells: 5, tolerance_dK: 3 };
const firstSamples = 1000;
/** Of the melt's time, that the last repetition may move it. The heat closes anyway. */
const firstAccuracy = 0.05;
const roughAccuracy = 0.02;
/** The fine run starts from the rough one and has only its grid to make good: fuel within 1 %, time within 2 (measured). */
const fineAccuracy = 0.04;
const sampleAccuracy = 0.3;

interface Asking {
  readonly ranged?: boolean;
  /** A draw of the inputs to where measurements put it, see `core/build/log-calibrate.ts`. */
  readonly moved?: ((draw: Draw) => Draw) | undefined;
}

/**
 * Fuel of a melt = (metal + crucible + lining + openings) ÷ share of its heat that stays, flue and unburned gas being the
 * rest; the lining by the transient wall, lid and floor beside it. First in a cold furnace, then again after a pause.
 * @throws AskError `impossible` where the fire leaves nothing at that flue, or less than the furnace loses.
 */
export function answerBalance(question: BalanceQuestion, { ranged = true, moved }: Asking = {}): Balance {
  let model = balanceModel(question, 0.4, moved);
  const begun = model.furnace(model.typical, sampleFineness);
  refuseColdFire(question, begun.fire);
  let rough = solveMelts(begun, startOf(question), firstAccuracy);
  // What lid and floor take follows from the programme, and the programme a little from what they take.
  const { first } = rough;
  const [fire] = phasesOf(begun, rough.programme);
  const ends = endsShare(model.wall, fire!, first.stored_J + first.shell_J);
  model = balanceModel(question, ends, moved);
  rough = solveMelts(model.furnace(model.typical, sampleFineness), rough.programme, roughAccuracy);
  const furnace = model.furnace(model.typical, fineness);
  const melts = solveMelts(furnace, rough.programme, fineAccuracy);
  refuseEndless(model, furnace, melts);
  const sampled = ranged ? sampleMelts(model, neighbourOf(rough), moved) : undefined;
  return Object.freeze({
    model,
    fire: furnace.fire,
    furnace,
    melts,
    ends,
    ranges: sampled?.ranges ?? {},
    ...(sampled?.doubt ? { doubt: sampled.doubt } : {}),
    steps: (): readonly Step[] => balanceSteps(model, furnace, melts, ends),
  });
}

/** Somewhere to begin: forty minutes, then twenty. */
const startOf = ({ wall, firing }: BalanceQuestion): Programme => ({
  first: { climb_s: 'climb_s' in firing.rate ? firing.rate.climb_s : 2400, hold_s: 300 },
  relit_K: wall.hot_K.typical - 200,
  again: { climb_s: 1000, hold_s: 300 },
});

/**
 * Central 95 % of each output. Sampled as logarithms: the points are the same, and a long tail of slow melts does not ask
 * for thousands of samples.
 */
function sampleMelts(model: BalanceModel, near: Neighbour, moved: Asking['moved']) {
  const { ranges, movesMost } = sampleDoubt({
    inputs: model.inputs,
    together: model.wall.together,
    samples: firstSamples,
    model: (drawn): Record<BalanceOutput, number> => {
      const draw = moved ? moved(drawn) : drawn;
      const furnace = model.furnace(draw, sampleFineness);
      if (!(furnace.fire.left(furnace.hot_K - furnace.drop_dK) > 0)) return none;
      const { first, again } = solveNear(furnace, near, sampleAccuracy);
      const price = draw[doubts.price];
      return {
        fuel: Math.log(first.fuel_kg),
        time: Math.log(first.time_s),
        again_fuel: Math.log(again.fuel_kg),
        again_time: Math.log(again.time_s),
        efficiency: Math.log(first.efficiency),
        again_efficiency: Math.log(again.efficiency),
        ...(price === undefined ? {} : { cost: Math.log(first.fuel_kg * price) }),
      } as Record<BalanceOutput, number>;
    },
  });
  const found: Partial<Record<BalanceOutput, Range>> = {};
  for (const [name, range] of Object.entries(ranges) as [BalanceOutput, Range | undefined][])
    if (range) found[name] = { low: Math.exp(range.low), high: Math.exp(range.high) };
  return { ranges: found, doubt: movesMost.fuel };
}

const none: Readonly<Record<BalanceOutput, number>> = {
  fuel: Number.NaN,
  time: Number.NaN,
  again_fuel: Number.NaN,
  again_time: Number.NaN,
  efficiency: Number.NaN,
  again_efficiency: Number.NaN,
  cost: Number.NaN,
};

const celsius = (kelvin: number): string => `${Math.round(kelvin - 273.15)} °C`;
const kilowatts = (watts: number): string => `${Number((watts / 1000).toPrecision(2))} kW`;
const percent = (share: number): string => `${Math.round(share * 100)} %`;

function refuseColdFire({ firing, wall }: BalanceQuestion, fire: Fire): void {
  const hot_K = wall.hot_K.typical;
  const flue_K = hot_K - firing.drop_dK.typical;
  const left = fire.left(flue_K);
  if (left > 0.02) return;
  let low = flue_K / 4;
  let high = flue_K;
  while (high - low > 1) {
    const middle = (low + high) / 2;
    if (fire.left(middle) > 0.02) low = middle;
    else high = middle;
  }
  throw new AskError({
    code: 'impossible',
    what: `with its flue at ${celsius(flue_K)} this fire of ${firing.fuel.name} leaves ${percent(left)} of its heat in the furnace: it cannot hold ${celsius(hot_K)}, and stops near ${celsius(low + firing.drop_dK.typical)} whatever its size`,
    expected: 'less excess air or CO, a better fuel, or warmer air',
    example: 'excess_air' in firing.air ? '15%' : '20%',
    option: 'excess_air' in firing.air ? 'excess' : 'co',
  });
}

/** Held at its heat for long a furnace loses so much; below that a fire never gets there. */
function refuseEndless(model: BalanceModel, furnace: Furnace, { first }: Melts): void {
  if ('climb_s' in furnace.firing) return;
  const { hot_K, drop_dK, fire } = furnace;
  const stays_W = first.power_W * fire.left(hot_K - drop_dK);
  const loses_W = wallPaths(model.wall).total_W;
  if (first.climb_s + first.hold_s < longestClimb_s * 0.99 && stays_W > loses_W) return;
  const rate = Math.ceil((1.5 * loses_W) / fire.left(hot_K - drop_dK) / 1000);
  throw new AskError({
    code: 'impossible',
    what: `${kilowatts(first.power_W)} of ${model.question.firing.fuel.name} leaves ${kilowatts(stays_W)} in the furnace at a flue of ${celsius(hot_K - drop_dK)}, and walls, lid, floor and openings take ${kilowatts(loses_W)} there: it never melts`,
    expected: `more fire (from about ${rate} kW), a cooler hot face, or less to heat`,
    example: `${rate} kW`,
    option: 'rate',
  });
}
