import { describe, expect, it } from 'vitest';
import { itemIds } from '../../core/build/stages.ts';
import { cautionsFor } from '../../core/hazard/cautions.ts';
import { talk as talkAt } from '../../test/contract/conversation.ts';
import { answerAsk } from '../answer.ts';
import type { Card } from '../card.ts';
import type { AnswerContext } from '../command.ts';
import { parseLine } from '../grammar.ts';
import { commands } from '../registry.ts';
import { needList } from './opened.ts';
import { shopList } from './shop-rows.ts';

const now = new Date('2026-02-03T12:00:00Z');
const size = 'size can 20 gal crucible=5 in x 6 in';

function talk(talker: Parameters<typeof talkAt>[0] = {}) {
  const talked = talkAt({ now, mayModerate: false, ...talker });
  const context = talked.context();
  const inside: AnswerContext = {
    ...context,
    units: 'US',
    commands,
    parse: (line) => parseLine(line, commands, context),
    ask: (one) => answerAsk(one, context),
    fill: async (one) => one,
  };
  return { ...talked, inside };
}

const done = (card: Card) => card.figures.find(({ id }) => id === 'checklist.done')?.note;
const figure = (card: Card, id: string) => card.figures.find((one) => one.id === id);
const started = async () => {
  const ann = talk();
  await ann.card(`checklist start hob for=(${size})`);
  return ann;
};

/** Ticks everything up to an item, as a builder would, with no list of ours in between. */
async function tickUntil(id: string, { card, inside }: ReturnType<typeof talk>): Promise<void> {
  const { kind } = await needList('hob', inside);
  const all = itemIds(kind.traits);
  for (const one of all.slice(0, all.indexOf(id))) await card(`checklist tick ${one}`);
}

describe('a checklist', () => {
  it('starts from the only build, and is the newest of the place from then on, for everybody there', async () => {
    const ann = talk();
    await ann.card(`build save hob for=(${size})`);
    expect((await ann.card('checklist')).headline).toMatch(/^Started\. hob: 0 of \d+ done/);
    const ben = talk({ memory: ann.memory, asker: 'ben' });
    expect((await ben.card('checklist')).headline).toMatch(/^hob: 0 of/);
  });

  it('asks which of several builds, and for one where there is none', async () => {
    const { card, refused } = talk();
    expect((await refused('checklist')).error.code).toBe('missing');
    await card(`build save hob for=(${size})`);
    await card('build save pot for=(mix 30 L)');
    const { error } = await refused('checklist');
    expect(error.expected).toContain('pot');
    await card(error.example);
  });

  it('is of the last answer, of a question in parentheses, of a mix and of a wall', async () => {
    const { card } = talk();
    await card(size);
    expect((await card('checklist for=last')).given.join()).toContain('size can 20 gal');
    expect((await card('checklist start pot for=(mix 30 L recipe=castable)')).headline).toContain('pot: 0 of');
    expect((await card('checklist start wall for=(wall 2 in castable; 3 in fibre blanket)')).headline).toContain(
      'wall: 0',
    );
    expect((await card('checklist start again for=(again crucible=4 in x 5 in)')).given.join()).toContain(
      '4 in x 5 in',
    );
  });

  it('may be of an earlier revision, under the name of its build', async () => {
    const { card } = talk();
    await card('build save pot for=(mix 10 L)');
    await card('build save pot for=(mix 20 L)');
    const shown = await card('checklist start pot@1');
    expect(shown.headline).toContain('pot: 0 of');
    expect(shown.given.join()).toContain('mix 10 L');
  });

  it('keeps its question when the build goes, and its ticks when it is started anew', async () => {
    const { card } = talk();
    await card(`build save hob for=(${size})`);
    await card('checklist start hob');
    await card('checklist tick place');
    await card('build drop hob');
    const cast = await card('checklist start hob recipe=castable');
    expect(done(cast)).toMatch(/ 6 of/);
    expect(done(await card('checklist start hob fuel=charcoal'))).toMatch(/ 6 of/);
    expect((await card('checklist')).given.join()).toContain(size);
  });

  it.each([
    ['of what builds nothing', 'checklist start x for=(touch 60 °C)', 'impossible'],
    ['of bricks or bare blanket', 'checklist start x for=(wall 2 in fibre blanket)', 'unfit'],
    ['of an unknown lining', `checklist start x for=(${size}) recipe=mud`, 'unknown-name'],
    ['of a lining that does not stand the metal', `checklist start x for=(${size} metal=brass)`, 'unfit'],
    ['by a name that is no build', 'checklist start nowhere', 'unknown-name'],
    ['by the name of no list', 'checklist nowhere', 'unknown-name'],
  ])('%s is refused, with its cautions', async (_what, line, code) => {
    const { refused } = talk();
    const { error, cautions } = await refused(line);
    expect(error.code).toBe(code);
    expect(cautions.at(-1)?.id).toBe('local-rules');
  });

  it('offers a lining that stands the metal, in a line that works', async () => {
    const { refused, card } = talk();
    const { error } = await refused(`checklist start hob for=(${size} metal=brass)`);
    expect((await card(error.example)).headline).toContain('hob: 0 of');
  });

  it('is filled as its size says, and judged by that', async () => {
    const { card } = talk();
    const cast = await card(`checklist start hob for=(${size} metal=brass lining=dense castable)`);
    const chosen = await card(`checklist start hob for=(${size} metal=brass) recipe=castable`);
    expect(done(cast)).toBe(done(chosen));
    expect(cast.cautions).toEqual(chosen.cautions);
  });

  it('is dropped by who started it or who moderates, and starts again from the line it leaves', async () => {
    const ann = await started();
    const ben = talk({ memory: ann.memory, asker: 'ben' });
    expect((await ben.refused('checklist drop')).error.code).toBe('refused');
    expect((await ben.refused(`checklist start hob for=(mix 30 L)`)).error.code).toBe('refused');
    const dropped = await talk({ memory: ann.memory, asker: 'cleo', mayModerate: true }).card('checklist drop');
    expect((await ann.refused('checklist tick 1')).error.code).toBe('nothing-before');
    expect((await ann.card(dropped.next[0]!.line)).headline).toContain('hob: 0 of');
  });
});

