import { z } from 'zod';
import { datumSchema } from './material.ts';

/** `dished` ends are taken as 2:1 ellipses, a quarter of the diameter deep each. */
export const endShape = z.enum(['flat', 'dished bottom', 'dished both']);

/** A can, drum or cylinder that may become a shell. Inside sizes, SI; measure yours before cutting. */
export const vesselSchema = z.strictObject({
  id: z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/),
  name: z.string().max(60),
  aliases: z.array(z.string()).readonly(),
  inside_bottom_m: datumSchema,
  inside_top_m: datumSchema,
  /** Whole inside height, dished ends included. */
  inside_height_m: datumSchema,
  wall_m: datumSchema,
  stated_volume_m3: datumSchema,
  /** Share by which the volume from the sizes may differ from the stated one: nominal cans hold more to the brim. */
  volume_tolerance: z.number().min(0).max(0.2),
  ends: endShape,
  hazards: z.array(z.string()).readonly(),
});
export type Vessel = Readonly<z.infer<typeof vesselSchema>>;

/** Volume to the brim from the typical inside sizes. */
export function brimful_m3(vessel: Vessel): number {
  const bottom = vessel.inside_bottom_m.typical;
  const top = vessel.inside_top_m.typical;
  const height = vessel.inside_height_m.typical;
  const heads = { flat: [], 'dished bottom': [bottom], 'dished both': [bottom, top] }[vessel.ends];
  const straight = height - heads.reduce((sum, diameter) => sum + diameter / 4, 0);
  const frustum = (Math.PI / 12) * straight * (bottom ** 2 + bottom * top + top ** 2);
  return heads.reduce((sum, diameter) => sum + (Math.PI / 24) * diameter ** 3, frustum);
}
