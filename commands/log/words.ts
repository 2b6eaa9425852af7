import type { Burned } from '../../core/build/log-burn.ts';
import { shortName } from '../../core/heat/wall-question.ts';
import { findMaterial } from '../../core/materials/catalogue.ts';
import type { Material } from '../../core/materials/material.ts';
import { efficiencies } from '../../core/melt/fuel-efficiency.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { formatSi } from '../../core/quantity/format.ts';
import type { LogEntry } from '../memory-weeks.ts';
import { bucketIn, burnIn, type LoggedBurn, shellIn, weighingIn } from './entry.ts';

export const percent = (share: number): string => `${Number((share * 100).toPrecision(2))} %`;
export const toldOf = ({ told }: Pick<Burned, 'told'>): string => `${percent(told.low)} to ${percent(told.high)}`;

const { low, high } = efficiencies.gas_crucible;
/** What is known of others, beside one's own. */
export const othersWords = `Told of gas-fired crucible furnaces: ${percent(low)} to ${percent(high)} (reviews, as remembered); of one hobby melt from cold ${percent(efficiencies.single.low)} to ${percent(efficiencies.single.high)}, of melt after melt ${percent(efficiencies.repeated.low)} to ${percent(efficiencies.repeated.high)} (from memory).`;

/** `3.2 kg lump charcoal for 2 kg aluminium`. */
export function burnWords({ fuel, fuel_kg, melted, melts }: LoggedBurn, units: UnitSystem): string {
  const kg = (mass: number) => formatSi(mass, 'kg', units);
  const metal = melted
    ? ` for ${kg(melted.mass_kg)} ${melted.metal.name}${melts > 1 ? ` in ${melts} melts` : ''}`
    : ', no metal melted';
  return `${kg(fuel_kg)} ${fuel.name}${metal}`;
}

/** `rammed clay and sand`, `expanded vermiculite, loose`. */
export function filledWords({ name }: Pick<Material, 'name'>, how: string): string {
  const short = shortName(name);
  return short.includes(how) ? short : `${short}, ${how}`;
}

/** One entry in a few words, for lists; of a kind or a fuel that is not known here, its kind. */
export function entryWords(entry: LogEntry, units: UnitSystem): string {
  const burn = burnIn(entry);
  if (burn) {
    const time = burn.time_s === undefined ? '' : `, ${formatSi(burn.time_s, 's', units)}`;
    return `${burnWords(burn, units)}${time}`;
  }
  const bucket = bucketIn(entry);
  if (bucket)
    return `${filledWords(findMaterial(bucket.material), bucket.how)}: ${formatSi(bucket.dry_density_kg_m3, 'kg/m3', units)}`;
  const shell = shellIn(entry);
  if (shell)
    return `shell ${formatSi(shell.shell_K, 'K', units)}, ${formatSi(shell.after_s, 's', units)} after lighting`;
  const weighing_kg = weighingIn(entry);
  if (weighing_kg !== undefined) return `lining ${formatSi(weighing_kg, 'kg', units)}`;
  if (entry.kind === 'drying') return 'dry, by the scale';
  return entry.kind;
}