describe('a tick', () => {
  it.each(['1.1', 'ground-sand', 'ground sand', 'between', '#1.1'])('by "%s" is the same thing', async (typed) => {
    const { card } = await started();
    expect((await card(`checklist tick ${typed}`)).headline).toMatch(/^Ticked 1\.1, dry sand/);
  });

  it.each([
    ['99', 'unknown-name'],
    ['0', 'unknown-name'],
    ['burn watr', 'unknown-name'],
    ['dry sand', 'ambiguous'],
    ['?', 'missing'],
  ])('by "%s" is refused: %s, never guessed', async (typed, code) => {
    const { refused } = await started();
    expect((await refused(`checklist tick ${typed}`)).error.code).toBe(code);
  });

  it('with a slip of the pen is offered as it may have been meant', async () => {
    const { card, refused } = await started();
    const { error } = await refused('checklist tick burn watr');
    expect((await card(error.example)).headline).toMatch(/^Ticked 1\.3/);
  });

  it('of a number ticks the whole stage, once', async () => {
    const ann = await started();
    expect((await ann.card('checklist tick 1')).headline).toMatch(/^Ticked stage 1, Place and gear \(6 things\)\./);
    const again = await talk({ memory: ann.memory, asker: 'ben' }).card('checklist tick 1');
    expect(again.headline).toMatch(/^That was ticked already, by another, today\./);
  });

  it('by two at once counts once, and both are told so', async () => {
    const ann = await started();
    const ben = talk({ memory: ann.memory, asker: 'ben' });
    const both = await Promise.all([ann.card('checklist tick 1.1'), ben.card('checklist tick 1.1')]);
    expect(both.filter(({ headline }) => headline.startsWith('Ticked'))).toHaveLength(1);
    expect(done(await ann.card('checklist'))).toMatch(/ 1 of/);
  });

  it('says who ticked without calling anybody', async () => {
    const ann = talk({ asker: 'discord:81000001' });
    await ann.card(`checklist start hob for=(${size})`);
    await ann.card('checklist tick 1.1');
    const ben = talk({ memory: ann.memory, asker: 'matrix:@ben:example.org' });
    await ben.card('checklist tick 1.2');
    await talk({ memory: ann.memory, asker: 'discord:81000003' }).card('checklist tick 1.3');
    const shown = await ann.card('checklist');
    expect(shown.notes[0]).toMatch(/^1\.1 ✓ .*\(you, today\)$/);
    expect(shown.notes[1]).toMatch(/\(another \(1 of 2\), today\)$/);
    expect(JSON.stringify(shown)).not.toMatch(/8100000|example\.org/);
    await ann.memory.forget('matrix:@ben:example.org');
    expect((await ann.card('checklist')).notes[1]).toMatch(/someone since forgotten/);
  });

  it('offers the next open things, each naming its list: an old button does not tick a newer one', async () => {
    const ann = await started();
    const before = await ann.card('checklist');
    const [first] = before.next;
    await ann.card('checklist start newer for=(mix 30 L)');
    expect((await ann.card(first!.line)).headline).toContain('hob: 1 of');
    const open = before.next.filter(({ line }) => line.startsWith('checklist tick'));
    expect(open).toHaveLength(3);
    for (const { line } of open.slice(1)) await ann.card(line);
  });

  it('carries the cautions of its stage and of the next', async () => {
    const ann = await started();
    await tickUntil('covered', ann);
    const ticked = await ann.card('checklist tick covered');
    expect(ticked.cautions.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['damp-lining', 'charcoal', 'local-rules']),
    );
  });

  it('is taken back, and what rests on it is marked and held again', async () => {
    const ann = await started();
    await tickUntil('pot-set', ann);
    const back = await ann.card('checklist untick weight-steady');
    expect(back.headline).toMatch(/^Open again: 11\.3/);
    expect(back.table?.rows.find(([, , name]) => name === 'Small fires')?.[0]).toBe('!');
    expect((await ann.refused('checklist tick pot-set')).error.what).toContain('Slow dry');
    expect((await ann.refused('checklist untick weight-steady')).error.code).toBe('refused');
  });
});

