import { z } from 'zod';
import { datumSchema } from './material.ts';

/** Elements whose heat content the core knows, see `core/melt/metals.ts`. */
export const elements = ['Al', 'Cu', 'Zn', 'Fe', 'Si', 'Sn', 'Pb', 'Mg', 'Mn', 'C'] as const;
export const elementSchema = z.enum(elements);
export type Element = z.infer<typeof elementSchema>;

export const metalFamily = z.enum(['aluminium', 'zinc', 'copper', 'iron', 'tin', 'lead']);
export type MetalFamily = z.infer<typeof metalFamily>;

/** A metal as the caster thinks of it: what it is of, when it melts, how hot it is poured and what the face then stands. */
export const pourSchema = z.strictObject({
  id: z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/),
  name: z.string().max(60),
  aliases: z.array(z.string()).readonly(),
  family: metalFamily,
  /** Nominal shares of mass; what is left out is below 1 %. */
  composition: z
    .partialRecord(elementSchema, z.number().positive().max(1))
    .refine((shares) => Math.abs(Object.values(shares).reduce((sum, share) => sum + share, 0) - 1) < 1e-9, 'sums to 1'),
  /** Of a pure metal, or where only one number is known, the same as the liquidus. */
  solidus_K: datumSchema,
  liquidus_K: datumSchema,
  /** Heavy sections at the low end, thin ones at the high end. */
  pour_K: datumSchema,
  /** Hot face that brings a crucible to the pour within reason: pour + 100…200 K. */
  hot_face_K: datumSchema,
  /** At room temperature. */
  solid_density_kg_m3: datumSchema,
  /** Just above the liquidus. */
  liquid_density_kg_m3: datumSchema,
  /** What melting takes beyond the sum over its elements: heat of mixing, and the doubt of handbooks. */
  melting_correction_J_kg: datumSchema,
  /** Linear, pattern over casting, share of length. */
  shrink: datumSchema,
  failsWhen: z.string().max(300),
  hazards: z.array(z.string()).readonly(),
});
export type Pour = Readonly<z.infer<typeof pourSchema>>;
