import { AskError } from '../../core/ask-error.ts';
import type { SiUnit } from '../../core/quantity/figure.ts';
import type { Doubted } from '../command.ts';
import { burnerAt, burnerOutputs } from './answer.ts';
import { HIGHER_J_kg } from './figures.ts';
import { type BurnerInputs, type BurnerKey, type BurnerQuestion, LOWER_J_kg } from './question.ts';
import { atHome } from './words.ts';

/** What belongs to one jet or regulator is drawn for that one alone; day, gas and gauge are everyone's. */
export function burnerDoubt(asked: BurnerQuestion): Doubted {
  const { question, tube, regulator, point } = burnerAt(asked);
  const owner: Partial<Record<BurnerKey, string>> = {
    discharge: question.edge,
    jet: `${(point.jet_m * 1000).toFixed(2)} mm`,
    headroom_Pa: regulator.name,
  };
  const keys = Object.keys(question.spreads) as BurnerKey[];
  const nameOf = (key: BurnerKey) => (owner[key] ? `${atHome[key].is}, ${owner[key]}` : atHome[key].is);
  return {
    inputs: Object.fromEntries(keys.map((key) => [nameOf(key), question.spreads[key]])),
    units: Object.fromEntries(keys.map((key) => [nameOf(key), units[key]])),
    samples: 250,
    model: (draw) => {
      const x = Object.fromEntries(keys.map((key) => [key, draw[nameOf(key)]!])) as unknown as BurnerInputs;
      try {
        const { flow, jet, pressure, air, lasts, steady } = burnerOutputs(question, tube?.bore_m, x);
        return {
          'burner.rate': flow * LOWER_J_kg,
          'burner.rate_higher': flow * HIGHER_J_kg,
          'burner.propane': flow,
          'burner.jet': jet,
          'burner.pressure': pressure,
          'burner.lasts': lasts,
          'burner.steady': steady,
          ...(tube ? { 'burner.air': air } : {}),
        };
      } catch (error) {
        if (error instanceof AskError) return {};
        throw error;
      }
    },
  };
}

const units: Readonly<Record<BurnerKey, SiUnit>> = {
  discharge: '1',
  jet: 'm',
  gauge: '1',
  compressibility: '1',
  losses: '1',
  back_Pa: 'Pa',
  exchange_W_m2K: 'W/(m2 K)',
  pressure_factor: '1',
  headroom_Pa: 'Pa',
  usable_share: '1',
};
