/** Beyond this a term of the series is nothing: e^−40. */
const NOTHING = 40;
const MOST_TERMS = 400;

/** How a wet sheet dries, all in the sheet's own measure: Fourier number = D·t/l². */
export interface Sheet {
  /** Share of the removable water that is left. */
  readonly left: (fourier: number) => number;
  /** Share lost per unit of the Fourier number. */
  readonly rate: (fourier: number) => number;
  /** When no more than this share is left; 0 where it never was more. */
  readonly whenLeft: (share: number) => number;
  /** When it loses no faster than this; 0 where it never did. */
  readonly whenRate: (rate: number) => number;
  /** First root: in the end what is left falls as e^(−root²·fourier). */
  readonly first_root: number;
}

/**
 * A plane sheet that was wet throughout, sealed on one side (or the half of one that is open on both), whose face loses
 * water in proportion to what it still holds: left = Σ 2·Bi²·e^(−βn²·Fo) / (βn²·(βn² + Bi² + Bi)), βn·tan βn = Bi, with
 * Bi = α·l/D, Fo = D·t/l². Bi 1e-6…1e6. Source: Crank 1975, equations 4.50 to 4.53.
 */
export function sheet({ biot }: { readonly biot: number }): Sheet {
  const Bi = Math.min(1e6, Math.max(1e-6, biot));
  const squares: number[] = [];
  const shares: number[] = [];
  const term = (index: number): void => {
    if (index < squares.length) return;
    const root = rootOf(Bi, index);
    const square = root * root;
    squares.push(square);
    shares.push((2 * Bi * Bi) / (square * (square + Bi * Bi + Bi)));
  };
  const sum = (fourier: number, power: 0 | 1 | 2): number => {
    let total = 0;
    for (let index = 0; index < MOST_TERMS; index++) {
      term(index);
      const square = squares[index]!;
      if (index > 0 && (square - squares[0]!) * fourier > NOTHING) break;
      const weight = power === 0 ? 1 : power === 1 ? square : square * square;
      total += shares[index]! * weight * Math.exp(-square * fourier);
    }
    return total;
  };
  const left = (fourier: number): number => (fourier <= 0 ? 1 : Math.min(1, sum(fourier, 0)));
  const rate = (fourier: number): number => (fourier <= 0 ? Bi : Math.min(Bi, sum(fourier, 1)));
  term(0);
  /** Log-convex and falling, its first term below it: Newton on the logarithm climbs to the answer from the left. */
  const when = (wanted: number, power: 0 | 1): number => {
    const first = shares[0]! * (power === 0 ? 1 : squares[0]!);
    let fourier = Math.max(0, Math.log(first / wanted) / squares[0]!);
    for (let round = 0; round < 60; round++) {
      const at = Math.max(fourier, 1e-7);
      const value = sum(at, power);
      const step = (Math.log(value / wanted) * value) / sum(at, power === 0 ? 1 : 2);
      fourier = Math.max(0, at + step);
      if (Math.abs(step) <= 1e-9 * at) break;
    }
    return fourier;
  };
  return {
    left,
    rate,
    whenLeft: (share) => (share >= 1 ? 0 : when(share, 0)),
    whenRate: (wanted) => (wanted >= Bi ? 0 : when(wanted, 1)),
    first_root: Math.sqrt(squares[0]!),
  };
}

/** The root of β·tan β = Bi between index·π and (index + ½)·π. */
function rootOf(Bi: number, index: number): number {
  const base = index * Math.PI;
  let root = index === 0 ? Math.sqrt(Bi / (1 + (4 * Bi) / Math.PI ** 2)) : base + Math.atan(Bi / base);
  for (let round = 0; round < 20; round++) {
    // β·sin β − Bi·cos β: smooth where the tangent is not.
    const [sine, cosine] = [Math.sin(root), Math.cos(root)];
    const step = (root * sine - Bi * cosine) / (sine + root * cosine + Bi * sine);
    root -= step;
    if (Math.abs(step) < 1e-13 * root) break;
  }
  return root;
}
