/** A value for every input, by its name. */
export type Draw = Readonly<Record<string, number>>;

/** A model near the middle of its inputs, which stand in standard deviations from there. */
export interface Line {
  readonly at: number;
  readonly slopes: readonly number[];
  /** Standard deviation of what the straight line leaves out. */
  readonly bend: number;
}

/**
 * y ≈ y₀ + ½ Σ cⱼ + Σ bⱼ zⱼ with bⱼ = (y₊ − y₋) ÷ 2 and cⱼ = y₊ + y₋ − 2 y₀, one standard deviation to each side: the
 * second order's mean, and its deviation √(½ Σ cⱼ²) as the bend. Two runs of the model an input, and one. Nothing where
 * the model has no finite answer there.
 */
export function bentLine(
  predicted: (draw: Draw) => number,
  {
    names,
    moments,
    middle,
  }: {
    readonly names: readonly string[];
    readonly moments: readonly { readonly mean: number; readonly deviation: number }[];
    readonly middle: Draw;
  },
): Line | undefined {
  const at_0 = predicted(middle);
  const sides = names.map((name, at) => {
    const { mean, deviation } = moments[at]!;
    return [predicted({ ...middle, [name]: mean + deviation }), predicted({ ...middle, [name]: mean - deviation })];
  });
  const bends = sides.map(([above, below]) => above! + below! - 2 * at_0);
  const line = {
    at: at_0 + bends.reduce((sum, bend) => sum + bend, 0) / 2,
    slopes: sides.map(([above, below]) => (above! - below!) / 2),
    bend: Math.sqrt(bends.reduce((sum, bend) => sum + bend * bend, 0) / 2),
  };
  return [line.at, line.bend, ...line.slopes].every(Number.isFinite) ? line : undefined;
}
