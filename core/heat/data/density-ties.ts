import type { Tie } from '../../doubt/together.ts';
import type { Material } from '../../materials/material.ts';

type DensityTie = Pick<Tie<string>, 'rank' | 'why' | 'source' | 'standing'>;

/**
 * How a material's conductivity goes with its density, from piece to piece. Signs are of tables, the size is judged: of
 * one class of stuff the tables rise row for row (a rank of 1), of one catalogue entry as much again is left to
 * chemistry, grain and how it was measured.
 */
const bodies: DensityTie = {
  rank: 0.6,
  why: 'less air in it: fired brick 0.41 to 1.34 W/(m K) from 1120 to 2400 kg/m³, light brick 0.14 to 0.45 from 490 to 1270',
  source: 'ashrae-via-ht',
  standing: 'judged',
};

/** Cold wool: 0.040 W/(m K) at 32 kg/m³, 0.035 at 100. Hot, the denser one holds more of the radiation back. */
const wools: DensityTie = {
  rank: -0.5,
  why: 'thinner wool lets more radiation through',
  source: 'ashrae-via-ht',
  standing: 'judged',
};

/** Loose fill rises with density when cold and falls with it when hot, and a wall has both ends: left apart. */
export function densityTie({ kind, hazards, id }: Material): DensityTie | undefined {
  if (kind === 'brick' || kind === 'castable' || kind === 'lining') return bodies;
  if (kind !== 'insulation') return undefined;
  return id === 'mineral-wool' || hazards.includes('ceramic-fibre') ? wools : bodies;
}
