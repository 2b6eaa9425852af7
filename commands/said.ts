import type { Answer } from './command.ts';

/** An answer in a sentence, of a command that calculates nothing: to name charcoal's price is not to burn any. */
export const said = (headline: string, more: Partial<Answer> = {}): Answer => ({
  headline,
  figures: [],
  assumed: [],
  sources: [],
  cautions: [],
  ...more,
});
