import { type Item, itemsOf, type Stage } from './stage.ts';
import { restsOn, stagesFor } from './stages.ts';
import type { Traits } from './traits.ts';

/** What has been done of a build: ticked items, and kinds of entries its log holds. */
export interface Done {
  readonly ticked: ReadonlySet<string>;
  readonly logged: ReadonlySet<string>;
}

export interface ItemState extends Item {
  /** `9.2`: its stage's number and its own. */
  readonly number: string;
  readonly ticked: boolean;
}

export interface StageState {
  readonly stage: Stage;
  readonly number: number;
  readonly items: readonly ItemState[];
  readonly done: boolean;
  /** By an entry of the log rather than by ticks. */
  readonly byLog: boolean;
  /** Ticked, or begun, though something it rests on is open again. */
  readonly unsound: boolean;
}

export interface Progress {
  readonly stages: readonly StageState[];
  readonly done_count: number;
  readonly item_count: number;
  /** The first that is not done; none when all are. */
  readonly current: StageState | undefined;
}

/** Where a build stands. A stage is done when all its items are, or when the log holds what stands for it. */
export function progressOf(traits: Traits, done: Done): Progress {
  const bare = stagesFor(traits).map((stage, at) => {
    const items = itemsOf(stage, traits).map((item, index): ItemState => {
      const { id } = item;
      return { ...item, number: `${at + 1}.${index + 1}`, ticked: done.ticked.has(id) };
    });
    const ticked = items.every((one) => one.ticked);
    const byLog = !ticked && stage.logged !== undefined && done.logged.has(stage.logged);
    return { stage, number: at + 1, items, done: ticked || byLog, byLog };
  });
  const open = openIds(bare);
  const stages = bare.map((one): StageState => {
    const begun = one.byLog || one.items.some(({ ticked }) => ticked);
    return { ...one, unsound: begun && [...restsOn(one.stage.id)].some((id) => open.has(id)) };
  });
  const items = stages.flatMap((one) => one.items.map(({ ticked }) => ticked || one.byLog));
  return {
    stages,
    done_count: items.filter(Boolean).length,
    item_count: items.length,
    current: stages.find((one) => !one.done),
  };
}

type Bare = Omit<StageState, 'unsound'>;

/** Stages and items that are not done; what this build lacks is not among them. */
function openIds(stages: readonly Bare[]): ReadonlySet<string> {
  const open = stages.filter(({ done }) => !done);
  return new Set(
    open.flatMap(({ stage, items }) => [stage.id, ...items.flatMap(({ id, ticked }) => (ticked ? [] : [id]))]),
  );
}

export interface Missing {
  readonly at: StageState;
  /** Of that stage, what is open and rested on. */
  readonly items: readonly ItemState[];
}

/** What an item or a stage is held by, earliest first: empty where it may be ticked. */
export function missingFor(id: string, { stages }: Progress): readonly Missing[] {
  const needed = restsOn(id);
  return stages.flatMap((at): Missing[] => {
    if (at.done) return [];
    const items = at.items.filter((item) => !item.ticked && (needed.has(at.stage.id) || needed.has(item.id)));
    return items.length > 0 ? [{ at, items }] : [];
  });
}
