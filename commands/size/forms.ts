import type { UnitSystem } from '../../core/quantity/figure.ts';
import { type Forms, formsFor } from '../../core/shape/forms/forms.ts';
import { formRules } from '../../core/shape/forms/rules.ts';
import type { Sized } from '../../core/shape/size.ts';
import type { SharedOptions } from './options.ts';

/** Mesh forms for the wall, unless card ones are wanted or the furnace does not fit anyway. */
export function formsOf({ furnace, fit }: Sized, { form, roll }: SharedOptions, units: UnitSystem): Forms | undefined {
  if (form === 'card' || !fit.fits) return undefined;
  const { overlap_m, clip_spacing_m, radial_wires, rings, wire_m } = formRules;
  return formsFor({
    furnace,
    units,
    overlap_m: overlap_m.typical,
    clip_spacing_m: clip_spacing_m.typical,
    radial_wires: radial_wires.typical,
    rings: rings.typical,
    wire_m: wire_m.typical,
    ...(roll === undefined ? {} : { mesh: { roll_m: roll.si } }),
  });
}
