import { z } from 'zod';

/**
 * What is known of one number: hard low and high bounds and the value met most often, in SI.
 * `low = typical = high` is an exact number. Sampled as a triangle (`core/doubt`).
 */
export const spreadSchema = z
  .strictObject({ low: z.number(), typical: z.number(), high: z.number() })
  .refine(({ low, typical, high }) => low <= typical && typical <= high, 'low ≤ typical ≤ high');

export type Spread = Readonly<z.infer<typeof spreadSchema>>;

/** Which end of a spread to take: `wall` runs low, typical and high side by side. */
export type End = keyof Spread;

export const exactly = (value: number): Spread => ({ low: value, typical: value, high: value });
