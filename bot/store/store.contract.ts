import fc from 'fast-check';
import { beforeEach, describe, expect, test } from 'vitest';
import { inProcessMemory, type Memory, type Owner } from '../../commands/memory.ts';

const at = (seconds: number) => new Date(Date.UTC(2026, 0, 1) + seconds * 1000);
const ann = { asker: 'matrix:@ann:shed', place: 'matrix:!club:shed' };
const bob = { asker: 'discord:2', place: ann.place };
const mix = (amount: string) => ({ command: 'mix', options: { amount } });
const sand = { item: 'silica-sand', amount: { mass_kg: 22.68 }, price: 5.25, currency: 'USD' };
const propane = { item: 'Propane', amount: { volume_m3: 0.0189 }, price: 20, currency: 'EUR' };

/** What is told of somebody who builds nothing yet. */
const noWeeks = { drafts: [], reminders: [], checklists: [], entries: [] };

/** What every Memory does, wherever it keeps things. */
export function memoryContract(fresh: () => Promise<Memory>): void {
  let memory: Memory;
  beforeEach(async () => {
    memory = await fresh();
  });

  describe('last questions', () => {
    test('one a person and place: the newest', async () => {
      expect(await memory.lastAsk(ann)).toBeUndefined();
      await memory.rememberAsk({ ...ann, ...mix('30 L') });
      await memory.rememberAsk({ ...ann, ...mix('1½" × 2′ – "quoted"; \u0000 \ud83d\udd25') });
      await memory.rememberAsk({ ...ann, place: 'elsewhere', ...mix('1 cu ft') });
      expect(await memory.lastAsk(ann)).toEqual({ ...ann, ...mix('1½" × 2′ – "quoted"; \u0000 \ud83d\udd25') });
      expect(await memory.lastAsk({ ...ann, place: 'elsewhere' })).toMatchObject(mix('1 cu ft'));
      expect(await memory.lastAsk(bob)).toBeUndefined();
    });
  });

  describe('units', () => {
    test("the person's, else the place's", async () => {
      expect(await memory.units(ann)).toBeUndefined();
      await memory.setUnits({ place: ann.place }, 'US');
      expect(await memory.units(ann)).toBe('US');
      await memory.setUnits({ asker: ann.asker }, 'metric');
      expect(await memory.units(ann)).toBe('metric');
      expect(await memory.units(bob)).toBe('US');
      await memory.setUnits({ asker: ann.asker }, undefined);
      expect(await memory.units(ann)).toBe('US');
    });

    test('a person and a place of the same id are not taken for one another', async () => {
      await memory.setUnits({ asker: 'same' }, 'US');
      expect(await memory.units({ asker: 'other', place: 'same' })).toBeUndefined();
    });
  });

  describe('builds', () => {
    test('a save that is given an id is one revision, under whatever name it comes again', async () => {
      const save = (name: string) => memory.saveBuild(ann.asker, { id: 'once', name, ask: mix('30 L') }, at(1));
      const first = await save('can');
      expect(await save('can')).toEqual(first);
      expect(await save('can 2')).toEqual(first);
      expect(await memory.builds(ann.asker)).toEqual([first]);
      expect(await memory.saveBuild(ann.asker, { name: 'can', ask: mix('31 L') }, at(2))).toMatchObject({
        revision: 2,
      });
    });

    test('each save of a name, however it is written, is a revision', async () => {
      const first = await memory.saveBuild(ann.asker, { name: 'Big Can', ask: mix('30 L') }, at(1));
      expect(first).toEqual({ name: 'Big Can', revision: 1, ask: mix('30 L'), savedAt: at(1) });
      const second = await memory.saveBuild(ann.asker, { name: ' big CAN', ask: mix('40 L') }, at(2));
      expect(second.revision).toBe(2);
      expect(await memory.build(ann.asker, 'BIG can')).toEqual(second);
      expect(await memory.build(ann.asker, 'big can', 1)).toEqual(first);
      expect(await memory.build(ann.asker, 'big can', 3)).toBeUndefined();
      expect(await memory.revisions(ann.asker, 'big can')).toEqual([second, first]);
    });

    test('accents are matched however they are composed', async () => {
      await memory.saveBuild(ann.asker, { name: 'four à creuset', ask: mix('30 L') }, at(1));
      expect(await memory.build(ann.asker, 'Four a\u0300 creuset')).toBeDefined();
    });

    test('newest revisions, last saved first', async () => {
      await memory.saveBuild(ann.asker, { name: 'a', ask: mix('1 L') }, at(1));
      await memory.saveBuild(ann.asker, { name: 'b', ask: mix('2 L') }, at(2));
      await memory.saveBuild(ann.asker, { name: 'a', ask: mix('3 L') }, at(3));
      expect((await memory.builds(ann.asker)).map(({ name, revision }) => [name, revision])).toEqual([
        ['a', 2],
        ['b', 1],
      ]);
    });

    test('nobody sees those of another', async () => {
      await memory.saveBuild(ann.asker, { name: 'can', ask: mix('1 L') }, at(1));
      expect(await memory.build(bob.asker, 'can')).toBeUndefined();
      expect(await memory.builds(bob.asker)).toEqual([]);
      expect(await memory.dropBuild(bob.asker, 'can')).toBe(false);
      expect(await memory.build(ann.asker, 'can')).toBeDefined();
    });

    test('dropped with all revisions; a new one of the name begins at 1', async () => {
      await memory.saveBuild(ann.asker, { name: 'can', ask: mix('1 L') }, at(1));
      await memory.saveBuild(ann.asker, { name: 'can', ask: mix('2 L') }, at(2));
      expect(await memory.dropBuild(ann.asker, 'CAN')).toBe(true);
      expect(await memory.dropBuild(ann.asker, 'can')).toBe(false);
      expect(await memory.revisions(ann.asker, 'can')).toEqual([]);
      expect(await memory.saveBuild(ann.asker, { name: 'can', ask: mix('3 L') }, at(3))).toMatchObject({ revision: 1 });
    });

    test('a clock set back loses none and doubles none', async () => {
      const saved = [];
      for (const time of [at(100), at(50), at(50), at(-1000)]) {
        saved.push(await memory.saveBuild(ann.asker, { name: 'can', ask: mix(`${saved.length} L`) }, time));
      }
      expect(saved.map(({ revision }) => revision)).toEqual([1, 2, 3, 4]);
      expect(await memory.build(ann.asker, 'can')).toEqual(saved[3]);
      expect(await memory.revisions(ann.asker, 'can')).toEqual(saved.toReversed());
      expect(await memory.builds(ann.asker)).toEqual([saved[3]]);
    });

    test('saved at once, each is a revision of its own', async () => {
      const many = Array.from({ length: 20 }, (_, i) =>
        memory.saveBuild(ann.asker, { name: 'can', ask: mix(`${i} L`) }, at(i)),
      );
      const revisions = (await Promise.all(many)).map(({ revision }) => revision);
      expect(revisions.toSorted((a, b) => a - b)).toEqual(Array.from({ length: 20 }, (_, i) => i + 1));
    });
  });

  describe('shares', () => {
    test('one code a revision, read by anyone as it then was', async () => {
      expect(await memory.shareBuild(ann.asker, 'can')).toBeUndefined();
      const first = await memory.saveBuild(ann.asker, { name: 'can', ask: mix('1 L') }, at(1));
      const code = (await memory.shareBuild(ann.asker, 'Can')) ?? '';
      expect(code).toMatch(/^[2-9A-HJ-NP-Z]{8}$/);
      expect(await memory.shareBuild(ann.asker, 'can')).toBe(code);
      await memory.saveBuild(ann.asker, { name: 'can', ask: mix('2 L') }, at(2));
      expect(await memory.shareBuild(ann.asker, 'can')).not.toBe(code);
      expect(await memory.sharedBuild(` ${code.toLowerCase()} `)).toEqual(first);
      expect(await memory.sharedBuild('ZZZZZZZZ')).toBeUndefined();
    });

    test('what was shared outlives its build, and its code is not that of the next one of the name', async () => {
      const first = await memory.saveBuild(ann.asker, { name: 'can', ask: mix('1 L') }, at(1));
      const code = (await memory.shareBuild(ann.asker, 'can')) ?? '';
      await memory.dropBuild(ann.asker, 'can');
      expect(await memory.shareBuild(ann.asker, 'can')).toBeUndefined();
      await memory.saveBuild(ann.asker, { name: 'can', ask: mix('9 L') }, at(2));
      expect(await memory.shareBuild(ann.asker, 'can')).not.toBe(code);
      expect(await memory.sharedBuild(code)).toEqual(first);
    });
  });

  describe('prices', () => {
    test("the person's, then the place's for what the person has none of", async () => {
      expect(await memory.prices(ann)).toEqual([]);
      await memory.setPrice({ place: ann.place }, { ...sand, price: 9 }, at(1));
      await memory.setPrice({ place: ann.place }, propane, at(2));
      await memory.setPrice({ asker: ann.asker }, { ...sand, item: 'Silica-Sand' }, at(3));
      expect(await memory.prices(ann)).toEqual([
        { ...sand, item: 'Silica-Sand', setAt: at(3), owner: 'asker' },
        { ...propane, setAt: at(2), owner: 'place' },
      ]);
      expect(await memory.prices(bob)).toHaveLength(2);
    });

    test('one an item, the newest; dropped by name', async () => {
      const owner = { asker: ann.asker };
      await memory.setPrice(owner, sand, at(1));
      await memory.setPrice(owner, { ...sand, amount: { volume_m3: 0.02 }, price: 7 }, at(2));
      expect(await memory.prices(ann)).toEqual([
        { ...sand, amount: { volume_m3: 0.02 }, price: 7, setAt: at(2), owner: 'asker' },
      ]);
      expect(await memory.dropPrice({ place: ann.place }, sand.item)).toBe(false);
      expect(await memory.dropPrice(owner, ' SILICA-sand ')).toBe(true);
      expect(await memory.dropPrice(owner, sand.item)).toBe(false);
      expect(await memory.prices(ann)).toEqual([]);
    });
  });

  describe('one person', () => {
    const keepSomething = async (asker: string) => {
      await memory.rememberAsk({ asker, place: ann.place, ...mix('30 L') });
      await memory.setUnits({ asker }, 'US');
      await memory.saveBuild(asker, { name: 'can', ask: mix('1 L') }, at(1));
      await memory.saveBuild(asker, { name: 'can', ask: mix('2 L') }, at(2));
      await memory.setPrice({ asker }, sand, at(3));
      return (await memory.shareBuild(asker, 'can')) ?? '';
    };

    test('reads everything kept of them', async () => {
      const code = await keepSomething(ann.asker);
      await memory.setUnits({ place: ann.place }, 'metric');
      expect(await memory.kept(ann.asker)).toEqual({
        asker: ann.asker,
        units: 'US',
        lastAsks: [{ ...mix('30 L'), place: ann.place }],
        builds: [
          { name: 'can', revision: 1, ask: mix('1 L'), savedAt: at(1) },
          { name: 'can', revision: 2, ask: mix('2 L'), savedAt: at(2) },
        ],
        shared: [{ code, name: 'can' }],
        prices: [{ ...sand, setAt: at(3) }],
        ...noWeeks,
      });
    });

    test('is forgotten whole, shares included; others and places are not', async () => {
      const code = await keepSomething(ann.asker);
      const other = await keepSomething(bob.asker);
      await memory.setPrice({ place: ann.place }, propane, at(4));
      await memory.forget(ann.asker);
      expect(await memory.kept(ann.asker)).toEqual({
        asker: ann.asker,
        lastAsks: [],
        builds: [],
        shared: [],
        prices: [],
        ...noWeeks,
      });
      expect(await memory.sharedBuild(code)).toBeUndefined();
      expect(await memory.sharedBuild(other)).toBeDefined();
      expect((await memory.kept(bob.asker)).builds).toHaveLength(2);
      expect(await memory.prices(ann)).toEqual([{ ...propane, setAt: at(4), owner: 'place' }]);
    });

    test('is matched by the very id: quotes, wild cards, case', async () => {
      for (const asker of ["o'ann", 'o%ann', 'o_ann', 'O_ANN', 'o"ann', 'o\\ann']) {
        await memory.setUnits({ asker }, 'US');
        await memory.forget('o_ann');
        expect(await memory.units({ asker, place: 'x' })).toBe(asker === 'o_ann' ? undefined : 'US');
      }
    });
  });

  test('does as the memory in process does, whatever is done in whatever order', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(deed, { maxLength: 30 }), async (deeds) => {
        const model = inProcessMemory();
        for (const asker of askers) await memory.forget(asker);
        for (const place of places) {
          await memory.setUnits({ place }, undefined);
          for (const item of items) await memory.dropPrice({ place }, item);
        }
        for (const [i, one] of deeds.entries()) {
          expect(await done(memory, one, at(i)), JSON.stringify(one)).toEqual(await done(model, one, at(i)));
        }
        expect(await everything(memory)).toEqual(await everything(model));
      }),
      { numRuns: 30 },
    );
  });
}

