import { z } from 'zod';
import { datumSchema } from './material.ts';

/** A metal as the caster thinks of it: how hot it is poured and what the face round it must then stand. */
export const pourSchema = z.strictObject({
  id: z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/),
  name: z.string().max(60),
  aliases: z.array(z.string()).readonly(),
  liquidus_K: datumSchema,
  /** Heavy sections at the low end, thin ones at the high end. */
  pour_K: datumSchema,
  /** Hot face that brings a crucible to the pour within reason: pour + 100…200 K. */
  hot_face_K: datumSchema,
  failsWhen: z.string().max(300),
  hazards: z.array(z.string()).readonly(),
});
export type Pour = Readonly<z.infer<typeof pourSchema>>;
