import * as table from './gas-table.ts';
import { REFERENCE_K } from './nasa.ts';

// Constants of this file: read in innermost loops.
const { AT, COUNT, fillReduced } = table;

export interface Start {
  /** Moles of C, H, O, N, Ar. */
  readonly target: Float64Array;
  /** Receives moles of each product. */
  readonly amounts: Float64Array;
  readonly reduced: table.Reduced;
  /** ln of pressure over that of the data. */
  readonly logPressure: number;
  /** Heat capacity of the ash over R, mol. */
  readonly ash: number;
  /** Enthalpy over R, mol K; unused where the temperature is given. */
  readonly heat_K: number;
  readonly T_K: number | undefined;
}

const GUESS_K = 2200;
/** From here dissociation takes up heat: the estimate grows more slowly. */
const DISSOCIATES_K = 2250;
const SMALLEST = 1e-25;

/**
 * Where Newton starts: complete combustion, its temperature, then the one oxygen pressure at which carbon, hydrogen and
 * oxygen balance. Returns the temperature.
 */
export function startFrom(start: Start): number {
  const { reduced, T_K } = start;
  const gas = completeCombustion(start);
  let T = T_K ?? GUESS_K;
  fillReduced(reduced, T);
  if (T_K === undefined) {
    for (let pass = 0; pass < 2; pass++) {
      T = Math.min(4000, Math.max(250, T + heatMissing_K(start, T)));
      fillReduced(reduced, T);
    }
    if (T > DISSOCIATES_K) {
      T = DISSOCIATES_K + (T - DISSOCIATES_K) * 0.45;
      fillReduced(reduced, T);
    }
  }
  dissociate(start, gas);
  return T;
}

/** CO2, H2O and oxygen left over; where it is short, shared between both fuels' products; below CO, soot. Gas moles. */
function completeCombustion({ target, amounts }: Start): number {
  const [C, H, O, N, Ar] = target as unknown as [number, number, number, number, number];
  amounts.fill(0);
  const carbonGas = Math.min(C, O);
  const need = carbonGas + H / 2;
  const burned = need > 0 ? Math.min(1, (O - carbonGas) / need) : 0;
  amounts[AT.CO2] = carbonGas * burned;
  amounts[AT.CO] = carbonGas - carbonGas * burned;
  amounts[AT.H2O] = (H / 2) * burned;
  amounts[AT.H2] = (H / 2) * (1 - burned);
  amounts[AT.O2] = Math.max(0, (O - carbonGas - need * burned) / 2);
  amounts[AT['C(gr)']] = C - carbonGas;
  amounts[AT.N2] = N / 2;
  amounts[AT.Ar] = Ar;
  return carbonGas + H / 2 + amounts[AT.O2]! + N / 2 + Ar;
}

/** Newton's step in temperature for the enthalpy of what `amounts` holds. */
function heatMissing_K({ amounts, reduced, ash, heat_K }: Start, T: number): number {
  let heat = ash * (T - REFERENCE_K);
  let capacity = ash;
  for (let s = 0; s < COUNT; s++) {
    heat += amounts[s]! * reduced.h[s]! * T;
    capacity += amounts[s]! * reduced.cp[s]!;
  }
  return (heat_K - heat) / capacity;
}

/** Partial pressures that agree with one pressure of oxygen, found so that the oxygen atoms balance. */
function dissociate({ target, amounts, reduced: { g }, logPressure }: Start, gas: number): void {
  const [C, H, O, N] = target as unknown as [number, number, number, number];
  const perMole = Math.exp(logPressure) / gas;
  const halfO2 = g[AT.O2]! / 2;
  const toCO2 = Math.exp(g[AT.CO]! + halfO2 - g[AT.CO2]!);
  const toH2O = Math.exp(g[AT.H2]! + halfO2 - g[AT.H2O]!);
  const root = rootOfOxygen();

  const carbonGas = Math.min(C, O);
  const CO = carbonGas / (1 + toCO2 * root);
  const H2 = H / 2 / (1 + toH2O * root);
  const pH2 = H2 * perMole;
  amounts[AT.CO] = CO;
  amounts[AT.CO2] = carbonGas - CO;
  amounts[AT.H2] = H2;
  amounts[AT.H2O] = H / 2 - H2;
  amounts[AT.O2] = (root * root) / perMole;
  amounts[AT.O] = (root * Math.exp(halfO2 - g[AT.O]!)) / perMole;
  amounts[AT.H] = (Math.sqrt(pH2) * Math.exp(g[AT.H2]! / 2 - g[AT.H]!)) / perMole;
  amounts[AT.OH] = (Math.sqrt(pH2) * root * Math.exp(g[AT.H2]! / 2 + halfO2 - g[AT.OH]!)) / perMole;
  amounts[AT.NO] = (Math.sqrt((N / 2) * perMole) * root * Math.exp(g[AT.N2]! / 2 + halfO2 - g[AT.NO]!)) / perMole;
  for (let s = 0; s < COUNT; s++) {
    if (s !== AT['C(gr)']) amounts[s] = Math.min(Math.max(amounts[s]!, SMALLEST), 2);
  }

  /** √pO2, atm^½: what holds more oxygen grows with it, so Newton in its logarithm inside a bracket. */
  function rootOfOxygen(): number {
    const carbon = Math.min(C, O);
    if (C >= O) return O * perMole * Math.exp(g[AT.CO]! - g[AT['C(gr)']]! - halfO2);
    let low = -120;
    let high = 4;
    const left = amounts[AT.O2]!;
    const burned = carbon > 0 ? amounts[AT.CO2]! / carbon : H > 0 ? amounts[AT.H2O]! / (H / 2) : 0;
    const rich = burned / Math.max(1e-3, 1 - burned) / Math.max(toCO2, 1e-30);
    let u = left > 1e-6 ? Math.log(left * perMole) / 2 : Math.log(Math.max(rich, 1e-50));
    for (let pass = 0; pass < 60; pass++) {
      u = Math.min(Math.max(u, low), high);
      const y = Math.exp(u);
      const a = toCO2 * y;
      const b = toH2O * y;
      const asCO2 = a / (1 + a);
      const asH2O = b / (1 + b);
      const O2 = (y * y) / perMole;
      const miss = carbon * (1 + asCO2) + (H / 2) * asH2O + 2 * O2 - O;
      if (Math.abs(miss) < 1e-4 * O) return y;
      if (miss > 0) high = u;
      else low = u;
      const slope = (carbon * asCO2) / (1 + a) + ((H / 2) * asH2O) / (1 + b) + 4 * O2;
      const next = u - miss / slope;
      u = next > low && next < high ? next : (low + high) / 2;
    }
    return Math.exp(u);
  }
}
