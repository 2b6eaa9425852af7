import { z } from 'zod';
import { standing } from '../sources/source.ts';
import { type Fact, facts, type HazardNumber, hazardNumbers } from './facts.ts';

const fact = z.enum(facts as readonly Fact[] as [Fact, ...Fact[]]);
const number = z.enum(hazardNumbers as readonly HazardNumber[] as [HazardNumber, ...HazardNumber[]]);
const kebab = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/);

/** All parts given must hold; `above` needs every number in it to be known and exceeded. */
const when = z
  .strictObject({
    any: z.array(fact).min(1).optional(),
    all: z.array(fact).min(1).optional(),
    none: z.array(fact).min(1).optional(),
    above: z.partialRecord(number, z.number()).optional(),
  })
  .refine(({ any, all, above }) => any || all || Object.keys(above ?? {}).length > 0, 'would always fire');

/** One hazard rule: pure data. */
export const ruleSchema = z.strictObject({
  id: kebab,
  when,
  severity: z.enum(['danger', 'caution', 'note']),
  text: z.string().min(10).max(200),
  reason: z.string().min(10).max(240),
  source: kebab,
  standing,
  /** A danger this question triggers itself: it leads the card. */
  headline: z.boolean().optional(),
  /** Of several rules that fire on one topic only the most severe is shown, the first among equals. */
  topic: kebab.optional(),
  /** Where it fires there is hot work, whether or not the question said so. */
  hotWork: z.boolean().optional(),
});

export type Rule = z.infer<typeof ruleSchema>;
