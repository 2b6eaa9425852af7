import type { UnitSystem } from '../../core/quantity/figure.ts';
import { formatSi } from '../../core/quantity/format.ts';
import { sizingRules } from '../../core/shape/rules.ts';

/** That a furnace is fired with what it was not sized for, and what to ask; nothing where it is. */
export function notSizedFor(
  sized: 'gas' | 'charcoal' | undefined,
  burnt: { readonly kind: 'gas' | 'liquid' | 'solid'; readonly name: string },
  units: UnitSystem,
): string | undefined {
  const wants = burnt.kind === 'solid' ? 'charcoal' : 'gas';
  if (sized === undefined || sized === wants) return undefined;
  const { low, high } = wants === 'gas' ? sizingRules.gap_gas_m : sizingRules.gap_charcoal_m;
  const room = `${formatSi(low, 'm', units)} to ${formatSi(high, 'm', units)}`;
  return `This furnace was sized for ${sized}: ${burnt.name} wants ${room} round the crucible and an air hole of its own. Ask size again with fuel=${wants}.`;
}