const askers = ['ann', 'bob'] as const;
const places = ['shed', 'ann'] as const;
const items = ['sand', 'Clay'] as const;
const names = ['can', 'CAN', 'pot'] as const;

const owner: fc.Arbitrary<Owner> = fc.oneof(
  fc.constantFrom(...askers).map((asker) => ({ asker })),
  fc.constantFrom(...places).map((place) => ({ place })),
);
const word = fc.string({ unit: 'grapheme', maxLength: 20 });
const question = fc.record({ command: fc.constant('mix'), options: fc.dictionary(fc.constantFrom('a', 'b'), word) });
const deed = fc.oneof(
  fc.record({
    kind: fc.constant('ask'),
    asker: fc.constantFrom(...askers),
    place: fc.constantFrom(...places),
    question,
  }),
  fc.record({ kind: fc.constant('units'), owner, units: fc.constantFrom('US', 'metric', undefined) }),
  fc.record({
    kind: fc.constant('save'),
    asker: fc.constantFrom(...askers),
    name: fc.constantFrom(...names),
    question,
  }),
  fc.record({ kind: fc.constant('drop'), asker: fc.constantFrom(...askers), name: fc.constantFrom(...names) }),
  fc.record({ kind: fc.constant('share'), asker: fc.constantFrom(...askers), name: fc.constantFrom(...names) }),
  fc.record({
    kind: fc.constant('price'),
    owner,
    item: fc.constantFrom(...items),
    price: fc.double({ min: 0, max: 1e6, noNaN: true }),
  }),
  fc.record({ kind: fc.constant('free'), owner, item: fc.constantFrom(...items) }),
  fc.record({ kind: fc.constant('forget'), asker: fc.constantFrom(...askers) }),
);
type Deed = typeof deed extends fc.Arbitrary<infer One> ? One : never;

