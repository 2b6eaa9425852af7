import { findFuel } from '../../core/fire/fuel/fuel.ts';
import { asFired } from '../../core/fire/fuel/fuel-as-fired.ts';
import { mixture, type Reactants } from '../../core/fire/gas/mixture.ts';

const mixtures: readonly Reactants[] = ['methane', 'propane', 'wood', 'diesel'].flatMap((name) =>
  [0.6, 0.8, 0.9, 1, 1.05, 1.2].flatMap((equivalence_ratio) =>
    [298.15, 600].map((air_K) =>
      mixture({ fuel: asFired({ fuel: findFuel(name) }), ratio: { equivalence_ratio }, air_K }),
    ),
  ),
);
/** The mixtures without their ash, which a gas solver knows nothing of. */
export const gases = mixtures.map((each) => ({ ...each, ash_kg: 0 }));
