import { AskError } from '../ask-error.ts';
import { vessels } from '../materials/catalogue.ts';
import { crucibleFromSizes } from './crucible.ts';
import type { Fit } from './fit.ts';
import { fitToPropose, shapeOf } from './profile.ts';
import { type SizingRule, sizingRules } from './rules.ts';
import { type Measures, type Sized, type SizeQuestion, sizeFurnace } from './size.ts';

/** A change after which it fits: the option to type and its new value. */
export type Change =
  | { readonly option: LengthOption; readonly says: string; readonly to_m: number; readonly from_m: number }
  | {
      readonly option: 'several';
      readonly says: string;
      readonly to: readonly { readonly option: LengthOption; readonly to_m: number }[];
    }
  | { readonly option: 'crucible'; readonly says: string; readonly diameter_m: number; readonly height_m: number }
  | { readonly option: 'vessel'; readonly says: string; readonly id: string; readonly name: string };

type LengthOption = 'behind' | 'wall' | 'gap' | 'under' | 'lid' | 'floor' | 'plinth' | 'rim';

interface Trim {
  readonly option: LengthOption;
  readonly says: string;
  readonly of: 'width' | 'height';
  readonly key: keyof Measures & keyof SizeQuestion;
  readonly rule: (question: SizeQuestion) => SizingRule;
}

/** In the order in which they cost least: insulation, then wall, then room. */
const trims: readonly Trim[] = [
  { option: 'behind', says: 'thinner insulation', of: 'width', key: 'behind_m', rule: () => sizingRules.behind_m },
  { option: 'wall', says: 'a thinner wall', of: 'width', key: 'wall_m', rule: () => sizingRules.wall_m },
  {
    option: 'gap',
    says: 'a narrower gap',
    of: 'width',
    key: 'gap_m',
    rule: ({ fuel }) => (fuel === 'gas' ? sizingRules.gap_gas_m : sizingRules.gap_charcoal_m),
  },
  {
    option: 'under',
    says: 'a thinner layer under the floor',
    of: 'height',
    key: 'underfloor_m',
    rule: () => sizingRules.underfloor_m,
  },
  { option: 'rim', says: 'less room over the crucible', of: 'height', key: 'rim_m', rule: () => sizingRules.rim_m },
  { option: 'lid', says: 'a thinner lid', of: 'height', key: 'lid_m', rule: () => sizingRules.lid_m },
  { option: 'floor', says: 'a thinner floor', of: 'height', key: 'floor_m', rule: () => sizingRules.floor_m },
  { option: 'plinth', says: 'a lower plinth', of: 'height', key: 'plinth_m', rule: () => sizingRules.plinth_m },
];

/** Everything one could change to make it fit, each computed and tried; the smallest change first. Empty if it fits. */
export function changesFor(sized: Sized): readonly Change[] {
  if (sized.fit.fits) return [];
  const thinner = trimmed(sized);
  const together = thinner.length > 0 ? [] : allTrimmed(sized);
  return Object.freeze([...thinner, ...together, ...smallerCrucible(sized), ...biggerVessel(sized)]);
}

/** Thinner by just what is missing, whole millimetres, where that stays at or above the rule's low end. */
function trimmed({ question, fit, furnace, measures }: Sized): readonly Change[] {
  const missing_m = (of: Trim['of']) => {
    const check = fit.checks.find((one) => one.of === of);
    return check && !check.holds ? check.least_m - check.room_m : 0;
  };
  return trims.flatMap(({ option, says, of, key, rule }): Change[] => {
    const less_m = missing_m(of);
    if (less_m <= 0) return [];
    const from_m = measures[key];
    const to_m = Math.floor((from_m - less_m) * 1000 + 1e-6) / 1000;
    // Only insulation that was asked for can be given up: without the wish there is already no more than fits.
    if (option === 'behind' && question.behind_m === undefined) return [];
    if (option === 'plinth' && furnace.plinth.height_m === 0) return [];
    if (to_m < rule(question).low) return [];
    return works({ ...question, [key]: to_m, vessel: furnace.vessel, crucible: crucibleOf(question, furnace) })
      ? [{ option, says, to_m, from_m }]
      : [];
  });
}

const crucibleOf = (question: SizeQuestion, { crucible }: Sized['furnace']) =>
  question.crucible ?? crucibleFromSizes({ diameter_m: 2 * crucible.outside_radius_m, height_m: crucible.height_m });

/** Where no single one is enough: everything that is in the way at its low end. */
function allTrimmed({ question, fit, furnace, measures }: Sized): readonly Change[] {
  const short = fit.checks.filter(({ holds }) => !holds).map(({ of }) => of);
  const to = trims
    .filter(({ option, of }) => short.includes(of) && (option !== 'behind' || question.behind_m !== undefined))
    .filter(({ key, rule }) => measures[key] > rule(question).low)
    .map(({ option, key, rule }) => ({ option, key, to_m: rule(question).low }));
  if (to.length < 2) return [];
  const thin = Object.fromEntries(to.map(({ key, to_m }) => [key, to_m]));
  const next = { ...question, ...thin, vessel: furnace.vessel, crucible: crucibleOf(question, furnace) };
  if (!works(next)) return [];
  return [
    {
      option: 'several',
      says: 'all of it as thin as the rules allow',
      to: to.map(({ option, to_m }) => ({ option, to_m })),
    },
  ];
}

/** The largest of the same proportions that goes in, whole millimetres: by halving, since room only shrinks with it. */
function smallerCrucible({ question, furnace }: Sized): readonly Change[] {
  const { outside_radius_m, height_m } = furnace.crucible;
  const shrunk = (share: number) => ({
    diameter_m: Math.floor(2 * outside_radius_m * share * 1000) / 1000,
    height_m: Math.floor(height_m * share * 1000) / 1000,
  });
  const goes = (share: number) =>
    works({ ...question, vessel: furnace.vessel, crucible: crucibleFromSizes(shrunk(share)) });
  let low = 0.25;
  let high = 1;
  if (shrunk(low).diameter_m < 0.03 || !goes(low)) return [];
  for (let round = 0; round < 12; round++) {
    const middle = (low + high) / 2;
    if (goes(middle)) low = middle;
    else high = middle;
  }
  return [{ option: 'crucible', says: 'a smaller crucible', ...shrunk(low) }];
}

function biggerVessel({ question, crucible }: Sized): readonly Change[] {
  const found = fitToPropose(vessels).find((vessel) => fitOf({ ...question, vessel: shapeOf(vessel), crucible })?.sure);
  return found ? [{ option: 'vessel', says: 'a bigger vessel', id: found.id, name: found.name }] : [];
}

const works = (question: SizeQuestion): boolean => fitOf(question)?.fits ?? false;

function fitOf(question: SizeQuestion): Fit | undefined {
  try {
    return sizeFurnace(question).fit;
  } catch (error) {
    if (error instanceof AskError) return undefined;
    throw error;
  }
}
