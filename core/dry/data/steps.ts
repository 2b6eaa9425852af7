import { PRACTICE } from '../../materials/data/make.ts';
import type { SourceId, Standing } from '../../sources/source.ts';

/** What is done on the way to the first fire, in words: dates are worked out. */
export interface StepText {
  readonly what: string;
  readonly doneWhen: string;
  readonly holds: readonly string[];
  readonly facts: readonly string[];
  readonly source: SourceId;
  readonly standing: Standing;
}

const step = (what: string, doneWhen: string, holds: readonly string[], facts: readonly string[]): StepText => ({
  what,
  doneWhen,
  holds,
  facts,
  ...PRACTICE,
});

export const stepTexts = {
  cover: step(
    'Cover it loosely, out of sun and wind, where no frost comes.',
    'the damp is even: one colour all round',
    ['mass used is that of a full ramming, no voids'],
    ['damp-lining'],
  ),
  open: step(
    'Take the cover off, lid off, tuyere and vent open; turn it now and then.',
    'the colour is even and the face no longer cool to the hand',
    ['no crack wider than a card'],
    ['damp-lining'],
  ),
  'cover-on': step(
    'Leave the cloth on; lift it once a day and look for cracks.',
    'the colour is even and the face no longer cool to the hand',
    ['no crack wider than a card'],
    ['damp-lining'],
  ),
  moist: step(
    'Keep it wet-covered, at 10 to 30 °C (50 to 86 °F), never near frost.',
    'a finger rubbed over it stays clean, and the time is up',
    ['the bag says when it may be stripped: that wins'],
    ['damp-lining', 'caustic'],
  ),
  wrapped: step(
    'Leave it wrapped; pierce or wash what has to be, then let it set.',
    'it is firm: a thumb leaves no mark',
    [],
    ['damp-lining'],
  ),
  strip: step(
    'Draw the formers; ream drain, vent and steam holes; fill voids on a damped, scored face.',
    'no void deeper than a finger nail, every hole passes a rod',
    ['hard enough to ring, and never frozen'],
    ['damp-lining'],
  ),
  weigh: step(
    'Weigh it, or a block of the same mix and thickness rammed the same day.',
    'mass and day are written down',
    [],
    ['lift'],
  ),
  'weigh-again': step(
    'Weigh it again: from both follows what is left.',
    'it loses less than 0.1 to 0.5 % a day',
    ['same scale, same things on it'],
    ['lift'],
  ),
  rain: step(
    'Tip the water out, wipe it, cover it from above and let air through. No heat.',
    'no water stands in it and the colour is even again',
    ['nothing is lit in it today'],
    ['damp-lining'],
  ),
  steam: step(
    'Steam: do not go hotter. Hold where it is, lid ajar, until it stops; nobody in line with bore or vent.',
    'cold glass over the vent stays clear three times, a quarter of an hour apart',
    ['a screen between people and the vent', 'no blast'],
    ['hot-work', 'damp-lining'],
  ),
  fill: step(
    'Loose fill behind it: new and dry, tapped, topped up, steam holes left open.',
    'no hollow sound',
    ['the lining stands alone', 'the fill is dry'],
    ['dry-powder'],
  ),
  warm: step(
    'The drying fire: up slowly to the first hold, and no hotter. Lid on a brick gap, outdoors.',
    'no fog on cold glass three times, a quarter of an hour apart, and the hold is over',
    ['loses less than 0.5 % a day, or the days are up', 'not cool to the hand', 'no rain into it', 'steam holes open'],
    ['hot-work', 'damp-lining'],
  ),
  'warm-set': step(
    'The drying fire: up slowly to the first hold, and no hotter. Lid on a brick gap, outdoors.',
    'no fog on cold glass three times, a quarter of an hour apart, and the hold is over',
    ['hard or set as its bag says, and never frozen', 'no rain into it', 'steam holes open'],
    ['hot-work', 'damp-lining'],
  ),
  fire: step(
    'The first fire, empty, by the schedule, to the working temperature once.',
    'one even colour for as long as the last hold',
    ['no steam, no fog, no wet shell', 'someone with it all the time', 'no crucible and no metal in it'],
    ['hot-work', 'damp-lining'],
  ),
  look: step(
    'Cold: look for cracks, loose pieces, lid seat, tuyere; patch, and dry the patch as new.',
    'nothing loose above the crucible',
    ['cold right through: the shell is at its hottest hours after the fire'],
    ['silica-dust'],
  ),
} as const satisfies Readonly<Record<string, StepText>>;
export type StepId = keyof typeof stepTexts;
