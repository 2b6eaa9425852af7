import { openBoreFlux } from '../opening.ts';
import { STEFAN_BOLTZMANN } from '../outside.ts';
import type { Drive } from '../wall-run.ts';

/** Heat into the hot face, W per m² of it, as a function of its own temperature. */
type Flux = Extract<Drive, { kind: 'flux' }>;

const flux = (into_W_m2: Flux['into_W_m2']): Flux => ({ kind: 'flux', into_W_m2 });

/** So much heat, however hot the face gets: power over the area of the hot face. */
export const netPower = (power_W_m2: number): Flux => flux(() => power_W_m2);

/** Hot gas that touches the face and radiates to it: q = h (Tg − Tw) + e σ (Tg⁴ − Tw⁴). Derived. */
export const gas = ({
  gas_K,
  film_W_m2K,
  emissivity,
}: {
  gas_K: number;
  film_W_m2K: number;
  emissivity: number;
}): Flux =>
  flux((face_K) => film_W_m2K * (gas_K - face_K) + emissivity * STEFAN_BOLTZMANN * (gas_K ** 4 - face_K ** 4));

/** Nothing in, nothing out: every opening shut, lid and floor as warm as the wall. */
export const closedBore = (): Flux => flux(() => 0);

/** Through lid and floor to outside; the resistance is that seen by a m² of wall. What they store is left out. */
export const lidOn = ({ resistance_m2K_W, outside_K }: { resistance_m2K_W: number; outside_K: number }): Flux =>
  flux((face_K) => (outside_K - face_K) / resistance_m2K_W);

/** Out of the open mouth: see `openBoreFlux`. */
export const openBore = (mouth: Omit<Parameters<typeof openBoreFlux>[0], 'face_K'>): Flux =>
  flux((face_K) => -openBoreFlux({ ...mouth, face_K }));
