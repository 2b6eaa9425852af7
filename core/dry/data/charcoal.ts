import { PRACTICE } from '../../materials/data/make.ts';
import type { SourceId, Standing } from '../../sources/source.ts';

/** The same fire for those without a thermometer: what goes in, what is seen, when to go on. */
export interface CoalStage {
  /** Stages of the schedule that it stands for: it takes as long as they do. */
  readonly covers: readonly string[];
  readonly put_in: string;
  readonly see: string;
  readonly go_on: string;
  readonly source: SourceId;
  readonly standing: Standing;
}

export const coalStages: readonly CoalStage[] = [
  {
    covers: ['free-water'],
    put_in: '3 to 5 lit lumps of charcoal on the floor, lid on a brick gap, no blast; one or two more each half hour',
    see: 'Cold glass over the vent fogs; the shell gets hand-warm and may sweat',
    go_on: 'the glass stays clear three times, a quarter of an hour apart',
    ...PRACTICE,
  },
  {
    covers: ['bound-water', 'hydrates', 'binder'],
    put_in: 'a double handful of charcoal, natural draught; topped up before it dies',
    see: 'Smell of earth, then of burned roots; soot on the walls; steam holes breathe',
    go_on: 'no steam and no smell any more, and the shell is dry',
    ...PRACTICE,
  },
  {
    covers: ['quartz'],
    put_in: 'scrap wood in sticks, a few at a time, then charcoal under them; still no blast',
    see: 'The soot burns off the walls from the bottom up; first dull red in the dark',
    go_on: 'the walls are clean and evenly dull red',
    ...PRACTICE,
  },
  {
    covers: ['working'],
    put_in: 'charcoal to half the bore, lowest blast; more of both by and by',
    see: 'Cherry red, then orange; no dark patch is left',
    go_on: 'the colour has been even for as long as the hold: blast off, pipe off, lid and tuyere closed till morning',
    ...PRACTICE,
  },
];

/** A jump of the hot face that means: take coals out. */
export const coalJump = { rise_dK: 50, within_s: 600, ...PRACTICE } as const;
