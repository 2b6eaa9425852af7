import { AskError } from '../../core/ask-error.ts';
import { airViscosity } from '../../core/fire/air/atmosphere.ts';
import { type Regulator, regulators } from '../../core/fire/data/regulators.ts';
import { asFired } from '../../core/fire/fuel/fuel-as-fired.ts';
import { airNeed } from '../../core/fire/gas/mixture.ts';
import { type SteadyDraw, steadyDraw } from '../../core/fire/propane/cylinder.ts';
import { type DrawDown, drawDown } from '../../core/fire/propane/cylinder-transient.ts';
import { type MixingTube, mixingTube } from '../../core/fire/propane/entrainment.ts';
import { type FlameHolding, flameHolding } from '../../core/fire/propane/flame-holding.ts';
import { type JetFlow, jetBore_m, jetFlow, jetUpstream_Pa } from '../../core/fire/propane/jet.ts';
import { PROPANE, propanePressure_Pa } from '../../core/fire/propane/propane.ts';
import { neededBottle_Pa, requireBottle } from '../../core/fire/propane/regulator.ts';
import { formatBoth, formatSi } from '../../core/quantity/format.ts';
import { type BurnerInputs, type BurnerQuestion, propane } from './question.ts';

/** kg of air for a kg of propane, balanced. */
export const BALANCED_kg_kg = airNeed(asFired({ fuel: propane })).kg_kg;
/** The widest tube that is looked for. */
const WIDEST_m = 0.15;

export interface BurnerPoint {
  readonly flow_kg_s: number;
  readonly jet_m: number;
  /** Gauge. */
  readonly pressure_Pa: number;
  readonly jet: JetFlow;
}

/** The third of flow, jet and pressure. */
export function pointOf(question: BurnerQuestion, x: BurnerInputs): BurnerPoint {
  const { known, air_K, pressure_Pa: air_Pa } = question;
  const gas = {
    gas_K: air_K,
    k: PROPANE.k,
    molar_mass_kg_mol: PROPANE.molar_mass_kg_mol,
    compressibility: x.compressibility,
    discharge: x.discharge,
    downstream_Pa: air_Pa,
  };
  const jet_m = 'jet_m' in known ? known.jet_m + x.jet : undefined;
  const gauge_Pa =
    known.finds === 'pressure'
      ? jetUpstream_Pa({ ...gas, flow_kg_s: known.flow_kg_s, jet_bore_m: jet_m! }) - air_Pa
      : known.pressure_Pa * x.gauge;
  const upstream_Pa = air_Pa + gauge_Pa;
  const bore_m = jet_m ?? jetBore_m({ ...gas, flow_kg_s: 'flow_kg_s' in known ? known.flow_kg_s : 0, upstream_Pa });
  const jet = jetFlow({ ...gas, jet_bore_m: bore_m, upstream_Pa });
  return { flow_kg_s: jet.flow_kg_s, jet_m: bore_m, pressure_Pa: gauge_Pa, jet };
}

const gasDensity_kg_m3 = ({ pressure_Pa, air_K }: BurnerQuestion): number =>
  pressure_Pa / (PROPANE.gas_constant_J_kgK * air_K);

/** Air drawn by the jet; the air holes' loss is lumped with the tube's. */
export function tubeOf(question: BurnerQuestion, point: BurnerPoint, x: BurnerInputs, tube_bore_m: number): MixingTube {
  return mixingTube({
    gas_kg_s: point.flow_kg_s,
    thrust_N: point.jet.thrust_N,
    tube_bore_m,
    inlet_m2: Math.min(1, 100 * tube_bore_m ** 2),
    gas_density_kg_m3: gasDensity_kg_m3(question),
    air_density_kg_m3: question.air_kg_m3,
    tube_losses: 2 * (x.losses - 1),
    inlet_losses: 0,
    back_pressure_Pa: x.back_Pa,
  });
}

