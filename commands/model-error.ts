import { type ModelError, modelErrorsOf } from '../core/doubt/model-errors.ts';
import type { UnitSystem } from '../core/quantity/figure.ts';
import { formatSi } from '../core/quantity/format.ts';

/** One line, apart from every range: how far off the model itself may be, and what that is judged from. */
export function modelErrorNote(figures: readonly string[], units: UnitSystem): string | undefined {
  const errors = modelErrorsOf(figures);
  if (errors.length === 0) return undefined;
  return `The model itself, in no range or odds above: ${errors.map((error) => errorText(error, units)).join('; ')}.`;
}

function errorText(error: ModelError, units: UnitSystem): string {
  const { of, comparisons, against } = error;
  const basis =
    comparisons === 0
      ? 'judged, nothing measured to hold it against'
      : `judged from ${comparisons} comparisons: ${against}`;
  return `${of} ${spanText(error, units)} (${basis})`;
}

function spanText({ by, low, high }: ModelError, units: UnitSystem): string {
  const shown = (value: number) =>
    by === 'share' ? `${Math.round(Math.abs(value) * 100)} %` : formatSi(Math.abs(value), 'dK', units);
  if (low === -high) return `±${shown(high)}`;
  if (high <= 0) return `lower by ${shown(high)} to ${shown(low)}`;
  return `from ${shown(low)} less to ${shown(high)} more`;
}
