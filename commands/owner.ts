import { AskError } from '../core/ask-error.ts';
import type { AnswerContext } from './command.ts';
import type { Owner } from './memory.ts';
import { choice } from './options.ts';

export const whoOption = () => choice({ label: 'whose: yours, or of this place', choices: ['me', 'place'] }).optional();

/** Whose a setting is to be. What holds for everybody in a place is set by those who look after it. */
export function ownerOf(
  who: 'me' | 'place' | undefined,
  { asker, place, mayModerate }: Pick<AnswerContext, 'asker' | 'place' | 'mayModerate'>,
): Owner {
  if (who !== 'place') return { asker };
  if (mayModerate) return { place };
  throw new AskError({
    code: 'refused',
    what: 'what holds for everybody here is set by those who moderate this place',
    expected: 'who=me, for yourself alone',
    example: 'me',
    option: 'who',
  });
}

export const isPlace = (owner: Owner): boolean => 'place' in owner;
