import type { Reach } from '../reach.ts';
import { capital } from '../sentence.ts';

/** How it will come, or why it won't. */
export function reachNote(reach: Reach): string {
  if (reach.kind === 'none') return `${capital(reach.why)}: write it down, or open the file with your calendar.`;
  return reach.said ?? (reach.kind === 'here' ? 'I write to you here.' : 'I write to you in direct messages.');
}