async function done(memory: Memory, one: Deed, now: Date): Promise<unknown> {
  switch (one.kind) {
    case 'ask':
      return memory.rememberAsk({ asker: one.asker, place: one.place, ...one.question });
    case 'units':
      return memory.setUnits(one.owner, one.units);
    case 'save':
      return memory.saveBuild(one.asker, { name: one.name, ask: one.question }, now);
    case 'drop':
      return memory.dropBuild(one.asker, one.name);
    case 'share': {
      const code = await memory.shareBuild(one.asker, one.name);
      return code === undefined ? undefined : memory.sharedBuild(code);
    }
    case 'price':
      return memory.setPrice(one.owner, { ...sand, item: one.item, price: one.price }, now);
    case 'free':
      return memory.dropPrice(one.owner, one.item);
    case 'forget':
      return memory.forget(one.asker);
  }
}

/** Order is compared only where the port promises one. */
async function everything(memory: Memory): Promise<unknown> {
  const byText = (all: readonly unknown[]) => all.map((one) => JSON.stringify(one)).toSorted();
  const found = [];
  for (const asker of askers) {
    const { units, lastAsks, builds, shared, prices } = await memory.kept(asker);
    found.push({
      units,
      lastAsks: byText(lastAsks.map(({ place, options }) => [place, Object.entries(options)])),
      builds: byText(builds.map(({ name, revision, ask, savedAt }) => [name, revision, ask.options, savedAt])),
      shared: shared.map(({ name }) => name).toSorted(),
      prices: byText(prices.map(({ item, price, setAt }) => [item, price, setAt])),
    });
    found.push(await memory.builds(asker));
    for (const name of names) found.push(await memory.revisions(asker, name));
    for (const place of places) {
      found.push(await memory.lastAsk({ asker, place }), await memory.units({ asker, place }));
      const known = await memory.prices({ asker, place });
      found.push(byText(known.map((one) => [one.owner, one.item, one.price])));
    }
  }
  return found;
}
