import { AskError } from '../../ask-error.ts';
import { formatBoth, formatSi } from '../../quantity/format.ts';
import type { Step, WithSteps } from '../../step.ts';
import { type Bed, bedDrop } from '../bed/ergun.ts';
import { checkFan, type Fan, fanPressure_Pa } from './fan.ts';
import { pipeDrop, type Wall } from './pipe.ts';

const MOST_STEPS = 60;
/** Of the blower's shut-off pressure, and of its free flow. */
const CLOSE = 1e-9;

export interface BlastInput {
  readonly fan: Fan;
  readonly speed: number;
  /** From the blower to the tuyere. `losses`: inlet, bends and valves on its bore, without its outlet. */
  readonly pipe: Wall & { readonly losses: number };
  /** Where the air enters the furnace. `losses` on its own bore, the outlet's 1 included. */
  readonly tuyere: { readonly bore_m: number; readonly losses: number };
  readonly bed?: Bed;
  /** Gauge, inside the furnace above the bed. */
  readonly back_pressure_Pa: number;
  readonly air_K: number;
  /** Absolute. */
  readonly pressure_Pa: number;
  readonly density_kg_m3: number;
  /** Of dry air in it: what burns. */
  readonly dry_density_kg_m3: number;
  readonly viscosity_Pa_s: number;
}

export interface BlastPoint extends WithSteps {
  readonly flow_m3_s: number;
  /** Gauge, at the blower. */
  readonly fan_Pa: number;
  readonly pipe_Pa: number;
  readonly tuyere_Pa: number;
  readonly bed_Pa: number;
  readonly tuyere_velocity_m_s: number;
  readonly dry_air_kg_s: number;
  /** Share of the blower's free flow that gets through. */
  readonly of_free_flow: number;
}

/**
 * Where a falling and a rising curve meet, by false position (Illinois), halving where that fails: flow in m³/s.
 * Unique, as one falls and the other rises. `undefined` from the system means a flow that its formulas do not reach.
 * Source: derived.
 */
export function operatingPoint_m3_s({
  fan,
  system,
  most_m3_s,
}: {
  /** Pa at a flow. */
  readonly fan: (flow_m3_s: number) => number;
  readonly system: (flow_m3_s: number) => number | undefined;
  readonly most_m3_s: number;
}): number {
  const over = (flow: number) => fan(flow) - (system(flow) ?? Number.POSITIVE_INFINITY);
  let low = 0;
  let high = most_m3_s;
  let overLow = over(low);
  let overHigh = over(high);
  if (overHigh >= 0) return high;
  if (!(overLow > 0)) return low;
  const close_Pa = CLOSE * overLow;
  let moved: 'low' | 'high' | undefined;
  for (let step = 0; step < MOST_STEPS && high - low > CLOSE * 1e-3 * most_m3_s; step++) {
    const straight = low + ((high - low) * overLow) / (overLow - overHigh);
    const flow = Number.isFinite(overHigh) ? straight : (low + high) / 2;
    const left = over(flow);
    if (Math.abs(left) <= close_Pa) return flow;
    // An end that stays twice running counts half, so that both close in.
    if (left > 0) {
      low = flow;
      overLow = left;
      if (moved === 'low') overHigh /= 2;
      moved = 'low';
    } else {
      high = flow;
      overHigh = left;
      if (moved === 'high') overLow /= 2;
      moved = 'high';
    }
  }
  return low;
}

/**
 * The blast a blower gives through pipe, tuyere and bed: p_fan(Q) = pipe + tuyere + bed + back-pressure.
 * Limits as in `pipeDrop`, `bedDrop` and `fanPressure_Pa`.
 * @throws AskError `impossible` where the back-pressure is more than the blower's shut-off, or where a drop would pass a tenth
 * of the air's pressure; `out-of-range`.
 */
