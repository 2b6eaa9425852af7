import { AskError } from '../../core/ask-error.ts';
import { refuseWarming } from '../../core/fire/propane/cylinder.ts';

const warming = /warm|heat|flame|torch|hot water|bath|blanket|sun\b/i;

/** Words that warm a bottle, wherever on the line they stand. @throws AskError `refused`, with what is asked instead. */
export function refuseWarmBottle(words: string, instead: { readonly option: string; readonly example: string }): void {
  if (!warming.test(words)) return;
  try {
    refuseWarming({ heat: words.trim().slice(0, 60) });
  } catch (error) {
    throw error instanceof AskError ? error.with(instead) : error;
  }
}
