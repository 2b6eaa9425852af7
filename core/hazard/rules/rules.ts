import type { Rule } from '../rule.ts';
import { dampRules } from './damp.ts';
import { dustRules } from './dust.ts';
import { fumeRules } from './fume.ts';
import { gasAndFireRules } from './gas-and-fire.ts';
import { liftingAndHandsRules } from './lifting-and-hands.ts';
import { metalRules } from './metal.ts';
import { shellAndVesselRules } from './shell-and-vessel.ts';

/** Every rule. Order counts among rules of one severity: the earlier is shown first. */
export const rules: readonly Rule[] = Object.freeze([
  ...dustRules,
  ...dampRules,
  ...metalRules,
  ...fumeRules,
  ...gasAndFireRules,
  ...shellAndVesselRules,
  ...liftingAndHandsRules,
]);
