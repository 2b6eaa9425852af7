import { findMaterial } from '../../core/materials/catalogue.ts';
import { typedNumber } from '../melt/question.ts';
import type { SizeParts } from './parts.ts';
import { recipeFor } from './question.ts';

/** What `mix`, `wall` and `melt` take by for=last, as it would be typed. */
export function handsOver({
  asked,
  sized,
  weighed,
  materials,
  hazards,
  options,
  units,
}: SizeParts): Readonly<Record<string, string>> {
  const { furnace } = sized;
  const { wall_m3, floor_m3, lid_m3 } = weighed.volumes;
  const { lining } = materials;
  const metal = asked === 'melt' ? materials.metal : options.metal;
  const layer = (length_m: number, name: string) => `${typedLength(length_m, units)} ${name}`;
  return {
    amount: typedVolume(wall_m3 + floor_m3 + lid_m3, units),
    recipe: recipeFor(lining),
    layers: wallText({ sized, materials, units }),
    bore: typedLength(2 * furnace.bore.bottom_radius_m, units),
    height: typedLength(furnace.bore.height_m, units),
    shell: `${Number((furnace.vessel.wall_m * 1000).toFixed(2))} mm`,
    finish: hazards.includes('galvanised') ? 'galvanised' : 'bare',
    floor: [
      layer(furnace.floor_m, lining),
      ...(furnace.underfloor_m > 0
        ? [layer(furnace.underfloor_m, findMaterial(materials.bricks).id.replaceAll('-', ' '))]
        : []),
    ].join('; '),
    lid: layer(furnace.lid.thickness_m, lining),
    vent: typedLength(2 * furnace.lid.vent_radius_m, units),
    crucible: `${typedLength(2 * furnace.crucible.outside_radius_m, units)} x ${typedLength(furnace.crucible.height_m, units)}`,
    fuel: sized.question.fuel === 'gas' ? 'propane' : 'lump charcoal',
    sized: sized.question.fuel,
    rate: typedPower(sized.rate_W, units),
    tuyere: typedLength(2 * furnace.tuyere.bore_radius_m, units),
    ...(metal === undefined ? {} : { metal }),
  };
}

/** The wall as layers, hot side first. The thinnest place counts: there the shell gets hottest. */
export function wallText({ sized, materials, units }: Pick<SizeParts, 'sized' | 'materials' | 'units'>): string {
  const { furnace, fit } = sized;
  const behind_m = Math.min(fit.insulation.bottom_m, fit.insulation.top_m);
  return [
    `${typedLength(furnace.wall_m, units)} ${materials.lining}`,
    ...(behind_m > 0 ? [`${typedLength(behind_m, units)} ${materials.insulation.id.replaceAll('-', ' ')}`] : []),
  ].join('; ');
}

/**
 * Finer than a tape, so that an answer in the other units is the same answer. Never three decimals: `40.748` may be
 * read as thousands.
 */
const typedLength = (length_m: number, units: SizeParts['units']): string =>
  units === 'US' ? `${decimals(length_m / 0.0254, 4)} in` : `${decimals(length_m * 1000, 2)} mm`;
const btu_h_W = 0.29307107017;
const typedPower = (power_W: number, units: SizeParts['units']): string =>
  units === 'US' ? `${typedNumber(power_W / btu_h_W)} Btu/h` : `${typedNumber(power_W / 1000)} kW`;
const decimals = (value: number, most: number): string =>
  String(Number(value.toFixed(most))).replace(/\.\d{3}$/, '$&0');

const cubicFoot_m3 = 0.028316846592;
const typedVolume = (volume_m3: number, units: SizeParts['units']): string =>
  units === 'US' ? `${(volume_m3 / cubicFoot_m3).toPrecision(6)} cu ft` : `${volume_m3.toPrecision(6)} m3`;
