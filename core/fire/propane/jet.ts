import { AskError } from '../../ask-error.ts';
import { formatBoth } from '../../quantity/format.ts';
import type { Step, WithSteps } from '../../step.ts';
import { within } from '../within.ts';

const GAS_CONSTANT = 8.314462618;

export interface JetGas {
  readonly gas_K: number;
  /** Ratio of heat capacities; propane 1.13 to 1.15. */
  readonly k: number;
  readonly molar_mass_kg_mol: number;
  /** pV/RT before the jet; 1 for an ideal gas. Propane to 3 bar flows 1 to 3 % more than at 1. */
  readonly compressibility: number;
}

export interface JetInput extends JetGas {
  readonly jet_bore_m: number;
  /** Absolute, before and behind the jet. */
  readonly upstream_Pa: number;
  readonly downstream_Pa: number;
  /** Discharge coefficient, `data/jet-edges.ts`. */
  readonly discharge: number;
}

export interface JetFlow extends WithSteps {
  readonly flow_kg_s: number;
  readonly choked: boolean;
  /** At the jet's mouth: that of the room, or the critical one. */
  readonly exit_Pa: number;
  readonly exit_velocity_m_s: number;
  readonly exit_density_kg_m3: number;
  /** Momentum and pressure it hands to the mixing tube: ṁ·u + (p_exit − p_room)·C_d·A. */
  readonly thrust_N: number;
}

/** Pressure ratio at and below which a jet is choked: (2/(k + 1))^(k/(k − 1)). k 1.01…1.7. */
export function criticalRatio({ k }: { readonly k: number }): number {
  within({ heat_capacity_ratio_count: k }, { low: 1.01, high: 1.7, example: '1.14' });
  return (2 / (k + 1)) ** (k / (k - 1));
}

/** Flow through a square metre of perfect hole, kg/(s m²), at exit pressure ratio r ≥ the critical one. */
function flux({ gas_K, k, molar_mass_kg_mol, compressibility }: JetGas, upstream_Pa: number, r: number): number {
  const specific = (compressibility * GAS_CONSTANT) / molar_mass_kg_mol;
  const drive = ((2 * k) / ((k - 1) * specific * gas_K)) * (r ** (2 / k) - r ** ((k + 1) / k));
  return upstream_Pa * Math.sqrt(drive);
}

function exitRatio({ k, upstream_Pa, downstream_Pa }: Pick<JetInput, 'k' | 'upstream_Pa' | 'downstream_Pa'>) {
  const critical = criticalRatio({ k });
  const given = downstream_Pa / upstream_Pa;
  return { r: Math.max(critical, given), choked: given <= critical };
}

function check(input: Omit<JetInput, 'jet_bore_m'>): void {
  const { upstream_Pa, downstream_Pa, discharge, gas_K, molar_mass_kg_mol, compressibility } = input;
  within({ gas_K }, { low: 200, high: 500, example: '20 °C' });
  within({ discharge }, { low: 0.5, high: 1, example: '80%' });
  within({ molar_mass_kg_mol_count: molar_mass_kg_mol }, { low: 0.002, high: 0.2, example: '0.0441' });
  within({ compressibility }, { low: 0.7, high: 1.1, example: '100%' });
  within({ room_pressure_Pa: downstream_Pa }, { low: 1, high: 5e6, example: '101 kPa abs' });
  within({ jet_pressure_Pa: upstream_Pa }, { low: 1, high: 5e6, example: '300 kPa abs' });
  if (!(upstream_Pa > downstream_Pa)) throw noDrive(upstream_Pa, downstream_Pa);
}

/**
 * Gas through a small hole, isentropic with a discharge coefficient: ṁ = C_d·A·p1·√{2k/[(k−1)·R_s·T]·(r^(2/k) − r^((k+1)/k))},
 * r = p2/p1 but never below the critical ratio (choked). Bore 0.1…100 mm, C_d 0.5…1, 200…500 K, to 5 MPa.
 * Source: gas dynamics; API 520 examples come out within 0.1 %.
 * @throws AskError `impossible` without a pressure difference; `out-of-range`.
 */