export function blastPoint(input: BlastInput): BlastPoint {
  const { fan, speed, density_kg_m3, dry_density_kg_m3, back_pressure_Pa } = input;
  checkFan(fan, speed);
  const shut_Pa = fanPressure_Pa({ fan, flow_m3_s: 0, density_kg_m3, speed });
  if (!(back_pressure_Pa < shut_Pa)) throw heldShut(shut_Pa, back_pressure_Pa);
  // A wrong bore, void or temperature is the asker's to mend: it shows at no flow.
  dropsAt(input, 0);
  const flow_m3_s = operatingPoint_m3_s({
    fan: (flow) => fanPressure_Pa({ fan, flow_m3_s: flow, density_kg_m3, speed }),
    system: (flow) => systemPressure_Pa(input, flow),
    most_m3_s: speed * fan.free_flow_m3_s,
  });
  const fan_Pa = fanPressure_Pa({ fan, flow_m3_s, density_kg_m3, speed });
  const drops = dropsAt(input, flow_m3_s);
  const taken_Pa = drops.pipe.drop_Pa + drops.tuyere.drop_Pa + (drops.bed?.drop_Pa ?? 0) + back_pressure_Pa;
  // The blower still has pressure to spare where the formulas end: a hair further they say why.
  if (fan_Pa - taken_Pa > 1e-6 * shut_Pa) dropsAt(input, flow_m3_s * (1 + 1e-6));
  const dry_air_kg_s = flow_m3_s * dry_density_kg_m3;
  const tuyere_velocity_m_s = drops.tuyere.velocity_m_s;
  return {
    flow_m3_s,
    fan_Pa,
    pipe_Pa: drops.pipe.drop_Pa,
    tuyere_Pa: drops.tuyere.drop_Pa,
    bed_Pa: drops.bed?.drop_Pa ?? 0,
    tuyere_velocity_m_s,
    dry_air_kg_s,
    of_free_flow: flow_m3_s / fan.free_flow_m3_s,
    steps: (): readonly Step[] => [
      {
        formula:
          'blower pressure: fan = shut off × density ÷ rated density × speed² × (1 − (flow ÷ (speed × free flow))²)',
        inputs: {
          flow_m3_s,
          speed,
          density_kg_m3,
          shut_off_Pa: fan.shut_off_Pa,
          free_flow_m3_s: fan.free_flow_m3_s,
          rated_density_kg_m3: fan.rated_density_kg_m3,
        },
        gives: { fan_Pa },
        source: 'common-practice',
      },
      ...drops.pipe.steps(),
      {
        formula: 'tuyere drop = losses × density × tuyere velocity² ÷ 2',
        inputs: { tuyere_velocity_m_s, losses_count: input.tuyere.losses, density_kg_m3 },
        gives: { tuyere_drop_Pa: drops.tuyere.drop_Pa },
        source: 'derived',
      },
      ...(drops.bed?.steps() ?? []),
      {
        formula: 'the flow at which blower pressure = pipe + tuyere + bed + back-pressure',
        inputs: { fan_Pa, back_pressure_Pa },
        gives: { flow_m3_s, dry_air_kg_s },
        source: 'derived',
      },
    ],
  };
}

function dropsAt({ pipe, tuyere, bed, ...air }: BlastInput, flow_m3_s: number) {
  const { air_K, density_kg_m3, viscosity_Pa_s, pressure_Pa } = air;
  const through = { flow_m3_s, density_kg_m3, viscosity_Pa_s, pressure_Pa };
  return {
    pipe: pipeDrop({ ...pipe, ...through }),
    tuyere: pipeDrop({ bore_m: tuyere.bore_m, losses: tuyere.losses, length_m: 0, roughness_m: 0, ...through }),
    bed: bed && bedDrop({ bed, flow_m3_s, air_K, density_kg_m3 }),
  };
}

/** What pipe, tuyere, bed and furnace ask for at a flow, Pa; `undefined` past what their formulas reach. */
export function systemPressure_Pa(input: BlastInput, flow_m3_s: number): number | undefined {
  try {
    const { pipe, tuyere, bed } = dropsAt(input, flow_m3_s);
    return pipe.drop_Pa + tuyere.drop_Pa + (bed?.drop_Pa ?? 0) + input.back_pressure_Pa;
  } catch (error) {
    if (error instanceof AskError) return undefined;
    throw error;
  }
}

const heldShut = (shut_Pa: number, back_pressure_Pa: number) =>
  new AskError({
    code: 'impossible',
    what: `the blower makes ${formatBoth(shut_Pa, 'Pa', 'metric')} at most, against ${formatBoth(back_pressure_Pa, 'Pa', 'metric')} in the furnace: no air goes in`,
    expected: 'less back-pressure (a wider vent) or a blower of more pressure',
    example: formatSi(shut_Pa / 4, 'Pa', 'metric'),
  });
