import { describe, expect, it } from 'vitest';
import { holeOf, type Tube } from '../../core/shape/forms/hole.ts';
import { areaWithin_m2, boxOf } from '../../core/shape/forms/outline.ts';
import { formRules } from '../../core/shape/forms/rules.ts';
import { type Cone, flatten, sectorOf, slant_m } from '../../core/shape/forms/sector.ts';
import { librariesOf, stored } from '../reference/stored.ts';
import { outside } from './outside.ts';

type Inputs = Cone & { readonly quantity: string } & (
    | { readonly kind: 'flat' }
    | { readonly kind: 'swing' }
    | ({ readonly kind: 'hole' } & Tube)
  );

const reference = stored<Inputs>('forms');
const sources: Readonly<Record<Inputs['kind'], string>> = {
  flat: 'facets of the shell laid flat side by side',
  swing: 'arcs and slant solved for numerically',
  hole: 'rays along the tube followed to the shell',
};
const units: Readonly<Record<string, string>> = { area: 'm²', angle: 'rad' };

describe('flat patterns, beside the same shells unrolled and the same tubes cut numerically', () => {
  it.each(reference.cases)('$id', ({ id, inputs, expected, tolerance, why }) => {
    outside({
      subject: id.slice(0, id.lastIndexOf(', ')),
      quantity: inputs.quantity,
      ours: oursOf(inputs),
      theirs: expected,
      unit: units[inputs.quantity] ?? 'm',
      source: `${librariesOf(reference)}, ${sources[inputs.kind]}`,
      tolerance,
      reason: why,
    });
  });
});

function oursOf(inputs: Inputs): number {
  const { kind, quantity } = inputs;
  const answers = kind === 'flat' ? flat(inputs) : kind === 'swing' ? swing(inputs) : hole(inputs, inputs);
  const ours = answers[quantity];
  if (ours === undefined) throw new Error(`no answer of ours for ${kind}: ${quantity}`);
  return ours;
}

function flat(cone: Cone): Readonly<Record<string, number>> {
  const along_m = slant_m(cone);
  const low = flatten(cone, { turn_rad: Math.PI, along_m: 0 });
  const high = flatten(cone, { turn_rad: Math.PI, along_m });
  const { inner_radius_m, outer_radius_m, angle_rad } = sectorOf(cone);
  const straight = angle_rad === 0;
  return {
    'across the lower edge': 2 * low[0],
    'across the upper edge': 2 * high[0],
    'rise of the lower edge': -low[1],
    'rise of the upper edge': along_m - high[1],
    area: straight ? 2 * low[0] * along_m : (angle_rad / 2) * (outer_radius_m ** 2 - inner_radius_m ** 2),
  };
}

function swing(cone: Cone): Readonly<Record<string, number>> {
  const { inner_radius_m, outer_radius_m, angle_rad } = sectorOf(cone);
  return { 'inner sheet radius': inner_radius_m, 'outer sheet radius': outer_radius_m, angle: angle_rad };
}

function hole(cone: Cone, tube: Tube): Readonly<Record<string, number>> {
  const outline = holeOf(cone, tube).edge.map(({ turn_rad, up_m }) => [cone.bottom_radius_m * turn_rad, up_m] as const);
  const { left, right, bottom, top } = boxOf(outline);
  return { 'width round the shell': right - left, lowest: bottom, highest: top, area: areaWithin_m2(outline) };
}

describe('what builders of mesh forms do', () => {
  it.each([
    ['radial wires', formRules.radial_wires.typical, 8],
    ['wire rings', formRules.rings.typical, 2],
  ])('a lid has %s', (quantity, ours, theirs) => {
    outside({
      subject: 'lid of a 14 to 16 in pot',
      quantity,
      ours,
      theirs,
      unit: '',
      source: 'common practice, no source',
      tolerance: 0,
      reason: 'a count',
    });
  });

  it('is marked as practice, with its range in order', () => {
    for (const { low, typical, high, standing } of Object.values(formRules)) {
      expect(standing).toBe('common practice');
      expect(low).toBeLessThan(typical);
      expect(typical).toBeLessThan(high);
    }
  });
});
