import { AskError } from '../../core/ask-error.ts';
import type { Memory } from '../memory.ts';

/** Of builds a person and of revisions a build: what one keeps by hand, not what a script can. */
const most = 200;

/** @throws AskError `refused`, where there is no room for one more revision, or build, of this name. */
export async function checkRoom(asker: string, name: string, memory: Memory): Promise<void> {
  const { length } = await memory.revisions(asker, name);
  if (length >= most) throw full(`${name} has ${length} revisions`);
  if (length > 0) return;
  const builds = await memory.builds(asker);
  if (builds.length >= most) throw full(`you have ${builds.length} builds`);
}

const full = (what: string) =>
  new AskError({
    code: 'refused',
    what: `${what}, which is all that is kept`,
    expected: 'another name, or one dropped by build drop',
    example: 'build list',
  });
