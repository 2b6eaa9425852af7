import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cautionsFor, localRules } from '../hazard/cautions.ts';
import { isFact } from '../hazard/facts.ts';
import { sourceOf } from '../sources/sources.ts';
import { type Done, missingFor, progressOf } from './progress.ts';
import { type BuildKind, factsOf, itemsOf, words } from './stage.ts';
import { allStages, itemIds, restsOn, stagesFor } from './stages.ts';
import { everyTraits, type Traits, traitValues } from './traits.ts';

const every = everyTraits();
const gas: Traits = { fuel: 'gas', lining: 'rammed', fill: 'loose', vessel: 'open', zinc: 'no', forms: 'mesh' };
const bare = (traits: Traits): BuildKind => ({ traits, facts: { vessel: [], lining: [], fill: [], metal: [] } });
const state = (traits: Traits, ticked: Iterable<string>, logged: readonly string[] = []) => {
  const done: Done = { ticked: new Set(ticked), logged: new Set(logged) };
  return progressOf(traits, done);
};

describe('the stages', () => {
  const ids = allStages.flatMap(({ id, items }) => [id, ...items.map((item) => item.id)]);

  it('and their items have ids of their own, and rest on what there is', () => {
    expect(new Set(ids).size).toBe(ids.length);
    for (const { holds, items } of allStages) {
      for (const held of [...holds, ...items.flatMap((item) => item.holds ?? [])]) expect(ids).toContain(held);
    }
  });

  it('stand after everything they rest on, so no circle holds itself', () => {
    const stageAt = (id: string) =>
      allStages.findIndex((one) => one.id === id || one.items.some((item) => item.id === id));
    for (const [at, stage] of allStages.entries()) {
      for (const held of stage.holds) expect(stageAt(held)).toBeLessThan(at);
      for (const [index, item] of stage.items.entries()) {
        for (const held of item.holds ?? []) {
          const own = stage.items.findIndex(({ id }) => id === held);
          if (own >= 0) expect(own).toBeLessThan(index);
          else expect(stageAt(held)).toBeLessThan(at);
        }
      }
    }
    for (const id of ids) expect(restsOn(id).has(id)).toBe(false);
  });

  it.each(allStages.map((stage) => [stage.id, stage] as const))('%s is sourced, calm and short', (_id, stage) => {
    expect(sourceOf(stage.source).id).toBe(stage.source);
    const { low, typical, high } = stage.time_s;
    expect(low > 0 && low <= typical && typical <= high).toBe(true);
    for (const fact of stage.facts) expect(isFact(typeof fact === 'string' ? fact : fact.fact)).toBe(true);
    for (const item of stage.items) expect(item.text.length).toBeLessThanOrEqual(100);
    for (const traits of every) {
      for (const lines of [stage.do, stage.done, stage.wrong]) {
        const said = words(lines, traits);
        if (stagesFor(traits).includes(stage)) expect(said, JSON.stringify(traits)).not.toBe('');
        expect(said).not.toContain('!');
        expect(said.length).toBeLessThanOrEqual(340);
      }
    }
  });

  it('all have something to tick, in every kind of build', () => {
    for (const traits of every) {
      for (const stage of stagesFor(traits)) expect(itemsOf(stage, traits), stage.id).not.toEqual([]);
    }
  });

  it('with fire, metal or damp in them say what can hurt', () => {
    for (const traits of every) {
      for (const stage of stagesFor(traits)) {
        const facts = factsOf(stage, bare(traits));
        if (!facts.some((fact) => ['hot-work', 'molten-metal', 'charcoal', 'propane'].includes(fact))) continue;
        const cautions = cautionsFor({ facts });
        expect(cautions.length, stage.id).toBeGreaterThan(1);
      }
    }
    const lit = ['trial', 'small-fires', 'first-burn', 'melt'];
    for (const stage of allStages.filter(({ id }) => lit.includes(id))) {
      expect(cautionsFor({ facts: factsOf(stage, bare(gas)) }).at(-1), stage.id).toBe(localRules);
    }
  });

  it('bring the hazards of what is built to the stages that handle it', () => {
    const kind: BuildKind = {
      traits: gas,
      facts: { vessel: ['galvanised'], lining: ['caustic'], fill: ['ceramic-fibre'], metal: ['zinc-alloy'] },
    };
    const facts = (id: string) => factsOf(allStages.find((one) => one.id === id)!, kind);
    expect(facts('melt')).toContain('zinc-alloy');
    expect(facts('fill')).toContain('ceramic-fibre');
    expect(facts('temper')).toContain('caustic');
    expect(facts('shell')).toContain('galvanised');
    expect(facts('forms')).not.toContain('zinc-alloy');
  });
});

