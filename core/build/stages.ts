import { firing } from './data/firing.ts';
import { making } from './data/making.ts';
import { itemsOf, type Stage } from './stage.ts';
import { applies, type Traits } from './traits.ts';

/** Every stage, in the order of the work: what one rests on stands before it. */
export const allStages: readonly Stage[] = Object.freeze([...making, ...firing]);

/** Those that this build has. */
export const stagesFor = (traits: Traits): readonly Stage[] => allStages.filter(({ when }) => applies(when, traits));

const byId = new Map<string, { readonly stage: Stage; readonly holds: readonly string[] }>(
  allStages.flatMap((stage) => [
    [stage.id, { stage, holds: stage.holds }] as const,
    ...stage.items.map(({ id, holds = [] }) => [id, { stage, holds: [...stage.holds, ...holds] }] as const),
  ]),
);

export const stageOf = (id: string): Stage | undefined => byId.get(id)?.stage;

const known = new Map<string, ReadonlySet<string>>();

/** Everything that a stage or item rests on, however far back; what a build lacks still passes on its own holds. */
export function restsOn(id: string): ReadonlySet<string> {
  const found = known.get(id);
  if (found) return found;
  const all = new Set<string>();
  const add = (one: string): void => {
    if (all.has(one)) return;
    all.add(one);
    for (const held of byId.get(one)?.holds ?? []) add(held);
    // A stage held to is all of its items, with what each of those rests on.
    const stage = byId.get(one)?.stage;
    if (stage?.id === one) for (const item of stage.items) for (const held of item.holds ?? []) add(held);
  };
  for (const held of byId.get(id)?.holds ?? []) add(held);
  known.set(id, all);
  return all;
}

/** Ids to tick, in order. */
export const itemIds = (traits: Traits): readonly string[] =>
  stagesFor(traits).flatMap((stage) => itemsOf(stage, traits).map(({ id }) => id));
