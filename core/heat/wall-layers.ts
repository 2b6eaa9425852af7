import { AskError } from '../ask-error.ts';
import { at } from '../materials/curve.ts';
import type { Curve, Datum, Material } from '../materials/material.ts';
import { exactly, type Spread } from '../materials/spread.ts';
import { looseFillAt } from './granular.ts';
import type { WallLayer } from './wall-run.ts';

/** One layer of a wall as it was asked for. `water` is a share of its dry mass; left out, the catalogue's air-dry value. */
export interface AskedLayer {
  readonly material: Material;
  readonly thickness_m: number;
  readonly water?: number;
}

/** Where a property lies between its low line (−1), its typical one (0) and its high one (1). */
export const grade: Spread = Object.freeze({ low: -1, typical: 0, high: 1 });

export interface LayerDraw {
  /** −1 … 1, see `grade`. */
  readonly conductivity: number;
  readonly density_kg_m3: number;
  readonly water: number;
}

/** A layer with its spreads, ready to be drawn a thousand times. */
export interface LayerModel {
  readonly material: Material;
  readonly thickness_m: number;
  readonly density_kg_m3: Spread;
  readonly water: Spread;
  /** Of its conductivity table: above it the line is carried on, and the answer has no range. */
  readonly known_to_K: number;
  readonly draw: (draw: LayerDraw) => WallLayer;
}

/** Hotter than any wall this is asked about: the end of the line that is carried on beyond a table. */
const beyond_K = 2200;
const stride_K = 150;

/**
 * A catalogue entry as a layer of the transient wall. Conductivity is read as local k(T), mean curves too: a mean
 * over a slab equals the local value at its mean temperature where k is linear. Where it bends, the blanket between
 * 1000 and 100 °C, 7 % too much heat is let through: the adverse side, and inside that table's 20 %. Loose fill stands as it settles when tamped. Beyond its table the line is
 * carried on, for loose fill as radiation between its grains grows; `known_to_K` says from where.
 * @throws AskError `out-of-range` for no thickness, `unfit` for a material without conductivity, heat capacity or density.
 */
export function layerModel({ material, thickness_m, water }: AskedLayer): LayerModel {
  const { name, properties, conductivity_W_mK: k, heat_capacity_J_kgK: c } = material;
  const density = properties.density_kg_m3;
  if (!(thickness_m > 0)) throw noThickness(name, thickness_m);
  if (!k || !c || !density) throw noData(material);
  const last_K = k.T_K.at(-1) ?? 0;
  const beyond = Array.from(
    { length: Math.ceil((beyond_K - last_K) / stride_K) },
    (_, row) => last_K + stride_K * (row + 1),
  );
  const carried = beyond.map((T) => (material.kind === 'aggregate' ? looseFillAt(k, T) : at(k, T)).value);
  const T_K = [...k.T_K, ...beyond];
  const typical = [...k.typical, ...carried];
  const low = withEnd(k, 'low', carried);
  const high = withEnd(k, 'high', carried);
  const heat_capacity = { T_K: c.T_K, c_J_kgK: c.typical };
  return {
    material,
    thickness_m,
    density_kg_m3: settled(density, properties.settling),
    water: water === undefined ? (properties.moisture ?? exactly(0)) : exactly(water),
    known_to_K: last_K,
    draw: ({ conductivity, density_kg_m3, water: drawn }) => ({
      thickness_m,
      density_kg_m3,
      heat_capacity,
      water: drawn,
      conductivity: {
        T_K,
        k_W_mK: typical.map((value, row) =>
          conductivity < 0 ? value + conductivity * (value - low[row]!) : value + conductivity * (high[row]! - value),
        ),
      },
    }),
  };
}

/** Carried on at the share of the typical line that the last row has. */
function withEnd(k: Curve, end: 'low' | 'high', carried: readonly number[]): readonly number[] {
  const share = (k[end].at(-1) ?? 1) / (k.typical.at(-1) ?? 1);
  return [...k[end], ...carried.map((value) => value * share)];
}

/** Loose fill loses volume when it is tamped round a wall: density over what is left of it. */
function settled(loose: Datum, settling: Datum | undefined): Spread {
  const left = 1 - (settling?.typical ?? 0);
  return { low: loose.low / left, typical: loose.typical / left, high: loose.high / left };
}

const noThickness = (name: string, thickness_m: number) =>
  new AskError({
    code: 'out-of-range',
    what: `the ${name} is ${Number((thickness_m * 1000).toPrecision(3))} mm thick: no layer at all`,
    expected: 'a thickness above zero for each layer, or the layer left out',
    example: 'wall 1 in castable; 2.5 in perlite',
    option: 'layers',
  });

const noData = ({ name, conductivity_W_mK, heat_capacity_J_kgK, properties, hotFace }: Material) => {
  const lacking = [
    conductivity_W_mK ? undefined : 'conductivity',
    heat_capacity_J_kgK ? undefined : 'heat capacity',
    properties.density_kg_m3 ? undefined : 'density as a layer',
  ].filter((one) => one !== undefined);
  const limit = properties.service_limit_K?.low;
  const holds = limit === undefined ? '' : ` It holds to ${Math.round(limit - 273.15)} °C.`;
  return new AskError({
    code: 'unfit',
    what: `the catalogue has no ${lacking.join(' and no ')} of ${name}, so no wall of it can be computed.${holds}${hotFace ? ` ${hotFace.why}` : ''}`,
    expected: 'a lining, castable, brick or insulation of the catalogue',
    example: 'wall 1.5 in clay-sand lining; 2 in vermiculite',
    option: 'layers',
  });
};
