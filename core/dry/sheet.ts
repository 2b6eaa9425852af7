/** Beyond this a term of the series is nothing: e^−40. */
const NOTHING = 40;
const MOST_TERMS = 400;
/** Earlier than anyone asks; the series needs ever more terms towards the start. */
const EARLY = 1e-6;

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
    const square = rootOf(Bi, index) ** 2;
    squares.push(square);
    shares.push((2 * Bi * Bi) / (square * (square + Bi * Bi + Bi)));
  };
  term(0);
  const [slowest, largest] = [squares[0]!, shares[0]!];
  /** What is left, how fast it goes, and how fast that goes: a derivative each. */
  let [left, rate, slows] = [0, 0, 0];
  const at = (fourier: number): void => {
    left = rate = slows = 0;
    for (let index = 0; index < MOST_TERMS; index++) {
      term(index);
      const square = squares[index]!;
      if ((square - slowest) * fourier > NOTHING) break;
      const part = shares[index]! * Math.exp(-square * fourier);
      left += part;
      rate += part * square;
      slows += part * square * square;
    }
  };
  /** Both are log-convex and fall, their first term below them: Newton on the logarithm climbs to them from the left. */
  const climb = (wanted: number, first: number, ofRate: boolean): number => {
    let fourier = Math.max(EARLY, Math.log(first / wanted) / slowest);
    for (let round = 0; round < 60; round++) {
      at(fourier);
      const [value, falls] = ofRate ? [rate, slows] : [left, rate];
      const step = (Math.log(value / wanted) * value) / falls;
      fourier = Math.max(EARLY, fourier + step);
      if (Math.abs(step) <= 1e-9 * fourier) break;
    }
    return fourier;
  };
  return {
    left: (fourier) => {
      if (fourier <= 0) return 1;
      at(fourier);
      return Math.min(1, left);
    },
    rate: (fourier) => {
      if (fourier <= 0) return Bi;
      at(fourier);
      return Math.min(Bi, rate);
    },
    whenLeft: (share) => (share >= 1 ? 0 : climb(share, largest, false)),
    whenRate: (wanted) => (wanted >= Bi ? 0 : climb(wanted, largest * slowest, true)),
    first_root: Math.sqrt(slowest),
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
    if (Math.abs(step) < 1e-12 * root) break;
  }
  return root;
}
