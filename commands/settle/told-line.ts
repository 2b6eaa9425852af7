import type { OptionMeta } from '../options.ts';
import { told } from '../size/fields.ts';

const usUnit = /\d\s*(?:°\s?f\b|btu|cfm|psi|inwc|degrees? f\b)/i;
const metricUnit = /\d\s*(?:°\s?c\b|kw\b|m3\/h|kpa|degrees? c\b)/i;

/** A whole question as text: what is measured in it has its say in which units lead the answer. */
export function toldLine(meta: { label: string; most: number }) {
  const field: OptionMeta = { label: meta.label, kind: 'text' };
  return told(meta)
    .transform((said) => ({
      ...said,
      system: said.system ?? (usUnit.test(said.text) ? 'US' : metricUnit.test(said.text) ? 'metric' : undefined),
    }))
    .meta({ ...field });
}
