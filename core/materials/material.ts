import { z } from 'zod';
import { standing } from '../sources/source.ts';
import { spreadSchema } from './spread.ts';

/** One number of the catalogue with where it is from. SI; the property's key names the unit. */
export const datumSchema = spreadSchema.safeExtend({
  source: z.string(),
  standing,
  note: z.string().max(300).optional(),
});
export type Datum = Readonly<z.infer<typeof datumSchema>>;

/**
 * A property that varies with temperature: rows of (T, low, typical, high), T rising. Linear between rows; outside them
 * an answer is extrapolated and must say so and carry no range.
 * `kind`: `local` is the value at that temperature; `mean` is the mean of a test slab (brick and castable sheets).
 */
export const curveSchema = z.strictObject({
  T_K: z.array(z.number().positive()).min(1).readonly(),
  low: z.array(z.number().positive()).readonly(),
  typical: z.array(z.number().positive()).readonly(),
  high: z.array(z.number().positive()).readonly(),
  kind: z.enum(['local', 'mean']),
  source: z.string(),
  standing,
  note: z.string().max(300).optional(),
});
export type Curve = Readonly<z.infer<typeof curveSchema>>;

/** Scalar properties. Lengths of service are not here: they follow from temperatures and are computed. */
export const propertySchema = z.strictObject({
  /** As it stands in a lining or as loose fill, dry. */
  density_kg_m3: datumSchema,
  /** Powder or grains as scooped, dry. */
  loose_density_kg_m3: datumSchema,
  /** Share of own dry mass held as water when the air-dry material is used. */
  moisture: datumSchema,
  /** Water added for ramming or casting, share of dry mass. */
  mixing_water: datumSchema,
  porosity: datumSchema,
  emissivity: datumSchema,
  /** Linear, share of length. */
  drying_shrinkage: datumSchema,
  firing_shrinkage: datumSchema,
  /** Mass lost on firing beyond free water, share of dry mass. */
  ignition_loss: datumSchema,
  thermal_expansion_per_K: datumSchema,
  tensile_strength_Pa: datumSchema,
  melting_K: datumSchema,
  /** Where a clay sinters into a sound body. */
  maturing_K: datumSchema,
  /** Pyrometric cone equivalent as a temperature; ±25 K belongs to every one. */
  pce_K: datumSchema,
  /** Highest temperature it may see in long use. Judge by `low`, never `typical`. */
  service_limit_K: datumSchema,
  /** Volume lost when loose fill is tamped, share of loose volume. */
  settling: datumSchema,
  /** Loose volume ÷ rammed volume. */
  ramming_ratio: datumSchema,
});
export const propertiesSchema = propertySchema.partial();
export type PropertyName = keyof z.infer<typeof propertySchema>;

export const materialKind = z.enum([
  'lining',
  'castable',
  'brick',
  'insulation',
  'clay',
  'aggregate',
  'binder',
  'metal shell',
  'mesh',
  'coating',
  'other',
]);

/** May it face the fire? `limit` is the hottest metal or face it is fit for, in words; the number is `service_limit_K`. */
export const hotFaceVerdict = z.strictObject({
  fit: z.enum(['yes', 'within limits', 'backup only', 'never']),
  why: z.string().max(300),
});

export const materialSchema = z.strictObject({
  id: z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/),
  /** What a supplier or a practitioner calls it; no brands, no makers' codes. */
  name: z.string().max(60),
  kind: materialKind,
  aliases: z.array(z.string()).readonly(),
  goodFor: z.string().max(300),
  failsWhen: z.string().max(300),
  hotFace: hotFaceVerdict.optional(),
  properties: propertiesSchema,
  conductivity_W_mK: curveSchema.optional(),
  heat_capacity_J_kgK: curveSchema.optional(),
  /** Facts that trigger cautions, see `core/hazard`. */
  hazards: z.array(z.string()).readonly(),
});
export type Material = Readonly<z.infer<typeof materialSchema>>;
