import type { ItemState, Missing, Progress, StageState } from '../../core/build/progress.ts';
import { missingFor } from '../../core/build/progress.ts';
import { factsOf, words } from '../../core/build/stage.ts';
import type { Spread } from '../../core/materials/spread.ts';
import type { Figure } from '../../core/quantity/figure.ts';
import type { Card } from '../card.ts';
import type { AnswerContext } from '../command.ts';
import type { Tick } from '../memory-weeks.ts';
import { ageOf } from '../prices.ts';
import { checklistFigures } from './family.ts';
import type { Opened } from './opened.ts';

type Reader = Pick<AnswerContext, 'asker' | 'now'>;

/** People as a place may read them: no id, so that nobody is called. */
export function whoOf(ticks: readonly Tick[], asker: string): (tick: Tick) => string {
  const others = [...new Set(ticks.map(({ by }) => by))].filter((by) => by !== asker && by !== '');
  return ({ by }) => {
    if (by === asker) return 'you';
    if (by === '') return 'someone since forgotten';
    return others.length === 1 ? 'another' : `another (${others.indexOf(by) + 1} of ${others.length})`;
  };
}

const cells = 12;

/** Below it time is told in hours. */
const dayAndHalf_s = 36 * 3600;

/** `▓▓▓▓░░░░░░░░ 12 of 47`. */
export const barOf = ({ done_count, item_count }: Progress): string => {
  const full = item_count === 0 ? 0 : Math.floor((cells * done_count) / item_count);
  return `${'▓'.repeat(full)}${'░'.repeat(cells - full)} ${done_count} of ${item_count}`;
};

export function figuresOf(progress: Progress): readonly Figure[] {
  const { done_count, item_count, stages } = progress;
  const left = stages.filter(({ done }) => !done).map(({ stage }) => stage.time_s);
  const sum = (end: keyof Spread) => left.reduce((all, time) => all + time[end], 0);
  return [
    {
      id: 'checklist.done',
      label: checklistFigures['checklist.done'],
      value: Math.round((100 * done_count) / Math.max(1, item_count)) / 100,
      unit: '1',
      shown: 'percent',
      rangeBasis: 'none',
      note: barOf(progress),
    },
    ...(left.length === 0
      ? []
      : [
          {
            id: 'checklist.left',
            label: checklistFigures['checklist.left'],
            value: sum('typical'),
            unit: 's',
            shown: sum('high') < dayAndHalf_s ? 'hours' : 'days',
            range: { low: sum('low'), high: sum('high') },
            rangeBasis: 'judged',
            note: 'one stage after another, waiting included',
          } as const,
        ]),
  ];
}

/** Where every stage stands, a line each. */
export function stageTable({ list, progress, logged }: Opened, { asker, now }: Reader): NonNullable<Card['table']> {
  const who = whoOf(list.ticks, asker);
  return {
    columns: ['', '', 'stage', 'ticked', 'last'],
    rows: progress.stages.map((at) => {
      const own = list.ticks.filter(({ item }) => at.items.some(({ id }) => id === item));
      const last = own.toSorted((a, b) => a.at.getTime() - b.at.getTime()).at(-1);
      const entry = at.byLog && at.stage.logged !== undefined ? logged.get(at.stage.logged) : undefined;
      return [
        markOf(at, progress),
        String(at.number),
        at.stage.name,
        `${at.items.filter(({ ticked }) => ticked).length} of ${at.items.length}`,
        entry ? `in the log, ${ageOf(entry.at, now)}` : last ? `${who(last)}, ${ageOf(last.at, now)}` : '',
      ];
    }),
  };
}

function markOf(at: StageState, { current }: Progress): string {
  if (at.unsound) return '!';
  if (at.done) return '✓';
  return at === current ? '▸' : '·';
}

/** A stage in full. */
export function stageNotes(
  at: StageState,
  { kind, list, progress }: Opened,
  { asker, now }: Reader,
): readonly string[] {
  const { stage, items } = at;
  const { traits } = kind;
  const who = whoOf(list.ticks, asker);
  const tickOf = (id: string) => list.ticks.find(({ item }) => item === id);
  const held = missingFor(stage.id, progress);
  return [
    ...items.map(({ id, number, text, ticked }) => {
      const tick = tickOf(id);
      return `${number} ${ticked ? '✓' : '☐'} ${text}${tick ? ` (${who(tick)}, ${ageOf(tick.at, now)})` : ''}`;
    }),
    `Do: ${words(stage.do, traits)}`,
    `Done looks like: ${words(stage.done, traits)}`,
    `Goes wrong: ${words(stage.wrong, traits)}`,
    `Usual time: ${timeWords(stage.time_s)}, ${stage.standing}.`,
    ...(held.length > 0 ? [`Held until: ${heldWords(held)}.`] : []),
  ];
}

/** Ticked long ago, resting on something that has been opened since. */
export const unsoundNotes = ({ stages }: Progress): readonly string[] => {
  const shaky = stages.filter(({ unsound }) => unsound).map(({ number, stage }) => `${number} ${stage.name}`);
  return shaky.length === 0 ? [] : [`Marked !, as something it rests on is open: ${shaky.join('; ')}.`];
};

export function heldWords(missing: readonly Missing[]): string {
  const shown = missing.slice(0, 2).map(({ at, items }) => `${at.stage.name} (${itemWords(items)})`);
  const more = missing.length - shown.length;
  return [...shown, ...(more > 0 ? [`${more} more ${more === 1 ? 'stage' : 'stages'}`] : [])].join(', then ');
}

const itemWords = (items: readonly ItemState[]): string =>
  items.length <= 2
    ? items.map(({ number, text }) => `${number} ${text}`).join('; ')
    : `${items[0]!.number} to ${items.at(-1)!.number}`;

/** `2 to 16 days`, `½ to 3 h`, `1 h to 7 days`. */
export function timeWords({ low, high }: Spread): string {
  const unitOf = (seconds: number) => (seconds < dayAndHalf_s ? { name: 'h', of: 3600 } : { name: 'days', of: 86_400 });
  const number = (seconds: number, { of }: { of: number }) =>
    String(Number((seconds / of).toPrecision(2))).replace(/^0\.5$/, '½');
  const last = unitOf(high);
  const first = low === 86_400 && last.name === 'days' ? last : unitOf(low);
  const end = `${number(high, last)} ${last.name}`;
  if (low === high) return end;
  return `${number(low, first)}${first.name === last.name ? '' : ` ${first.name}`} to ${end}`;
}

/** Hazard facts of the stage at hand and of the one after it. */
export function factsAhead({ kind, progress }: Opened): readonly string[] {
  const open = progress.stages.filter(({ done }) => !done).slice(0, 2);
  return open.flatMap(({ stage }) => factsOf(stage, kind));
}

/** The next open things as lines to send: buttons on Discord, numbers elsewhere. */
export function tickLines({ list, progress }: Opened, most = 3): Card['next'] {
  const open = progress.stages
    .filter(({ done }) => !done)
    .flatMap(({ items }) => items.filter(({ ticked }) => !ticked));
  return open
    .filter(({ id }) => missingFor(id, progress).length === 0)
    .slice(0, most)
    .map(({ id, number, text }) => ({ label: `✓ ${number} ${text}`, line: `checklist tick ${id} list=${list.name}` }));
}
