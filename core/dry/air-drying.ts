import type { Step, WithSteps } from '../step.ts';
import { evaporating, type WetFace } from './evaporation.ts';
import { sheet } from './sheet.ts';

const DAY_s = 86_400;
const GAS_J_molK = 8.314462618;
const REFERENCE_K = 293.15;

/** When a lining counts as air-dry: free water left and loss a day, both of its dry mass. */
export interface AirDry {
  readonly left: number;
  readonly loss_per_day: number;
}

export interface AirDryingInput extends WetFace {
  readonly thickness_m: number;
  readonly open_sides: 1 | 2;
  /** Of one square metre of wall: dry, and the water in it that air can take. */
  readonly dry_kg_m2: number;
  readonly free_kg_m2: number;
  /** Effective moisture diffusivity at 20 °C, m²/s, and how it grows with temperature (Arrhenius), J/mol. */
  readonly diffusivity_m2_s: number;
  readonly activation_J_mol: number;
  /** Share of the evaporation of an open wet face that this one gets: a bore or a cover keeps air off. */
  readonly access: number;
  /** Days under a cover that lets nothing out, to even out the damp. */
  readonly covered_s: number;
  readonly until: AirDry;
}

export interface AirDrying extends WithSteps {
  /** From the day it was rammed, cover included. Infinity where the air takes nothing. */
  readonly time_s: number;
  /** From a wet open face of one square metre. */
  readonly evaporates_kg_m2s: number;
  readonly biot: number;
  /** In the end what is left falls to 1/e in this time. */
  readonly settling_s: number;
  /** Free water left, share of the dry mass, after a time from ramming. */
  readonly leftAt: (time_s: number) => number;
  /** Loss a day, share of the dry mass. */
  readonly lossAt: (time_s: number) => number;
}

/**
 * How long a wet lining dries in air: diffusion in a plane sheet, its face losing water in proportion to what it still
 * holds, at first as fast as a wet face in this air evaporates. A body so wet that its face stays wet for a while dries
 * sooner; one rammed at 4 to 10 % is damp, and this is the careful side. Done when both limits of `until` are met. One to two open sides; thickness 1…300 mm.
 * Source: Crank 1975, chapter 4, with the heat and mass transfer analogy. L² law where diffusion rules, L where the air does.
 */
export function airDrying(input: AirDryingInput): AirDrying {
  const { thickness_m, open_sides, dry_kg_m2, free_kg_m2, access, covered_s, until } = input;
  const { water_kg_m2s: evaporates_kg_m2s, face_K } = evaporating(input);
  const half_m = thickness_m / open_sides;
  // Its depth is near the air's temperature when the last water goes; the sun may warm it above.
  const body_K = Math.max(face_K, input.air_K);
  const diffusivity =
    input.diffusivity_m2_s * Math.exp((-input.activation_J_mol / GAS_J_molK) * (1 / body_K - 1 / REFERENCE_K));
  const sheet_time_s = half_m ** 2 / diffusivity;
  const leaves_kg_m2s = open_sides * access * evaporates_kg_m2s;
  const biot = leaves_kg_m2s > 0 ? (leaves_kg_m2s / free_kg_m2) * sheet_time_s : 0;
  const dries = sheet({ biot });
  const share = free_kg_m2 / dry_kg_m2;
  const slow = ((until.loss_per_day / DAY_s) * sheet_time_s) / share;
  const little = dries.whenLeft(until.left / share);
  const fourier = dries.rate(little) <= slow ? little : dries.whenRate(slow);
  const time_s = share <= 0 ? 0 : biot <= 0 ? Number.POSITIVE_INFINITY : covered_s + fourier * sheet_time_s;
  const after = (at_s: number) => Math.max(0, at_s - covered_s) / sheet_time_s;
  return {
    time_s,
    evaporates_kg_m2s,
    biot,
    settling_s: sheet_time_s / dries.first_root ** 2,
    leftAt: (at_s) => share * dries.left(after(at_s)),
    lossAt: (at_s) => (at_s < covered_s ? 0 : ((share * dries.rate(after(at_s))) / sheet_time_s) * DAY_s),
    steps: (): readonly Step[] => [
      {
        formula:
          'a wet face: convection + radiation + sun = latent heat × h ÷ (ρ cp Le^⅔) × (vapour at the face − in the air)',
        inputs: {
          air_K: input.air_K,
          humidity: input.humidity,
          exchange_W_m2K: input.exchange_W_m2K,
          sun_W_m2: input.sun_W_m2,
        },
        gives: { face_K, water_from_a_square_metre_kg_s: evaporates_kg_m2s },
        source: 'lewis-analogy',
      },
      {
        formula: 'half thickness² ÷ moisture diffusivity; the whole thickness where one side is open',
        inputs: { half_thickness_m: half_m, body_K },
        gives: { sheet_time_s },
        source: 'vasic-2012',
      },
      {
        formula:
          'Biot = loss of the wet face × sheet time ÷ water that can leave; the face loses in proportion to what it holds',
        inputs: { loss_of_a_square_metre_kg_s: leaves_kg_m2s, sheet_time_s, water_in_a_square_metre_kg: free_kg_m2 },
        gives: { biot },
        source: 'derived',
      },
      {
        formula:
          'left = Σ 2 Bi² e^(−β² Fo) ÷ (β² (β² + Bi² + Bi)), β tan β = Bi; until little enough is left and lost a day, of the dry mass',
        inputs: {
          biot,
          water_share: share,
          left_share: until.left,
          lost_a_day_share: until.loss_per_day,
          sheet_time_s,
          covered_s,
        },
        gives: { time_s },
        source: 'crank-1975',
      },
    ],
  };
}