describe('what applies', () => {
  const has = (traits: Traits, id: string) => itemIds(traits).includes(id);

  it('follows fuel, lining, fill, vessel and zinc', () => {
    expect(has(gas, 'no-bubbles')).toBe(true);
    expect(has({ ...gas, fuel: 'charcoal' }, 'no-bubbles')).toBe(false);
    expect(has({ ...gas, fuel: 'oil' }, 'oil-shut')).toBe(true);
    expect(has(gas, 'mix-rested')).toBe(true);
    expect(has({ ...gas, lining: 'cast' }, 'mix-rested')).toBe(false);
    expect(has({ ...gas, zinc: 'yes' }, 'zinc-cleared')).toBe(true);
    expect(has({ ...gas, vessel: 'cylinder' }, 'cylinder-opened')).toBe(true);
    expect(stagesFor({ ...gas, fill: 'none' }).map(({ id }) => id)).not.toContain('fill');
  });

  it('are as many kinds of build as there are values of each trait', () => {
    const count = Object.values(traitValues).reduce((all, values) => all * values.length, 1);
    expect(new Set(every.map((one) => JSON.stringify(one))).size).toBe(count);
  });
});

describe('progress', () => {
  it('reaches the end from top to bottom in every kind of build, one stage after another', () => {
    for (const traits of every) {
      const ticked: string[] = [];
      for (const id of itemIds(traits)) {
        expect(missingFor(id, state(traits, ticked)), `${id} in ${JSON.stringify(traits)}`).toEqual([]);
        ticked.push(id);
      }
      const all = state(traits, ticked);
      expect(all.current).toBeUndefined();
      expect(all.done_count).toBe(all.item_count);
    }
  });

  it('stops at every single hold: without it nothing that rests on it may be ticked', () => {
    const all = itemIds(gas);
    for (const id of all) {
      const needed = stagesFor(gas).flatMap((stage) =>
        itemsOf(stage, gas).filter((item) => restsOn(id).has(stage.id) || restsOn(id).has(item.id)),
      );
      for (const item of needed) {
        const missing = missingFor(
          id,
          state(
            gas,
            all.filter((one) => one !== item.id && one !== id),
          ),
        );
        expect(
          missing.flatMap(({ items }) => items.map((one) => one.id)),
          `${id} without ${item.id}`,
        ).toContain(item.id);
      }
    }
  });

  it('passes over a stage the build lacks to what that stage rests on', () => {
    const none: Traits = { ...gas, fill: 'none' };
    const before = itemIds(none).filter((id) => !['pot-set', 'sleeve-set', 'lid-seats'].includes(id));
    expect(missingFor('in-steps', state(none, before)).map(({ at }) => at.stage.id)).toEqual(['assemble']);
  });

  it('takes a drying in the log for the slow dry, and for nothing before it', () => {
    const until = (id: string) => itemIds(gas).slice(0, itemIds(gas).indexOf(id));
    const dry = state(gas, until('covered'), ['drying']);
    expect(dry.stages.find(({ stage }) => stage.id === 'dry')).toMatchObject({ done: true, byLog: true });
    expect(missingFor('lumps-only', dry)).toEqual([]);
    expect(missingFor('lumps-only', state(gas, until('covered'), ['weighing'])).length).toBe(1);
    const dryHoles = until('covered').filter((id) => id !== 'vent-cut');
    expect(missingFor('lumps-only', state(gas, dryHoles, ['drying'])).map(({ at }) => at.stage.id)).toEqual(['wet']);
  });

  it('marks what rests on something that was opened again', () => {
    const all = itemIds(gas).filter((id) => id !== 'weight-steady');
    const shaky = state(gas, all)
      .stages.filter(({ unsound }) => unsound)
      .map(({ stage }) => stage.id);
    expect(shaky).toContain('melt');
    expect(shaky).not.toContain('ram');
  });
});

describe('any order of ticks', () => {
  const attempts = fc.array(
    fc.record({
      at: fc.nat(80),
      what: fc.oneof({ weight: 12, arbitrary: fc.constant('tick') }, { weight: 1, arbitrary: fc.constant('untick') }),
    }),
    { minLength: 100, maxLength: 600 },
  );

  it('leads to no fire in a wet lining: small fires, burn and melt come after the dry, whatever was taken back', () => {
    let melts = 0;
    const fires = new Set(
      ['small-fires', 'first-burn', 'melt'].flatMap((id) =>
        allStages.find((one) => one.id === id)!.items.map((item) => item.id),
      ),
    );
    fc.assert(
      fc.property(fc.constantFrom(...every), attempts, fc.boolean(), (traits, tries, log) => {
        const all = itemIds(traits);
        const ticked = new Set<string>();
        // Mostly what may come next, so that long orders are walked to their end too.
        for (const { at, what } of tries) {
          const progress = state(traits, ticked, log ? ['drying'] : []);
          const free = all.filter((id) => !ticked.has(id) && missingFor(id, progress).length === 0);
          const id = at % 3 === 0 ? all[at % all.length]! : (free[at % Math.max(1, free.length)] ?? all[0]!);
          if (what === 'untick') ticked.delete(id);
          else if (missingFor(id, progress).length === 0) {
            if (fires.has(id)) {
              const dry = progress.stages.find(({ stage }) => stage.id === 'dry')!;
              expect(dry.done).toBe(true);
              expect(log || dry.items.every((one) => one.ticked)).toBe(true);
            }
            if (id === 'poured') melts += 1;
            ticked.add(id);
          }
        }
      }),
      { numRuns: 150 },
    );
    // It would say nothing if no order ever came so far.
    expect(melts).toBeGreaterThan(5);
  }, 60_000);
});
