import { describe, expect, test } from 'vitest';
import { talk } from '../../test/contract/conversation.ts';
import type { Card } from '../card.ts';
import { questions } from './questions.ts';

/** The line of the follow-up with this label. */
const pressed = ({ next }: Card, label: string): string => next.find((one) => one.label === label)?.line ?? '';

describe('a newcomer', () => {
  test('answers by what is offered, one question at a time, and ends with a build, its mix, its cost and a checklist', async () => {
    const { memory, card } = talk();
    let at = await card('start');
    for (const [index, label] of [
      'aluminium',
      'a 20 gal can',
      'outdoors, on soil or sand',
      'charcoal',
      '$250',
    ].entries()) {
      expect(at.headline).toContain(`${index + 1} of 5: ${questions[index]?.ask}`);
      at = await card(pressed(at, label));
    }
    expect(at.headline).toMatch(/^Kept as first furnace\. Fits/);
    const size = await card('size can 20 gal metal=aluminium fuel=charcoal');
    const bore = (one: Card, id: string) => one.figures.find((figure) => figure.id === id)?.value;
    expect(bore(at, 'start.bore')).toBe(bore(size, 'size.bore'));
    expect(at.notes.join('\n')).toMatch(/Clay–sand lining: .*\n.*cheapest lining.*\nAbout \$.*your \$250/s);
    const shop = await card('checklist shop list=first furnace');
    expect(bore(at, 'start.cost')).toBe(bore(shop, 'checklist.cost'));
    expect((await memory.builds('ann')).map(({ name }) => name)).toEqual(['first furnace']);
    expect((await memory.checklist('shed'))?.name).toBe('first furnace');
    for (const { line } of at.next) expect((await card(line)).headline, line).not.toBe('');
    expect(await memory.draft({ asker: 'ann', place: 'shed' })).toBeUndefined();
  });

  test('may know nothing at all: what stands in is said', async () => {
    const { card } = talk();
    let at = await card('start');
    for (let i = 0; i < questions.length; i++) at = await card(pressed(at, 'I don’t know yet'));
    expect(at.headline).toMatch(/^Kept as first furnace\./);
    expect(at.assumed.map(({ text }) => text)).toEqual(
      expect.arrayContaining(['metal: aluminium', 'have: nothing', 'where: outdoors', 'burn: charcoal']),
    );
  });

  test('goes on later, in any order, and begins anew', async () => {
    const { memory, card } = talk();
    await card('start burn=propane have=20 gal');
    await card('mix 30 L');
    expect((await card('start')).headline).toContain('1 of 5');
    expect((await card('start copper')).headline).toContain('3 of 5');
    const again = await card('start');
    expect(again.given.join(' ')).toMatch(/where you were before.*copper/);
    expect((await talk({ memory, asker: 'bob' }).card('start')).headline).toContain('1 of 5');
    expect((await card('start anew=yes')).headline).toContain('1 of 5');
    expect((await card('start')).given).toEqual([]);
  });

  test('goes back by what is offered', async () => {
    const { card } = talk();
    const at = await card('start aluminium have=20 gal');
    const back = await card(at.next.at(-1)?.line ?? '');
    expect(back.headline).toContain('2 of 5');
    expect((await card(pressed(back, 'a 60 L drum'))).headline).toContain('3 of 5');
  });

  test('gets castable where clay and sand have too little to spare', async () => {
    const { card } = talk();
    const at = await card('start copper have=20 gal where=outdoors burn=propane spend=skip');
    expect(at.figures.map(({ id }) => id)).toContain('start.castable_mass');
    expect(at.notes.join(' ')).toContain('Castable, because');
  });

  test('keeps a second furnace beside the first', async () => {
    const { memory, card } = talk();
    const all = 'start aluminium have=20 gal where=outdoors burn=gas spend=skip';
    await card(all);
    expect((await card(all)).headline).toMatch(/^Kept as furnace 2\./);
    expect((await card(`${all} name=Little Hob`)).headline).toMatch(/^Kept as Little Hob\./);
    expect(await memory.builds('ann')).toHaveLength(3);
  });

  test.each([
    ['$40', /more than your \$40/],
    ['$250', /will do if some of it is at hand/],
    ['$5000', /within your \$5000, whatever/],
    ['80 EUR', /common prices in US dollars/],
  ])('who may spend %s is told how far it goes', async (sum, told) => {
    const { card } = talk();
    const at = await card(`start aluminium have=20 gal where=outdoors burn=charcoal spend=${sum}`);
    expect(at.notes.join(' ')).toMatch(told);
  });
});

describe('an answer that will not do', () => {
  test('a garage is refused with the danger first, and asked again', async () => {
    const { card } = talk();
    const at = await card('start aluminium have=20 gal where=my garage');
    expect(at.cautions[0]).toMatchObject({ severity: 'danger', leads: true });
    expect(at.headline).toMatch(/^That won’t do: nothing is melted under a roof.* 3 of 5/);
    expect((await card('start')).headline).toMatch(/^3 of 5/);
  });

  test('a shell too small is told with its number, and asked again', async () => {
    const { card } = talk();
    const at = await card('start have=3 in x 4 in');
    expect(at.headline).toMatch(/^That won’t do: .* 2 of 5/);
    expect((await card(pressed(at, 'a 60 L drum'))).headline).toMatch(/^1 of 5/);
  });

  test('a gas cylinder for a shell is warned of at once', async () => {
    const { card } = talk();
    expect((await card('start have=propane cylinder')).cautions.map(({ id }) => id)).toEqual(
      expect.arrayContaining([expect.stringContaining('cylinder')]),
    );
  });

  test.each([
    ['start magnesium', /magnesium is not melted here/, 'start aluminium'],
    ['start burn=coal dust', /"coal dust" is no answer to: What will you burn/, 'start burn=charcoal'],
    ['start where=the moon', /"the moon" is no answer to: Where will it stand/, 'start where=outdoors'],
  ])('%s: says what was wrong and what would be right', async (line, what, example) => {
    const { ask } = talk();
    const reply = await ask(line);
    if (reply.kind !== 'error') throw new Error('answered');
    expect(reply.error.what).toMatch(what);
    expect(reply.error.example).toBe(example);
    expect(reply.cautions.length).toBeGreaterThan(0);
  });

  test('every question warns of hot work', async () => {
    const { card } = talk();
    for (const line of ['start', 'start bronze', 'start have=60 L', 'start where=patio', 'start burn=skip']) {
      expect(
        (await card(line)).cautions.map(({ id }) => id),
        line,
      ).toContain('local-rules');
    }
  });
});
