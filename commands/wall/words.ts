import type { WallAnswer } from '../../core/heat/wall-answer.ts';
import type { OutsideModel } from '../../core/heat/wall-limits.ts';
import { longest_s, shortName, touch_K } from '../../core/heat/wall-question.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { formatFigure, formatSi } from '../../core/quantity/format.ts';
import { capital } from '../sentence.ts';
import { shellFigures } from './figures.ts';

/** The hottest that the shell can be, by the adverse end where there is one. */
export const hottestShell_K = ({ firing, ranges }: WallAnswer): number =>
  Math.max(firing.shell_peak_K, ranges.shell_peak?.high ?? 0);

/** Minutes below an hour and a half, else hours; rounded up to what may be waited for. */
export function waitFor(time_s: number): string {
  if (time_s < 5400) return `${Math.ceil(time_s / 300) * 5} min`;
  return `${Math.ceil(time_s / 360) / 10} h`;
}

/** How hot, when, when to touch, and what is past its limit. */
export function headlineOf(answer: WallAnswer, units: UnitSystem): string {
  const [peak] = shellFigures(answer);
  const { lead = '', range } = peak ? formatFigure(peak, units) : {};
  const shell = `The shell peaks at ${lead}${range === undefined ? '' : ` (${range})`} ${whenOf(answer)}.`;
  return [shell, touchOf(answer, units), ...noFace(answer), ...limitsOf(answer, units), ...noRange(answer, units)].join(
    ' ',
  );
}

/** What is no hot face is computed as one all the same: the reader is told first. */
function noFace({ layers: [first] }: WallAnswer): readonly string[] {
  const fit = first?.material.hotFace?.fit;
  if (!first || (fit !== 'backup only' && fit !== 'never')) return [];
  return [`${capital(shortName(first.material.name))} alone is no hot face: put a lining before it.`];
}

/** When the shell is hottest. */
export function whenOf({ firing: { shell_peak_after_s: after_s } }: WallAnswer): string {
  if (after_s < 60) return 'as the fire goes out';
  if (after_s > longest_s - 60) return 'two days after the fire is out, still rising';
  const minutes = Math.round(after_s / 60);
  return `${minutes < 90 ? `${minutes} min` : `${(minutes / 60).toFixed(1)} h`} after the fire is out`;
}

function touchOf(answer: WallAnswer, units: UnitSystem): string {
  const level = formatSi(touch_K, 'K', units);
  const { firing, ranges } = answer;
  const slow_s = ranges.cool0?.high;
  if (slow_s === undefined) {
    const typical_s = firing.cool_s[0]!;
    const when = typical_s >= longest_s - 1 ? 'later than two days' : `about ${waitFor(typical_s)}`;
    return hottestShell_K(answer) <= touch_K
      ? `It stays below ${level}, typically: measure before you touch it.`
      : `It is down to ${level} ${when} after fire out, typically: measure before you touch it.`;
  }
  if (hottestShell_K(answer) <= touch_K) return `It stays below ${level}: a hand may rest on it.`;
  if (slow_s >= longest_s - 1) return 'It may not be safe to touch for more than two days.';
  return `Safe to touch ${waitFor(slow_s)} after fire out, at the slow end.`;
}

/** The typical temperature, and the adverse one that is judged where they differ. */
const limitsOf = ({ layers }: WallAnswer, units: UnitSystem): readonly string[] =>
  layers
    .filter(({ exceeds }) => exceeds)
    .map(({ material, hot_side_K, adverse_K, limit_K = 0 }) => {
      const name = capital(shortName(material.name));
      const [typical, adverse, limit] = [hot_side_K, adverse_K, limit_K].map((one) => formatSi(one, 'K', units));
      if (hot_side_K <= limit_K) return `${name} may get to ${adverse}, above its limit of ${limit}.`;
      const worst = adverse === typical ? '' : ` (${adverse} at worst)`;
      return `${name} gets to ${typical}${worst}, above its limit of ${limit}.`;
    });

const noRange = ({ outside_model }: WallAnswer, units: UnitSystem): readonly string[] =>
  outside_model.length === 0 ? [] : [`No range: ${outside_model.map((one) => reasonOf(one, units)).join('; ')}.`];

/** Why a layer leaves the model, without a full stop. */
export function reasonOf({ material, why, past_K }: OutsideModel, units: UnitSystem): string {
  const name = shortName(material.name);
  const past = formatSi(past_K, 'K', units);
  return why === 'gone'
    ? `past ${past} ${name} is no longer what was computed`
    : `the conductivity of ${name} is known to ${past} only`;
}
