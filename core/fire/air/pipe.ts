import { AskError } from '../../ask-error.ts';
import { formatBoth, formatSi } from '../../quantity/format.ts';
import type { Step, WithSteps } from '../../step.ts';
import { within } from '../within.ts';

const LAMINAR = 2000;
const TURBULENT = 4000;
/** Past a tenth of the pressure the density changes along the pipe by as much, and Darcy's form no longer holds. */
const MOST_SHARE = 0.1;

export interface Wall {
  readonly bore_m: number;
  readonly length_m: number;
  /** Height of the wall's roughness. */
  readonly roughness_m: number;
  /** Given, it stands in place of the computed factor: corrugated hose, 0.05 to 0.1. */
  readonly friction_factor?: number;
}

export interface PipeInput extends Wall {
  readonly flow_m3_s: number;
  /** Sum of the loss coefficients of inlet, bends, valves and outlet, on this bore. */
  readonly losses: number;
  readonly density_kg_m3: number;
  readonly viscosity_Pa_s: number;
  /** Absolute, where the air is let out. */
  readonly pressure_Pa: number;
}

export interface PipeDrop extends WithSteps {
  readonly drop_Pa: number;
  readonly velocity_m_s: number;
  readonly reynolds: number;
  readonly friction_factor: number;
}

/**
 * Darcy friction factor: 64/Re to Re 2000; Colebrook 1/√f = −2·log10(ε/3.7D + 2.51/(Re·√f)) from 4000; a smooth
 * blend of the two between. Re > 0, ε/D 0…0.05. Source: Colebrook 1939, start by Haaland, three Newton steps.
 * @throws AskError `out-of-range`.
 */
export function frictionFactor({ reynolds, roughness }: { reynolds: number; roughness: number }): number {
  within({ relative_roughness: roughness }, { low: 0, high: 0.05, example: '0.1%' });
  if (!(reynolds > 0)) throw noFlow(reynolds);
  if (reynolds <= LAMINAR) return 64 / reynolds;
  if (reynolds >= TURBULENT) return colebrook(reynolds, roughness);
  const along = (reynolds - LAMINAR) / (TURBULENT - LAMINAR);
  const weight = along * along * (3 - 2 * along);
  return (1 - weight) * (64 / reynolds) + weight * colebrook(reynolds, roughness);
}

function colebrook(reynolds: number, roughness: number): number {
  const rough = roughness / 3.7;
  const slip = 2.51 / reynolds;
  // x = 1/√f.
  let x = -1.8 * Math.log10(rough ** 1.11 + 6.9 / reynolds);
  for (let step = 0; step < 3; step++) {
    const inside = rough + slip * x;
    x -= (x + 2 * Math.log10(inside)) / (1 + (2 * slip) / (Math.LN10 * inside));
  }
  return 1 / (x * x);
}

/**
 * Pressure lost along a round pipe and its fittings: Δp = (f·L/D + ΣK)·ρ·v²/2 (Darcy–Weisbach).
 * Bore 3 mm…1 m, length 0…100 m, drop up to a tenth of the absolute pressure: the gas is taken as incompressible.
 * @throws AskError `out-of-range`; `impossible` past a tenth.
 */
export function pipeDrop(input: PipeInput): PipeDrop {
  const { bore_m, length_m, roughness_m, losses, density_kg_m3, viscosity_Pa_s, flow_m3_s, pressure_Pa } = input;
  within({ pipe_bore_m: bore_m }, { low: 0.003, high: 1, example: '38 mm' });
  within({ pipe_length_m: length_m }, { low: 0, high: 100, example: '1.5 m' });
  within({ flow_m3_s }, { low: 0, high: 10, example: '20 L/s' });
  const velocity_m_s = flow_m3_s / ((Math.PI / 4) * bore_m ** 2);
  const reynolds = (density_kg_m3 * velocity_m_s * bore_m) / viscosity_Pa_s;
  const still = reynolds === 0;
  const friction_factor =
    input.friction_factor ?? (still ? 0 : frictionFactor({ reynolds, roughness: roughness_m / bore_m }));
  const drop_Pa = ((friction_factor * length_m) / bore_m + losses) * (density_kg_m3 / 2) * velocity_m_s ** 2;
  if (drop_Pa > MOST_SHARE * pressure_Pa) throw tooFast(drop_Pa, pressure_Pa, bore_m);
  return {
    drop_Pa,
    velocity_m_s,
    reynolds,
    friction_factor,
    steps: (): readonly Step[] => [
      {
        formula: 'velocity = flow ÷ (π ÷ 4 × bore²)',
        inputs: { flow_m3_s, bore_m },
        gives: { velocity_m_s, reynolds_count: reynolds },
        source: 'derived',
      },
      {
        formula: 'friction factor: 64/Re below 2000, Colebrook above 4000',
        inputs: { reynolds_count: reynolds, roughness_m, bore_m },
        gives: { friction_factor_count: friction_factor },
        source: 'colebrook-1939',
      },
      {
        formula: 'drop = (friction factor × length ÷ bore + losses) × density × velocity² ÷ 2',
        inputs: {
          friction_factor_count: friction_factor,
          length_m,
          bore_m,
          losses_count: losses,
          density_kg_m3,
          velocity_m_s,
        },
        gives: { drop_Pa },
        source: 'derived',
      },
    ],
  };
}

/**
 * Loss coefficient of a sharp step down, on the smaller pipe's velocity; area ratio = small/large, 0…1.
 * K = 0.0696·(1 − β⁵)·λ² + (λ − 1)², λ = 1 + 0.622·(1 − 0.215·β² − 0.785·β⁵), β² the area ratio.
 * Source: Rennels, as carried by the library fluids; 0.5·(1 − ratio) can be a quarter low.
 */
export function contractionLoss({ area_ratio }: { readonly area_ratio: number }): number {
  within({ area_ratio }, { low: 0, high: 1, example: '25%' });
  const beta5 = area_ratio ** 2.5;
  const squeeze = 1 + 0.622 * (1 - 0.215 * area_ratio - 0.785 * beta5);
  return 0.0696 * (1 - beta5) * squeeze ** 2 + (squeeze - 1) ** 2;
}

/** Loss of a sharp step up, on the smaller pipe's velocity: (1 − small/large)². Source: momentum balance (Borda). */
export function expansionLoss({ area_ratio }: { readonly area_ratio: number }): number {
  within({ area_ratio }, { low: 0, high: 1, example: '25%' });
  return (1 - area_ratio) ** 2;
}

const noFlow = (reynolds: number) =>
  new AskError({
    code: 'out-of-range',
    what: `a Reynolds number of ${reynolds} is no flow`,
    expected: 'air that moves',
    example: '10 L/s',
  });

const tooFast = (drop_Pa: number, pressure_Pa: number, bore_m: number) =>
  new AskError({
    code: 'impossible',
    what: `a drop of ${formatBoth(drop_Pa, 'Pa', 'metric')} is more than a tenth of the air's own pressure (${formatBoth(MOST_SHARE * pressure_Pa, 'Pa', 'metric')}): the air would swell along the pipe, and this formula no longer holds`,
    expected: `a wider pipe than ${formatBoth(bore_m, 'm', 'metric')}, a shorter one or less air`,
    example: formatSi(bore_m * 1.5, 'm', 'metric'),
  });
