import type { Memory } from '../../commands/memory.ts';
import { AskError } from '../../core/ask-error.ts';

/**
 * A memory whose failures stop no answer that can do without it: last question, units and prices count as not
 * remembered, and a question is answered even if it can't be remembered. What was asked of the memory itself (saving,
 * finding, forgetting) is refused in words for the asker. Both are told to `warn`.
 * After a failure the former are not tried for `rest_ms`, so that a server that hangs holds up one answer, not each.
 */
export function forgiving(
  memory: () => Promise<Memory>,
  warn: (error: unknown) => void,
  { rest_ms = 5000, clock = () => performance.now() }: { rest_ms?: number; clock?: () => number } = {},
): Memory {
  let restUntil = Number.NEGATIVE_INFINITY;

  const softly = async <Value>(otherwise: Value, use: (memory: Memory) => Promise<Value>): Promise<Value> => {
    if (clock() < restUntil) return otherwise;
    try {
      return await use(await memory());
    } catch (error) {
      restUntil = clock() + rest_ms;
      warn(error);
      return otherwise;
    }
  };

  const firmly = async <Value>(use: (memory: Memory) => Promise<Value>): Promise<Value> => {
    try {
      return await use(await memory());
    } catch (error) {
      warn(error);
      throw unreachable();
    }
  };

  return {
    lastAsk: (key) => softly(undefined, (kept) => kept.lastAsk(key)),
    rememberAsk: (ask) => softly(undefined, (kept) => kept.rememberAsk(ask)),
    units: (key) => softly(undefined, (kept) => kept.units(key)),
    prices: (key) => softly([], (kept) => kept.prices(key)),
    setUnits: (owner, units) => firmly((kept) => kept.setUnits(owner, units)),
    saveBuild: (asker, build, now) => firmly((kept) => kept.saveBuild(asker, build, now)),
    build: (asker, name, revision) => firmly((kept) => kept.build(asker, name, revision)),
    builds: (asker) => firmly((kept) => kept.builds(asker)),
    revisions: (asker, name) => firmly((kept) => kept.revisions(asker, name)),
    dropBuild: (asker, name) => firmly((kept) => kept.dropBuild(asker, name)),
    shareBuild: (asker, name) => firmly((kept) => kept.shareBuild(asker, name)),
    sharedBuild: (code) => firmly((kept) => kept.sharedBuild(code)),
    setPrice: (owner, price, now) => firmly((kept) => kept.setPrice(owner, price, now)),
    dropPrice: (owner, item) => firmly((kept) => kept.dropPrice(owner, item)),
    // Without it the place's clock would be taken for the asker's: asked for like what is kept itself.
    zone: (asker) => firmly((kept) => kept.zone(asker)),
    setZone: (asker, zone) => firmly((kept) => kept.setZone(asker, zone)),
    draft: (key) => softly(undefined, (kept) => kept.draft(key)),
    keepDraft: (key, ask) => softly(undefined, (kept) => kept.keepDraft(key, ask)),
    setReminders: (asker, wanted, plan) => firmly((kept) => kept.setReminders(asker, wanted, plan)),
    reminders: (asker) => firmly((kept) => kept.reminders(asker)),
    dropReminders: (asker, which) => firmly((kept) => kept.dropReminders(asker, which)),
    openChecklist: (key, list, now) => firmly((kept) => kept.openChecklist(key, list, now)),
    checklist: (place, name) => firmly((kept) => kept.checklist(place, name)),
    checklists: (place) => firmly((kept) => kept.checklists(place)),
    tick: (id, item, given) => firmly((kept) => kept.tick(id, item, given)),
    untick: (id, item) => firmly((kept) => kept.untick(id, item)),
    dropChecklist: (id) => firmly((kept) => kept.dropChecklist(id)),
    addEntry: (asker, entry) => firmly((kept) => kept.addEntry(asker, entry)),
    entries: (asker, build) => firmly((kept) => kept.entries(asker, build)),
    dropEntry: (asker, id) => firmly((kept) => kept.dropEntry(asker, id)),
    kept: (asker) => firmly((kept) => kept.kept(asker)),
    forget: (asker) => firmly((kept) => kept.forget(asker)),
  };
}

const unreachable = () =>
  new AskError({
    code: 'impossible',
    what: 'what is remembered cannot be reached just now',
    expected: 'the same again in a minute; questions that need nothing remembered are answered as ever',
    example: 'mix 30 L',
  });
