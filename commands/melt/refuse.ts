import { AskError } from '../../core/ask-error.ts';
import type { Pour } from '../../core/materials/pour.ts';
import type { PotMaterial } from '../../core/melt/data/pots.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { formatSi } from '../../core/quantity/format.ts';

interface Danger {
  readonly pattern: RegExp;
  readonly what: string;
  readonly expected: string;
}

/** What is never melted, whatever else is right. The cautions with the reasons come by the same words. */
const dangers: readonly Danger[] = [
  {
    pattern: /magnesium|\belektron\b/i,
    what: 'magnesium is not melted here: it burns white in air and takes its oxygen out of water and carbon dioxide',
    expected: 'a metal above 2.2 kg/L; lighter, or fizzing in vinegar, is magnesium: hand it to a scrap dealer',
  },
  {
    pattern: /beryllium|\bbecu\b|non-?sparking/i,
    what: 'beryllium copper is not melted here: micrograms of its dust or fume can start a lung disease that stays',
    expected: 'copper or bronze of known make; hand this to a scrap dealer and say what it is',
  },
  {
    pattern: /cadmium/i,
    what: 'cadmium is not melted here: it fumes at red heat with little warning, and single exposures have killed',
    expected: 'scrap without plating or silver braze',
  },
  {
    pattern:
      /\b(?:sealed|closed|unopened|aerosols?|spray cans?|shock absorbers?|shocks|struts?|gas springs?|batter(?:y|ies)|airbags?|ammunition|ammo|live rounds?|fire extinguishers?|gas (?:cylinders?|bottles?))\b/i,
    what: 'closed scrap is not melted here: gas, water or oil in it bursts the piece in the bath',
    expected: 'every hollow piece opened, emptied and dry, or left out',
  },
];

/** @throws AskError `refused`. */
export function refuseDangerous(text: string): void {
  const danger = dangers.find(({ pattern }) => pattern.test(text));
  if (!danger) return;
  const { what, expected } = danger;
  throw new AskError({ code: 'refused', what, expected, example: '5 kg aluminium', option: 'melt' });
}

/** Fume of zinc or lead in a closed room. @throws AskError `refused`. */
export function refuseFumeIndoors({ name, hazards }: Pour, place: string | undefined): void {
  const fumes = ['zinc', 'lead'].filter((metal) => hazards.includes(`${metal}-alloy`));
  if (place !== 'indoors' || fumes.length === 0) return;
  throw new AskError({
    code: 'refused',
    what: `${name} is not melted indoors: ${fumes.map((metal) => fumeSays[metal]).join('; ')}`,
    expected: 'outdoors, up-wind of the pot',
    example: 'outdoors',
    option: 'place',
  });
}

const fumeSays: Readonly<Record<string, string>> = {
  zinc: 'its zinc fumes, and 2 h at 2.5 to 5 mg/m³ gave 10 of 12 people a fever',
  lead: 'it holds lead, whose limit in air is 50 µg/m³ (29 CFR 1910.1025), and which stays in the room as dust',
};

/** A steel pot that is soft or dissolved at the pour. @throws AskError `unfit`. */
export function refuseSoftPot(pot: PotMaterial, pour_K: number, { name }: Pour, units: UnitSystem): void {
  if (pot.limit_K === undefined || pour_K <= pot.limit_K.high) return;
  const show = (kelvin: number) => formatSi(kelvin, 'K', units);
  throw new AskError({
    code: 'unfit',
    what: `${name} at ${show(pour_K)} in ${pot.name}: such a pot scales, softens and dissolves above ${show(pot.limit_K.low)} to ${show(pot.limit_K.high)}`,
    expected: 'clay-graphite or silicon carbide',
    example: 'clay-graphite',
    option: 'material',
  });
}
