/** What every command of the family is: it works on memory alone and leaves the last question as it was. */
export const priceFamily = {
  hazards: [],
  figures: {},
  passing: true,
  family: 'What you pay, or people here do: mix and fuel reckon with it.',
} as const;
