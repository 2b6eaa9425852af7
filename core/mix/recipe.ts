import { z } from 'zod';
import { spreadSchema } from '../materials/spread.ts';
import { standing } from '../sources/source.ts';

/** What an ingredient does in a mix; names its figures (`mix.clay_mass`). */
export const slot = z.enum(['clay', 'sand', 'grog', 'light', 'binder', 'castable', 'organic']);
export type Slot = z.infer<typeof slot>;

export const partSchema = z.strictObject({
  material: z.string(),
  slot,
  /** Parts by loose volume or by mass, as the recipe says. */
  parts: z.number().positive(),
});
export type Part = Readonly<z.infer<typeof partSchema>>;

export const recipeSchema = z.strictObject({
  id: z.string().regex(/^[a-z]+(-[a-z]+)*$/),
  name: z.string(),
  aliases: z.array(z.string()).readonly(),
  by: z.enum(['loose volume', 'mass']),
  parts: z.array(partSchema).min(1).readonly(),
  /** Catalogue entry of the finished lining: density, water, shrinkage, service limit. */
  lining: z.string(),
  role: z.enum(['hot face', 'backup']),
  method: z.enum(['ram', 'cast']),
  /** Sieve the aggregate through this opening; grains above it weaken a thin wall. */
  sieve_m: z.number().positive(),
  /** Rest in a closed bag before ramming. */
  temper_s: spreadSchema,
  note: z.string(),
  source: z.string(),
  standing,
});
export type Recipe = Readonly<z.infer<typeof recipeSchema>>;