/** The tube that draws the balanced air, by halving; `undefined` where none does. */
export function balancedTube_m(question: BurnerQuestion, point: BurnerPoint, x: BurnerInputs): number | undefined {
  const short = (bore_m: number) => tubeOf(question, point, x, bore_m).air_kg_kg < BALANCED_kg_kg;
  let low = Math.max(0.003, point.jet_m * 4);
  // Past its best width furnace pressure stops a slow stream: look where air is enough at all.
  let high = low;
  while (short(high)) {
    high *= 1.1;
    if (high > WIDEST_m) return undefined;
  }
  low = Math.max(low, high / 1.1);
  for (let step = 0; step < 40; step++) {
    const middle = (low + high) / 2;
    if (short(middle)) low = middle;
    else high = middle;
  }
  return high;
}

export function holdingOf(question: BurnerQuestion, tube: MixingTube, tube_bore_m: number): FlameHolding {
  const { air_kg_m3, air_K } = question;
  const r = tube.air_kg_kg;
  const density_kg_m3 = (1 + r) / (1 / gasDensity_kg_m3(question) + r / air_kg_m3);
  const tube_velocity_m_s = Math.min(100, Math.max(0.1, tube.tube_velocity_m_s));
  return flameHolding({
    tube_velocity_m_s,
    tube_bore_m,
    density_kg_m3,
    viscosity_Pa_s: airViscosity({ air_K: Math.max(250, air_K) }),
  });
}

/** The smallest that lets out the pressure, or the one named. */
export function regulatorFor({ regulator }: BurnerQuestion, gauge_Pa: number): Regulator {
  const fitting = regulators.slice(1).find(({ outlet_Pa }) => outlet_Pa.high >= gauge_Pa);
  const chosen = regulator ?? fitting ?? regulators.at(-1)!;
  if (chosen.outlet_Pa.high >= gauge_Pa * (1 - 1e-9)) return chosen;
  throw new AskError({
    code: 'impossible',
    what: `${chosen.name} lets out ${formatBoth(chosen.outlet_Pa.high, 'Pa', 'metric')} at most, and the jet is to have ${formatBoth(gauge_Pa, 'Pa', 'metric')}`,
    expected: 'a regulator that lets out more, or a wider jet at less pressure',
    ...(fitting && regulator
      ? { example: fitting.id, option: 'regulator' }
      : { example: formatSi(chosen.outlet_Pa.high, 'Pa', 'metric'), option: 'pressure' }),
  });
}

export interface BottleDraw {
  readonly needed_Pa: number;
  /** Absolute, at rest. */
  readonly bottle_Pa: number;
  readonly steady: SteadyDraw;
  readonly down: DrawDown;
  /** Until cold or the end of the fill stops it, of all bottles. */
  readonly lasts_s: number;
  readonly drawn_kg: number;
}

/** @throws AskError `impossible` where the bottle has less than the regulator needs. */
export function bottleOf(question: BurnerQuestion, point: BurnerPoint, x: BurnerInputs): BottleDraw {
  const { bottle, bottles, air_K, pressure_Pa } = question;
  const demand = { outlet_Pa: point.pressure_Pa, headroom_Pa: x.headroom_Pa, pressure_Pa };
  const bottle_Pa = x.pressure_factor * propanePressure_Pa({ liquid_K: air_K });
  requireBottle({ ...demand, bottle_Pa });
  const needed_Pa = neededBottle_Pa(demand);
  const shared = {
    radius_m: bottle.kind.radius_m.typical,
    liquid_kg: bottle.liquid_kg,
    ambient_K: air_K,
    needed_Pa,
    exchange_W_m2K: x.exchange_W_m2K,
    pressure_factor: x.pressure_factor,
  };
  const steady = steadyDraw(shared);
  const down = drawDown({ ...shared, draw_kg_s: point.flow_kg_s / bottles, usable_share: x.usable_share });
  const lasts_s = Math.min(down.cold_s ?? down.empty_s, down.empty_s);
  return { needed_Pa, bottle_Pa, steady, down, lasts_s, drawn_kg: down.drawn_kg * bottles };
}

/** Errors of the core, said of the option that helps. */
export function mended<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof AskError) || error.option !== undefined) throw error;
    if (/the bottle (holds|cannot)/.test(error.what)) {
      const cold = / °C/.test(error.example) || !/lower setting/.test(error.expected);
      throw error.with(cold ? { option: 'air', example: '20 °C' } : { option: 'pressure' });
    }
    throw error.with({
      option: /tube/.test(error.what) ? 'tube' : 'jet',
      example: /tube/.test(error.what) ? '25 mm' : '0.8 mm',
    });
  }
}
