import { blowers } from '../fire/data/blowers.ts';
import { fuels } from '../fire/fuel/fuel.ts';
import { finishes } from '../heat/finish.ts';
import { sources } from '../sources/sources.ts';
import { materials, pours, vessels } from './catalogue.ts';

let known: string | undefined;

/** Names the data that answers rest on: another value, range or source anywhere in the catalogue is another revision. */
export function catalogueRevision(): string {
  known ??= hashOf(JSON.stringify([materials, pours, vessels, fuels, blowers, finishes, sources]));
  return known;
}

/** FNV-1a of 32 bits, from two starts: to tell revisions apart, not to guard them. */
export function hashOf(text: string): string {
  let [one, other] = [0x811c9dc5, 0x9dc5811c];
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    one = Math.imul(one ^ code, 0x01000193);
    other = Math.imul(other ^ code, 0x01000193);
  }
  return [one, other].map((half) => (half >>> 0).toString(16).padStart(8, '0')).join('');
}
