/** What every command of the family is: it works on memory alone and leaves the last question as it was. */
export const remindFamily = {
  hazards: [],
  figures: {},
  passing: true,
  family: 'Be called at a time, with what must hold before and what can hurt.',
} as const;