describe('a hold', () => {
  it('refuses the melt with what is missing, an example that works, and the cautions of both', async () => {
    const ann = await started();
    await tickUntil('covered', ann);
    const { error, cautions } = await ann.refused('checklist tick melt');
    expect(error.code).toBe('refused');
    expect(error.what).toContain('Slow dry (11.1 to 11.3)');
    expect(cautions.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['damp-charge', 'damp-lining', 'molten-metal', 'local-rules']),
    );
    expect((await ann.card(error.example)).headline).toContain('Ticked 11.1');
  });

  it('of the fire in a damp lining goes with the ticks of the dry, or with a drying in the log of that build', async () => {
    const ann = await started();
    await tickUntil('covered', ann);
    expect((await ann.refused('checklist tick lumps-only')).error.what).toContain('Slow dry');
    await ann.memory.addEntry('ann', { build: 'other', kind: 'drying', at: now, data: {} });
    await ann.memory.addEntry('ann', { build: 'hob', kind: 'weighing', at: now, data: { mass_kg: 20 } });
    await ann.memory.addEntry('ben', { build: 'hob', kind: 'drying', at: now, data: {} });
    await ann.refused('checklist tick lumps-only');
    const { id } = await ann.memory.addEntry('ann', { build: 'Hob', kind: 'drying', at: now, data: {} });
    const ticked = await talk({ memory: ann.memory, asker: 'ben' }).card('checklist tick lumps-only');
    expect(ticked.table?.rows.find(([, , name]) => name === 'Slow dry')?.at(-1)).toBe('in the log, today');
    await ann.memory.dropEntry('ann', id);
    expect((await ann.refused('checklist tick glass-clear')).error.what).toContain('Slow dry');
  });

  it('is never wiser than the card: every button it offers is one it takes', async () => {
    const ann = await started();
    let card = await ann.card('checklist');
    for (let turn = 0; turn < 200; turn++) {
      const line = card.next.find((one) => one.line.startsWith('checklist tick'))?.line;
      if (line === undefined) break;
      card = await ann.card(line);
      expect(card.cautions.at(-1)?.id).toBe('local-rules');
    }
    expect(card.headline).toMatch(/hob: all \d+ done\.$/);
    expect(figure(card, 'checklist.left')).toBeUndefined();
    expect(figure(card, 'checklist.done')?.value).toBe(1);
  });
});

