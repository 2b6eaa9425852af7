import { z } from 'zod';
import { datumSchema } from '../../materials/material.ts';

/** What burns: mole shares of known gases, or mass shares of the elements of the dry, ash-free matter. */
export const combustibleSchema = z.union([
  z.strictObject({ gases: z.record(z.string(), z.number().positive()) }),
  z.strictObject({
    C: z.number().positive(),
    H: z.number().nonnegative(),
    O: z.number().nonnegative(),
    N: z.number().nonnegative(),
  }),
]);

export const fuelSchema = z.strictObject({
  id: z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/),
  name: z.string().max(60),
  kind: z.enum(['gas', 'liquid', 'solid']),
  aliases: z.array(z.string()).readonly(),
  combustible: combustibleSchema.readonly(),
  /** As fired, with the typical ash and moisture below: water leaves as vapour. */
  lower_heat_J_kg: datumSchema,
  /** Share of the mass as fired. */
  ash: datumSchema,
  /** Share of the mass as fired (wet basis). */
  moisture: datumSchema,
  fixed_carbon: datumSchema.optional(),
  /** Of the fuel as it enters; gases have their own. */
  heat_capacity_J_kgK: datumSchema.optional(),
  /** Loose in a heap for solids, of the liquid for liquids. */
  bulk_density_kg_m3: datumSchema.optional(),
  price_USD_kg: datumSchema.optional(),
  hazards: z.array(z.string()).readonly(),
});
export type Fuel = Readonly<z.infer<typeof fuelSchema>>;
