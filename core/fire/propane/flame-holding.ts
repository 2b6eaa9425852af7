import { datum, MEMORY } from '../../materials/data/make.ts';
import type { Spread } from '../../materials/spread.ts';
import type { Step, WithSteps } from '../../step.ts';
import { frictionFactor } from '../air/pipe.ts';
import { within } from '../within.ts';

const TURBULENT = 2000;

/**
 * Critical gradients at a bare tube end, 1/s, and other bands for propane with air near the stoichiometric mixture. From
 * memory, wide; a mixture off that point flashes back and holds less. A turbulent flame flashes back at higher gradients.
 */
export const FLAME = Object.freeze({
  flashback_per_s: datum(300, 500, 700, MEMORY),
  turbulent_flashback_per_s: datum(500, 1200, 2500, MEMORY),
  blow_off_per_s: datum(1500, 3000, 6000, MEMORY),
  quench_m: datum(0.0018, 0.002, 0.0025, MEMORY),
  practical_m_s: datum(5, 10, 20, MEMORY),
  burning_m_s: datum(0.4, 0.43, 0.46, MEMORY),
});

export type Against = 'below' | 'within' | 'above';

export interface FlameHolding extends WithSteps {
  /** Of velocity at the tube's wall, 1/s. */
  readonly gradient_per_s: number;
  readonly reynolds: number;
  readonly flashback_band_per_s: Spread;
  /** Below: the flame runs back; above: it does not. */
  readonly against_flashback: Against;
  /** Above: a bare end does not hold the flame; a flare or a step in the refractory does, far beyond. */
  readonly against_blow_off: Against;
  /** The tube's velocity beside what such burners run at with a flare or a step. */
  readonly against_practical: Against;
  /** Bore beside the distance a flame cannot pass. */
  readonly against_quench: Against;
}

const place = (value: number, { low, high }: Spread): Against =>
  value < low ? 'below' : value > high ? 'above' : 'within';

/**
 * Where a premixed propane flame stands at a tube's end: the gradient at the wall, g = 8·V/D laminar and f·Re·V/(8·D) in
 * general (f Darcy, smooth), beside the bands of flashback and blow-off. A band, not a verdict.
 * Tube 0.5…200 mm, velocity 0.1…100 m/s. Source: boundary-gradient criterion of Lewis and von Elbe; its numbers from memory.
 * @throws AskError `out-of-range`.
 */
export function flameHolding({
  tube_velocity_m_s,
  tube_bore_m,
  density_kg_m3,
  viscosity_Pa_s,
}: {
  readonly tube_velocity_m_s: number;
  readonly tube_bore_m: number;
  /** Of the unburned mixture. */
  readonly density_kg_m3: number;
  readonly viscosity_Pa_s: number;
}): FlameHolding {
  within({ tube_velocity_m_s }, { low: 0.1, high: 100, example: '10 m/s' });
  within({ tube_bore_m }, { low: 5e-4, high: 0.2, example: '25 mm' });
  const reynolds = (density_kg_m3 * tube_velocity_m_s * tube_bore_m) / viscosity_Pa_s;
  const friction_factor = frictionFactor({ reynolds, roughness: 0 });
  const gradient_per_s = (friction_factor * reynolds * tube_velocity_m_s) / (8 * tube_bore_m);
  const flashback_band_per_s = reynolds < TURBULENT ? FLAME.flashback_per_s : FLAME.turbulent_flashback_per_s;
  return {
    gradient_per_s,
    reynolds,
    flashback_band_per_s,
    against_flashback: place(gradient_per_s, flashback_band_per_s),
    against_blow_off: place(gradient_per_s, FLAME.blow_off_per_s),
    against_practical: place(tube_velocity_m_s, FLAME.practical_m_s),
    against_quench: place(tube_bore_m, FLAME.quench_m),
    steps: (): readonly Step[] => [
      {
        formula: 'at the wall, per second: gradient = friction factor × Reynolds × tube velocity ÷ (8 × tube bore)',
        inputs: { friction_factor, tube_velocity_m_s, tube_bore_m, reynolds_count: reynolds },
        gives: { gradient_count: gradient_per_s },
        source: 'lewis-von-elbe',
      },
    ],
  };
}