describe('the shopping list', () => {
  it('has the very numbers of size and mix', async () => {
    const ann = await started();
    const rows = (await shopList(await needList('hob', ann.inside), ann.inside)).build;
    const sized = await ann.card(size);
    const mixed = await ann.card(`mix for=(${size})`);
    const row = (id: string) => rows.find((one) => one.id === id);
    const same = (id: string, card: Card, figureId: string) => {
      const { value, range } = figure(card, figureId)!;
      expect(row(id)?.quantity, id).toEqual({ low: range?.low ?? value, typical: value, high: range?.high ?? value });
    };
    same('stoneware-clay', mixed, 'mix.clay_mass');
    same('silica-sand', mixed, 'mix.sand_mass');
    same('vermiculite', sized, 'size.insulation_loose');
    same('mesh', sized, 'size.mesh');
    same('wire', sized, 'size.wire');
    const bags = figure(sized, 'size.bags_large')!;
    expect(row('vermiculite')?.bags?.typical).toBe(bags.value);
    const lining = rows.filter(({ id }) => id === 'stoneware-clay' || id === 'silica-sand');
    const cost = figure(mixed, 'mix.cost')!;
    expect(lining.reduce((sum, one) => sum + one.cost!.typical, 0)).toBeCloseTo(cost.value, 9);
    expect(lining.reduce((sum, one) => sum + one.cost!.high, 0)).toBeCloseTo(cost.range!.high, 9);
  });

  it('comes to the sum of its parts', async () => {
    const ann = await started();
    const { build, gear } = await shopList(await needList('hob', ann.inside), ann.inside);
    const card = await ann.card('checklist shop');
    const sum = (rows: typeof build, end: 'low' | 'typical' | 'high') =>
      rows.reduce((all, { cost }) => all + (cost?.[end] ?? 0), 0);
    expect(figure(card, 'checklist.cost')?.value).toBeCloseTo(sum(build, 'typical'), 9);
    expect(figure(card, 'checklist.cost')?.range?.low).toBeCloseTo(sum(build, 'low'), 9);
    expect(figure(card, 'checklist.gear_cost')?.range?.high).toBeCloseTo(sum(gear, 'high'), 9);
    expect(card.table?.rows).toHaveLength(build.length);
  });

  it('takes prices that were set, and tells another money apart', async () => {
    const ann = await started();
    await ann.card('price sand 25 kg €4');
    const card = await ann.card('checklist shop');
    const own = figure(card, 'checklist.cost_own');
    expect(own).toMatchObject({ unit: 'EUR', rangeBasis: 'judged' });
    expect(own!.value % 4).toBe(0);
    expect(figure(card, 'checklist.cost')?.unit).toBe('USD');
    expect(card.given.join()).toContain('silica sand');
  });

  it('follows the fuel and the lining, and says what the question leaves open', async () => {
    const { card } = talk();
    await card('checklist start pot for=(mix 30 L recipe=castable) fuel=charcoal');
    const shop = await card('checklist shop');
    const names = shop.table!.rows.map(([name]) => name);
    expect(names).toContain('dense castable');
    expect(names).toContain('blower');
    expect(names.join()).not.toContain('propane');
    expect(shop.notes.join()).toContain('How much of these, this question does not say: wire mesh');
  });

  it('passes on that a furnace does not fit', async () => {
    const { card } = talk();
    await card('checklist start tight for=(size can 5 gal pail crucible=6 in x 8 in)');
    expect((await card('checklist shop')).notes[0]).toMatch(/^Does not fit/);
  });
});

describe('the sheet', () => {
  it('has a box for every thing, ticked ones ticked, and the cautions of every stage', async () => {
    const ann = await started();
    await ann.card('checklist tick 1');
    const { kind, progress } = await needList('hob', ann.inside);
    const { attachment } = await ann.card('checklist sheet');
    expect(attachment).toMatchObject({ name: 'checklist.html', apart: true });
    const text = attachment!.text.replace(/&#(\d+);/g, (_, code) => String.fromCharCode(Number(code)));
    for (const { stage, items } of progress.stages) {
      expect(text).toContain(stage.name);
      for (const item of items) expect(text).toContain(item.text);
    }
    expect(text.match(/class="box">✓/g)).toHaveLength(6);
    for (const { text: caution } of cautionsFor({
      facts: ['hot-work', 'molten-metal', 'damp-charge', 'propane', ...kind.facts.fill],
    })) {
      expect(text).toContain(caution);
    }
    expect(text).toContain('@media print');
  });

  it('needs nothing from elsewhere, and takes no name for markup', async () => {
    const { card } = talk();
    await card(`checklist start <img srcx onerror> for=(${size})`);
    const { attachment } = await card('checklist sheet');
    expect(attachment!.text).not.toMatch(/<(?:img|script|link|iframe)|https?:|url\(|@import/);
    expect(attachment!.text).toContain('&#60;img srcx');
  });
});
