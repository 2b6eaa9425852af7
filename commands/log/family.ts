import { AskError } from '../../core/ask-error.ts';
import { daysBetween, isoDay, middayOf, readDay } from '../../core/dry/calendar.ts';
import { findBuild } from '../build/find.ts';
import type { Assumption } from '../card.ts';
import type { AnswerContext } from '../command.ts';
import type { Build, Memory } from '../memory.ts';
import type { LogEntry } from '../memory-weeks.ts';
import { about, text } from '../options.ts';

/** What every command of the family is: it works on memory and leaves the last question as it was. */
export const logFamily = {
  passing: true,
  family: 'What was done and measured on a build: for=<build> then reckons with it.',
} as const;

export const buildOption = text({ label: 'build', most: 80 }).optional();
export const onOption = text({ label: 'day, as 2026-04-12', most: 20 }).optional();

/** Of one build: what somebody writes down by hand, not what a script can. */
const mostEntries = 500;

export interface Found {
  readonly build: Build;
  readonly assumed: readonly Assumption[];
}

/** The build that is named, else the only or the newest one. */
export async function buildFor(
  typed: string | undefined,
  { asker, memory }: Pick<AnswerContext, 'asker' | 'memory'>,
): Promise<Found> {
  if (typed !== undefined) return { build: await findBuild(typed, { asker, memory, option: 'build' }), assumed: [] };
  const [newest, ...others] = await memory.builds(asker);
  if (!newest) throw noBuild();
  const [other] = others;
  return {
    build: newest,
    assumed: other ? [{ text: `${newest.name}, the build you kept last`, override: `build=${other.name}` }] : [],
  };
}

const noBuild = () =>
  new AskError({
    code: 'nothing-before',
    what: 'a log belongs to a build, and you have kept none',
    expected: 'a size, mix, wall or fuel kept under a name first',
    example: 'build save club furnace for=(size can 20 gal crucible=6 in x 8 in)',
  });

const oldest = readDay('2000-01-01');

/** The moment something is logged for: now, or midday of an earlier day. What lies ahead has not been measured. */
export async function momentOf(
  typed: string | undefined,
  { asker, memory, now }: Pick<AnswerContext, 'asker' | 'memory' | 'now'>,
): Promise<Date> {
  const said = (typed ?? 'today').trim().toLowerCase();
  if (said === 'today') return now;
  const today = middayOf(await localDay(asker, memory, now));
  const day = said === 'yesterday' ? new Date(today.getTime() - 86_400_000) : about('on', () => readDay(said));
  const ahead = daysBetween(today, day);
  if (ahead > 0)
    throw new AskError({
      code: 'out-of-range',
      what: `${isoDay(day)} is ${ahead === 1 ? 'tomorrow' : `${ahead} days ahead`}: nothing has been measured then`,
      expected: 'a day that has been',
      example: isoDay(today),
      option: 'on',
    });
  if (day < oldest)
    throw new AskError({
      code: 'out-of-range',
      what: `${isoDay(day)} is long before any build kept here`,
      expected: 'a day since 2000',
      example: isoDay(today),
      option: 'on',
    });
  return ahead === 0 ? now : day;
}

/** The asker's calendar day, where their zone is known, as a moment of it by UTC. */
async function localDay(asker: string, memory: Memory, now: Date): Promise<Date> {
  const timeZone = (await memory.zone(asker)) ?? 'UTC';
  return readDay(new Intl.DateTimeFormat('sv-SE', { timeZone, dateStyle: 'short' }).format(now));
}

export async function addEntry(
  { build }: Found,
  entry: Omit<LogEntry, 'id' | 'build'>,
  { asker, memory }: Pick<AnswerContext, 'asker' | 'memory'>,
): Promise<LogEntry> {
  const { length } = await memory.entries(asker, build.name);
  if (length >= mostEntries)
    throw new AskError({
      code: 'refused',
      what: `the log of ${build.name} has ${length} entries, which is all that is kept`,
      expected: 'one of them dropped',
      example: 'log drop 1',
    });
  return memory.addEntry(asker, { build: build.name, ...entry });
}

/** `2026-04-12`. */
export const dayOf = ({ at }: Pick<LogEntry, 'at'>): string => isoDay(at);
