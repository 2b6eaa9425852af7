import type { Step } from '../../step.ts';
import { degrees } from '../tuyere.ts';
import type { Forms, FormsInput, Shells } from './forms.ts';
import { HOOK_m } from './lid.ts';
import { type Cone, leanOf, sectorOf } from './sector.ts';

interface Worked {
  readonly input: FormsInput;
  readonly shells: Shells;
  readonly thickness_m: number;
  readonly forms: Omit<Forms, 'steps'>;
}

/** How the patterns came about, for `why`. */
export function formSteps({ input, shells, thickness_m, forms }: Worked): readonly Step[] {
  const { furnace, overlap_m, clip_spacing_m } = input;
  return [
    ...shellSteps('inner form, inside the bore', shells.inner, { thickness_m, overlap_m }),
    ...shellSteps('outer form, outside the lining', shells.outer, { thickness_m, overlap_m }),
    {
      formula: 'clips = rows up the wall × clips round its middle, each rounded up; a clip is the wall and two hooks',
      inputs: { clip_spacing_m, height_m: shells.inner.height_m, wall_m: furnace.wall_m, hook_m: HOOK_m },
      gives: { clips_count: forms.clips_count },
      source: 'common-practice',
    },
    {
      formula: `each count × its cut length: wire length = ${forms.wires.map(wireName).join(' + ')}`,
      inputs: Object.fromEntries(
        forms.wires.map((wire, at) => [`${wireName(wire, at).replaceAll(' ', '_')}_m`, wire.count * wire.cut_m]),
      ),
      gives: { wire_length_m: forms.wire_length_m, wire_mass_kg: forms.wire_mass_kg },
      source: 'common-practice',
    },
    {
      formula: 'waste = 1 − mesh in the pieces ÷ (roll length × roll width)',
      inputs: { roll_length_m: forms.mesh.length_m, roll_width_m: forms.mesh.width_m },
      gives: { waste: forms.mesh.waste },
      source: 'derived',
    },
  ];
}

function shellSteps(
  name: string,
  cone: Cone,
  { thickness_m, overlap_m }: { thickness_m: number; overlap_m: number },
): Step[] {
  const { slant_m, inner_radius_m, outer_radius_m, angle_rad } = sectorOf(cone);
  if (leanOf(cone) === 0) {
    const once_round_m = 2 * Math.PI * cone.bottom_radius_m;
    return [
      {
        formula: `${name}: once round = π × (inside diameter + thickness); cut = once round + lap`,
        inputs: { inside_diameter_m: 2 * cone.bottom_radius_m - thickness_m, thickness_m, lap_m: overlap_m },
        gives: { once_round_m, cut_m: once_round_m + overlap_m },
        source: 'derived',
      },
    ];
  }
  return [
    {
      formula: `${name}: slant = √(height² + (top radius − bottom radius)²); outer sheet radius = top radius × slant ÷ (top radius − bottom radius); inner sheet radius = bottom radius × slant ÷ (top radius − bottom radius)`,
      inputs: { top_radius_m: cone.top_radius_m, bottom_radius_m: cone.bottom_radius_m, height_m: cone.height_m },
      gives: { slant_m, outer_sheet_radius_m: outer_radius_m, inner_sheet_radius_m: inner_radius_m },
      source: 'derived',
    },
    {
      formula: `${name}: angle = 360 degrees × (R − r) ÷ slant; the lap is a length along the edge`,
      inputs: { slant_m, lap_m: overlap_m },
      gives: { angle_degrees_count: degrees(angle_rad) },
      source: 'derived',
    },
  ];
}

const wireName = ({ name }: { readonly name: string }, at: number): string => `${name} ${at + 1}`;
