import type { Fact } from '../hazard/facts.ts';
import { finder } from '../materials/catalogue.ts';
import type { Datum } from '../materials/material.ts';
import type { End, Spread } from '../materials/spread.ts';
import type { SourceId } from '../sources/source.ts';
import { touchBandData, touchSurfaceData } from './data/touch.ts';
import { finishes, type TouchSurface } from './finish.ts';

/** Below `low` no burn is expected, above `high` one is. */
export interface BurnThreshold {
  readonly time_s: number;
  readonly T_K: Datum;
}

export interface TouchSurfaceData {
  readonly id: TouchSurface;
  readonly name: string;
  readonly aliases: readonly string[];
  /** From memory; a named finish has a better one. */
  readonly emissivity: Spread;
  /** W √s/(m² K), of a thick piece; from memory. */
  readonly effusivity: number;
  /** Times rising, temperatures falling. */
  readonly thresholds: readonly BurnThreshold[];
}

export interface TouchBand {
  readonly id: 'hold' | 'warm' | 'seconds' | 'recoil' | 'burns';
  /** Lower edge on bare or painted steel. */
  readonly above_K: number;
  readonly says: string;
  /** A surface is in this band when it may be touched for at least this long, and not long enough for a better one. */
  readonly allowed_s: number;
}

export const touchSurfaces: readonly TouchSurfaceData[] = Object.freeze([...touchSurfaceData]);
/** From harmless to worst. The edges are levels for a chart; `bandOf` knows the surface. */
export const touchBands: readonly TouchBand[] = Object.freeze([...touchBandData]);

/** What a person says a surface is, with what a hand and an infrared thermometer make of it. */
export interface Touched {
  readonly id: string;
  readonly name: string;
  readonly aliases: readonly string[];
  readonly surface: TouchSurface;
  readonly emissivity: Spread;
  /** Where the emissivity is from. */
  readonly emissivity_source: SourceId;
  readonly hazards: readonly Fact[];
}

/** Finishes come first: "painted" is the finish, with a better emissivity than painted metal at large. */
const touched: readonly Touched[] = [
  ...finishes.map(({ touch, ...finish }) => ({
    ...finish,
    surface: touch,
    emissivity_source: finish.emissivity.source,
  })),
  ...touchSurfaces.map((surface) => ({
    ...surface,
    surface: surface.id,
    emissivity_source: 'from-memory',
    hazards: [],
  })),
];

/** A finish or a kind of surface. @throws AskError `unknown-name`, with the nearest name. */
export const findTouched = finder('surface', touched);

export const touchSurfaceOf = (id: TouchSurface): TouchSurfaceData =>
  touchSurfaces.find((surface) => surface.id === id)!;

/** Longest contact that is spoken of: a working day. */
export const LONGEST_s = 8 * 3600;

/**
 * How long a hand may stay before a burn is to be expected, s: 0 above the half-second threshold, eight hours below
 * the last. Between thresholds straight in temperature over the logarithm of time. Adverse end unless asked otherwise.
 * After ISO 13732-1, from memory.
 */
export function contactAllowed_s(surface_K: number, surface: TouchSurface, end: End = 'low'): number {
  const { thresholds } = touchSurfaceOf(surface);
  const first = thresholds[0]!;
  if (!(surface_K < first.T_K[end])) return 0;
  for (let i = 1; i < thresholds.length; i++) {
    const [shorter, longer] = [thresholds[i - 1]!, thresholds[i]!];
    if (surface_K < longer.T_K[end]) continue;
    const share = (shorter.T_K[end] - surface_K) / (shorter.T_K[end] - longer.T_K[end]);
    return shorter.time_s * (longer.time_s / shorter.time_s) ** share;
  }
  return LONGEST_s;
}

/**
 * Hottest a surface may be for a contact of this length, K: the same line read the other way. Held at the ends, so a
 * touch shorter than half a second is judged as half a second.
 */
export function burnThreshold_K(time_s: number, surface: TouchSurface, end: End = 'low'): number {
  const { thresholds } = touchSurfaceOf(surface);
  const after = thresholds.findIndex((one) => one.time_s >= time_s);
  if (after === 0) return thresholds[0]!.T_K[end];
  const longer = thresholds[after] ?? thresholds[thresholds.length - 1]!;
  const shorter = thresholds[after === -1 ? thresholds.length - 1 : after - 1]!;
  if (longer === shorter) return longer.T_K[end];
  const share = Math.log(time_s / shorter.time_s) / Math.log(longer.time_s / shorter.time_s);
  return shorter.T_K[end] + share * (longer.T_K[end] - shorter.T_K[end]);
}

/** What a temperature means for a hand on this surface, at the adverse end. */
export function bandOf(surface_K: number, surface: TouchSurface): TouchBand {
  const allowed_s = contactAllowed_s(surface_K, surface);
  // NaN is not safe to touch.
  return touchBands.find((band) => allowed_s >= band.allowed_s) ?? touchBands[touchBands.length - 1]!;
}