export function jetFlow(input: JetInput): JetFlow {
  check(input);
  const { jet_bore_m, upstream_Pa, downstream_Pa, discharge, gas_K, k, molar_mass_kg_mol, compressibility } = input;
  within({ jet_bore_m }, { low: 1e-4, high: 0.1, example: '0.8 mm' });
  const { r, choked } = exitRatio(input);
  const area_m2 = (Math.PI / 4) * jet_bore_m ** 2;
  const flow_kg_s = discharge * area_m2 * flux(input, upstream_Pa, r);
  const exit_Pa = r * upstream_Pa;
  const exit_K = gas_K * r ** ((k - 1) / k);
  const exit_density_kg_m3 = (exit_Pa * molar_mass_kg_mol) / (compressibility * GAS_CONSTANT * exit_K);
  const exit_velocity_m_s = flow_kg_s / (discharge * area_m2 * exit_density_kg_m3);
  const thrust_N = flow_kg_s * exit_velocity_m_s + (exit_Pa - downstream_Pa) * discharge * area_m2;
  return {
    flow_kg_s,
    choked,
    exit_Pa,
    exit_velocity_m_s,
    exit_density_kg_m3,
    thrust_N,
    steps: (): readonly Step[] => [
      {
        formula: choked
          ? 'choked: exit pressure = (2/(k+1))^(k/(k−1)) × pressure before the jet'
          : 'not choked: exit pressure = that of the room',
        inputs: { upstream_Pa, downstream_Pa, k_count: k },
        gives: { exit_Pa },
        source: 'derived',
      },
      {
        formula: 'flow = C_d × area × p1 × √(2k/((k−1) R T) × (r^(2/k) − r^((k+1)/k))), r = exit pressure / p1',
        inputs: { discharge, jet_bore_m, upstream_Pa, gas_K },
        gives: { flow_kg_s, exit_velocity_m_s },
        source: 'derived',
      },
    ],
  };
}

/**
 * The hole a flow takes: d = √(4·ṁ/(π·C_d·flux)), the same formula turned round.
 * @throws AskError as `jetFlow`.
 */
export function jetBore_m({
  flow_kg_s,
  ...input
}: Omit<JetInput, 'jet_bore_m'> & { readonly flow_kg_s: number }): number {
  check(input);
  within({ flow_kg_s }, { low: 1e-9, high: 100, example: '1 kg/h' });
  const { r } = exitRatio(input);
  return Math.sqrt((4 * flow_kg_s) / (Math.PI * input.discharge * flux(input, input.upstream_Pa, r)));
}

/** Most pressure before a small burner's jet that is worth finding. */
const HIGHEST_GAUGE_Pa = 700e3;

/**
 * The pressure before a jet that a flow takes, absolute: `jetFlow` turned round by halving, as flow only rises with it.
 * To 700 kPa above what is behind the jet.
 * @throws AskError `impossible` where even that gives less; `out-of-range`.
 */
export function jetUpstream_Pa({
  flow_kg_s,
  ...input
}: Omit<JetInput, 'upstream_Pa'> & { readonly flow_kg_s: number }): number {
  const { jet_bore_m, downstream_Pa, discharge } = input;
  const area_m2 = (Math.PI / 4) * jet_bore_m ** 2;
  const flowAt = (upstream_Pa: number) =>
    discharge * area_m2 * flux(input, upstream_Pa, exitRatio({ ...input, upstream_Pa }).r);
  let low = downstream_Pa;
  let high = downstream_Pa + HIGHEST_GAUGE_Pa;
  check({ ...input, upstream_Pa: high });
  within({ jet_bore_m }, { low: 1e-4, high: 0.1, example: '0.8 mm' });
  within({ flow_kg_s }, { low: 1e-9, high: 100, example: '1 kg/h' });
  if (flowAt(high) < flow_kg_s) throw tooSmall(jet_bore_m, flow_kg_s, flowAt(high));
  for (let step = 0; step < 50; step++) {
    const middle = (low + high) / 2;
    if (flowAt(middle) < flow_kg_s) low = middle;
    else high = middle;
  }
  return high;
}

const tooSmall = (jet_bore_m: number, flow_kg_s: number, most_kg_s: number) =>
  new AskError({
    code: 'impossible',
    what: `a jet of ${formatBoth(jet_bore_m, 'm', 'metric')} lets ${formatBoth(most_kg_s, 'kg/s', 'metric')} through at most, at ${formatBoth(HIGHEST_GAUGE_Pa, 'Pa', 'metric')}; ${formatBoth(flow_kg_s, 'kg/s', 'metric')} is asked`,
    expected: 'a wider jet, or less gas',
    example: `${Number((jet_bore_m * 1000 * Math.sqrt(flow_kg_s / most_kg_s) * 1.5).toPrecision(2))} mm`,
    option: 'jet',
  });

const noDrive = (upstream_Pa: number, downstream_Pa: number) =>
  new AskError({
    code: 'impossible',
    what: `${formatBoth(upstream_Pa, 'Pa', 'metric')} absolute before the jet is not more than the ${formatBoth(downstream_Pa, 'Pa', 'metric')} behind it: no gas flows`,
    expected: 'a gauge pressure above zero',
    example: '100 kPa',
  });
