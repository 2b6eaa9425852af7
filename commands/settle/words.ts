import type { Figure, SiUnit, UnitSystem } from '../../core/quantity/figure.ts';
import { formatFigure, formatSi } from '../../core/quantity/format.ts';
import type { Table } from '../card.ts';
import type { AskedSide } from './ask-side.ts';
import { type Turning, tooClose, type Verdict, type Verdicts } from './verdict.ts';

export interface SettleParts {
  readonly sides: readonly AskedSide[];
  readonly verdicts: Verdicts;
  readonly units: UnitSystem;
}

/** In whole per cents; all and nearly all are not the same thing, nor are none and hardly any. */
export function percent(share: number): string {
  if (share > 0.99 && share < 1) return 'over 99 %';
  if (share > 0 && share < 0.01) return 'under 1 %';
  return `${Math.round(share * 100)} %`;
}
export function oddsText(share: number, samples: number): string {
  const all = samples.toLocaleString('en');
  if (share === 1) return `every one of ${all} samples`;
  return share === 0 ? `none of ${all} samples` : `${percent(share)} of ${all} samples`;
}

/** A difference of temperatures is no temperature. */
export const unitOfDifference = (unit: SiUnit): SiUnit => (unit === 'K' ? 'dK' : unit);

/** Always told as more than nothing: the other way round where the winner by odds is typically behind. */
export function leadFigure({ lead, lead_range: range, measure }: Verdict, id: string): Figure {
  const { shown } = measure.figures[0]!;
  return {
    id,
    label: `difference in ${measure.label}`,
    value: lead,
    unit: unitOfDifference(measure.unit),
    ...(shown ? { shown } : {}),
    ...(range && range.high > range.low
      ? { range: { low: range.low, high: range.high }, rangeBasis: 'sampled' as const }
      : { rangeBasis: 'none' as const }),
  };
}

/** As many samples stand for all where nothing is drawn. */
const certain = 2;

const moreOf = ({ measure }: Verdict): string => (measure.better === 'lowest' ? 'lower' : 'higher');

export function verdictText(verdict: Verdict, { sides, verdicts, units }: SettleParts): string {
  const [winner, second] = [sides[verdict.winner]!.name, sides[verdict.second]!.name];
  const { label } = verdict.measure;
  const { lead, range } = formatFigure(leadFigure(verdict, ''), units);
  // A difference of shares is in points: a per cent of a per cent is something else.
  const points = verdict.measure.figures[0]!.shown === 'percent';
  const size = points ? lead.replace(' %', ' percentage points') : lead;
  const by = range === undefined ? size : `${size} (${range})`;
  if (verdict.odds === undefined)
    return verdict.lead === 0
      ? `By ${label}: typically the same`
      : `By ${label}, at typical values only: ${winner} is ${moreOf(verdict)} than ${second} by ${by}`;
  if (verdicts.samples <= certain)
    return `By ${label}: ${winner} is ${moreOf(verdict)} than ${second} by ${by}, and nothing that these depend on is in doubt`;
  const more =
    sides.length > 2 ? ` It is the best of ${sides.length} in ${percent(verdict.shares![verdict.winner]!)}.` : '';
  if (verdict.close)
    return `By ${label}: too close to call. ${winner} is ${moreOf(verdict)} than ${second} in ${oddsText(verdict.odds, verdicts.samples)}`;
  return `By ${label}: ${winner} is ${moreOf(verdict)} than ${second} in ${oddsText(verdict.odds, verdicts.samples)}, by ${by}${more === '' ? '' : `.${more.replace(/\.$/, '')}`}`;
}

/** Which inputs matter, in order, and where each would turn the verdict. */
export function turningTable(verdict: Verdict, units: UnitSystem): Table | undefined {
  if (verdict.turnings.length === 0) return undefined;
  return {
    columns: ['what moves the difference', 'share', 'it turns at'],
    rows: verdict.turnings.map((turning) => [turning.input, percent(turning.share), turnsAt(turning, units)]),
  };
}

export function turnsAt({ flips, unit, typical, way }: Turning, units: UnitSystem): string {
  if (flips === undefined) return 'nowhere in its range';
  const side = flips < typical ? 'below' : 'above';
  return unit === undefined
    ? `${percent(Math.abs(way))} of the way to its ${way < 0 ? 'low' : 'high'} end`
    : `${side} ${formatSi(flips, unit, units)}`;
}

export function doubtText({ turnings }: Verdict, units: UnitSystem): string {
  const [first] = turnings;
  if (!first) return 'nothing that was sampled tells them apart';
  const turn = turnings.find(({ flips }) => flips !== undefined);
  const flip =
    turn === undefined
      ? 'no single one of them turns the verdict'
      : `the verdict turns with ${turn.input}, ${turnsAt(turn, units)}, all else as likely as not`;
  return `${first.input} (${percent(first.share)} of the spread of the difference); ${flip}`;
}

export const closeNote = `Too close to call: odds between ${percent(tooClose.low)} and ${percent(tooClose.high)}.`;

/** How many samples, and how well they tell: `error` of a range as a share of its width, that of odds in points. */
export function settledNote({
  samples,
  error,
  odds_error,
  converged,
}: Pick<Verdicts, 'samples' | 'error' | 'converged'> & { readonly odds_error: number }): string | undefined {
  if (samples <= certain) return undefined;
  const points = Math.max(1, Math.ceil(odds_error * 100));
  return `${samples.toLocaleString('en')} samples, ${converged ? 'settled' : 'not settled'}: the ends of a range are good to ${Math.max(1, Math.round(error * 100))} % of its width, odds to ${points === 1 ? 'a point' : `${points} points`} in a hundred (one standard error)${converged ? '' : '; more samples would move them'}.`;
}
