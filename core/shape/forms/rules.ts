import type { SizingRule } from '../rules.ts';

const mm = 1e-3;
const rule = (says: string, [low, typical, high]: readonly [number, number, number], unit: number): SizingRule =>
  Object.freeze({
    says,
    low: low * unit,
    typical: typical * unit,
    high: high * unit,
    source: 'common-practice',
    standing: 'common practice',
  });

/** What builders of mesh forms do where nothing is computed. SI: m, or a plain count. */
export const formRules = Object.freeze({
  overlap_m: rule('mesh lapped at a seam', [25, 40, 60], mm),
  clip_spacing_m: rule('clips between the two shells, apart', [75, 120, 180], mm),
  radial_wires: rule('radial wires in the lid', [6, 8, 12], 1),
  rings: rule('wire rings in the lid', [1, 2, 3], 1),
  wire_m: rule('annealed steel wire', [1, 1.3, 1.6], mm),
  mesh_m: rule('mesh, thickness as it bends', [0.7, 1, 2], mm),
});

/** Widths in which mesh is sold: 24, 36 and 48 in. Common practice, no source. */
export const rollWidths_m = Object.freeze([24, 36, 48].map((inches) => inches * 0.0254));
