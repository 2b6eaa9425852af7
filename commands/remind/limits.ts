import { AskError } from '../../core/ask-error.ts';
import type { AnswerContext } from '../command.ts';
import { lineAs, type RemindOptions } from './options.ts';

/** Waiting, for one person. */
export const mostReminders = 100;

/** Asked once: the line as it was, with a zone to put in. */
const noZone = (line: string) =>
  new AskError({
    // No line to send as it stands: the zone in it is an example.
    code: 'refused',
    what: 'I do not know by which clock you live, so that hour could be any moment',
    expected: 'zone= with a city whose clocks are yours, once: it is kept',
    example: `${line} zone=Europe/Berlin`,
  });

export const zoneFor = async (asked: RemindOptions, { memory, asker }: AnswerContext): Promise<string> => {
  const zone = await memory.zone(asker);
  if (zone === undefined) throw noZone(lineAs(asked));
  return zone;
};

/** @throws AskError where so many more would be too many. */
export async function checkRoom(
  more: number,
  { memory, asker }: Pick<AnswerContext, 'memory' | 'asker'>,
  instead = 0,
): Promise<void> {
  const waiting = (await memory.reminders(asker)).length - instead;
  if (waiting + more <= mostReminders) return;
  throw new AskError({
    code: 'refused',
    what: `${waiting} reminders wait for you already, and ${mostReminders} are all that may`,
    expected: 'some of them dropped first',
    example: 'remind list',
  });
}
