import { blastTies } from '../../core/fire/data/blast-ties.ts';
import type { SiUnit } from '../../core/quantity/figure.ts';
import type { Doubted } from '../command.ts';
import { blastOutputs } from './answer.ts';
import type { BlastInputs, BlastKey, BlastQuestion } from './question.ts';
import { atHome } from './words.ts';

/** What belongs to one blower, hose or fuel is drawn for that one alone. */
export function blastDoubt(question: BlastQuestion): Doubted {
  const { blower, pipe, fuel, need, spreads } = question;
  const owner: Partial<Record<BlastKey, string>> = {
    free_m3_s: blower.name,
    shut_Pa: blower.name,
    friction: pipe.kind,
    ash: fuel.name,
    moisture: fuel.name,
    dry_J_kg: fuel.name,
  };
  const keys = Object.keys(spreads) as BlastKey[];
  const nameOf = (key: BlastKey) => (owner[key] ? `${atHome[key].is}, ${owner[key]}` : atHome[key].is);
  return {
    inputs: Object.fromEntries(keys.map((key) => [nameOf(key), spreads[key]])),
    units: Object.fromEntries(keys.map((key) => [nameOf(key), units[key]])),
    together: blastTies.map((tie) => ({ ...tie, input: nameOf(tie.input), goesWith: nameOf(tie.goesWith) })),
    samples: 400,
    model: (draw) => {
      const x = Object.fromEntries(keys.map((key) => [key, draw[nameOf(key)]!])) as unknown as BlastInputs;
      const { flow, need: needed, cover, fuel: burned, power, pressure } = blastOutputs(question, x);
      return {
        'blast.flow': flow,
        'blast.fuel': burned,
        'blast.power': power,
        'blast.pressure': pressure,
        ...(need === undefined ? {} : { 'blast.need': needed, 'blast.cover': cover }),
      };
    },
  };
}

const units: Readonly<Record<BlastKey, SiUnit>> = {
  free_m3_s: 'm3/s',
  shut_Pa: 'Pa',
  entrance: '1',
  bend: '1',
  friction: '1',
  lump_m: 'm',
  void_share: '1',
  sphericity: '1',
  roughness_factor: '1',
  bed_K: 'K',
  co_share: '1',
  excess_air: '1',
  ash: '1',
  moisture: '1',
  dry_J_kg: 'J/kg',
};
