import type { Range } from '../../core/doubt/sample.ts';
import { weighSides } from '../../core/doubt/sides.ts';
import type { Doubted } from '../command.ts';
import type { AskedSide } from '../settle/ask-side.ts';
import { type Turning, turningsOf } from '../settle/verdict.ts';
import type { Claimed } from './claimed.ts';

export type Finding = 'fits' | 'fits only if' | 'does not fit';

export interface Judged {
  readonly finding: Finding;
  /** What it comes to: the figure, the difference or the share that the claim is about. */
  readonly value: number;
  readonly range: Range | undefined;
  /** Share of the samples in which the claim holds; `undefined` where nothing could be sampled, or it says "about". */
  readonly holds: number | undefined;
  readonly samples: number;
  /** As of settle's verdicts. */
  readonly error: number;
  readonly odds_error: number;
  readonly converged: boolean;
  readonly turnings: readonly Turning[];
}

/** Holds in so many of the samples: fits. What a hand or a lining depends on is held to the adverse end. */
export const enough = { usual: 0.9, careful: 0.975 } as const;
/** "About", where nothing is sampled. */
const near = 0.1;

export function judge(claimed: Claimed, sides: readonly AskedSide[]): Judged {
  const values = sides.map(({ card }) => card.figures.find(({ id }) => id === claimed.figure)?.value ?? Number.NaN);
  const [one = Number.NaN, other = Number.NaN] = values;
  const value = claimed.kind === 'value' ? one : claimed.kind === 'difference' ? one - other : one / other;
  const pair = heldAgainst(claimed, sides);
  if (!pair) return { ...typically(claimed, value), value, range: undefined, holds: undefined, ...unsampled };
  const weighed = weighSides({
    outputs: ['y'],
    samples: Math.max(...sides.map(({ doubted }) => doubted?.samples ?? 0)),
    sides: pair.map(({ inputs, model, together = [] }) => ({
      inputs,
      together,
      model: (draw) => ({ y: model(draw).y ?? Number.NaN }),
    })),
  });
  const { below, belowError, difference } = weighed.measured.y;
  const { samples, error, converged } = weighed;
  const told = { samples, error, converged, odds_error: belowError(0, 1) };
  const { range: off, movers } = difference(0, 1);
  const range = off && backTo(claimed, off, other);
  const above = 1 - below(0, 1);
  const holds = claimed.compare === 'at most' ? 1 - above : above;
  const turnings = turningsOf(
    [
      { doubted: pair[0], id: 'y' },
      { doubted: pair[1], id: 'y' },
    ],
    movers,
  );
  if (claimed.compare === 'about') {
    const inside = off !== undefined && off.low <= 0 && off.high >= 0;
    const finding =
      inside || Math.abs(value - claimed.value) <= near * Math.abs(claimed.value) ? 'fits' : 'does not fit';
    return { finding, value, range, holds: undefined, ...told, turnings };
  }
  const limit = claimed.careful ? enough.careful : enough.usual;
  const finding = holds >= limit ? 'fits' : holds <= 1 - enough.usual ? 'does not fit' : 'fits only if';
  return { finding, value, range, holds, ...told, turnings };
}

const unsampled = { samples: 0, error: 0, odds_error: 0, converged: true, turnings: [] } as const;

function typically({ compare, value: claimed }: Claimed, value: number): { readonly finding: Finding } {
  const fits =
    compare === 'at most'
      ? value <= claimed
      : compare === 'at least'
        ? value >= claimed
        : Math.abs(value - claimed) <= near * Math.abs(claimed);
  return { finding: fits ? 'fits' : 'does not fit' };
}

/** As two sides of an argument: the figure, and the number; or the one figure and the other, moved by what is claimed. */
function heldAgainst(claimed: Claimed, sides: readonly AskedSide[]): readonly [Doubted, Doubted] | undefined {
  const { figure, kind, value } = claimed;
  const models = sides.map(({ doubted }) => doubted && only(doubted, figure));
  const [one, other] = models;
  if (!one || !hasAnswer(one)) return undefined;
  if (kind === 'value') return [one, { ...one, inputs: {}, units: {}, model: () => ({ y: value }) }];
  if (!other || !hasAnswer(other)) return undefined;
  const moved = (y: number) => (kind === 'difference' ? y + value : y * value);
  return [one, { ...other, model: (draw) => ({ y: moved(other.model(draw).y ?? Number.NaN) }) }];
}

const only = ({ model, ...rest }: Doubted, figure: string): Doubted => ({
  ...rest,
  model: (draw) => ({ y: model(draw)[figure] ?? Number.NaN }),
});

const hasAnswer = ({ inputs, model }: Doubted): boolean =>
  Number.isFinite(model(Object.fromEntries(Object.entries(inputs).map(([name, { typical }]) => [name, typical]))).y);

/** From how far off the claim it is to what it comes to. A share is told over the typical other side. */
function backTo({ kind, value }: Claimed, { low, high }: Range, other: number): Range {
  const scale = kind === 'share' ? 1 / other : 1;
  return { low: low * scale + value, high: high * scale + value };
}
