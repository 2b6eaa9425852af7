import type { Pour } from '../pour.ts';
import { copperPours } from './pours-copper.ts';
import { lightPours } from './pours-light.ts';
import { otherPours } from './pours-other.ts';

/** Every metal, those that people ask for by one word first in its family. */
export const pours = [...lightPours, ...copperPours, ...otherPours] as const satisfies readonly Pour[];
