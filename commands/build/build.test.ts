import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AskError } from '../../core/ask-error.ts';
import { talk } from '../../test/contract/conversation.ts';
import type { Card } from '../card.ts';
import { parseLine, splitVersus } from '../grammar.ts';
import { type Build, inProcessMemory } from '../memory.ts';
import { commands } from '../registry.ts';
import { readName } from './find.ts';

const volume = (card: Card) => card.figures.find(({ id }) => id === 'mix.volume')?.value;

describe('a build', () => {
  it('is kept from the last question and shown with its cautions, as last it can be asked again and explained', async () => {
    const { card } = talk();
    await card('mix 30 L');
    expect((await card('build save Club  Furnace')).headline).toBe('Kept as Club Furnace, revision 1.');
    await card('mix 5 L');
    const shown = await card('build show club furnace');
    expect(shown.command).toBe('mix');
    expect(volume(shown)).toBeCloseTo(0.03, 9);
    expect(shown.cautions.at(-1)?.id).toBe('local-rules');
    expect(shown.given[0]).toBe('build Club Furnace, revision 1 of 1, kept 2026-02-03');
    expect((await card('why')).headline).toContain(shown.headline);
    expect(volume(await card('again ram=light'))).toBeCloseTo(0.03, 9);
  });

  it('gives its result to any question, by name in any case and by revision', async () => {
    const { card } = talk();
    await card('build save pot for=(mix 10 L)');
    await card('build save pot for=(mix 20 L)');
    const newest = await card('mix for=POT recipe=castable');
    expect(volume(newest)).toBeCloseTo(0.02, 9);
    expect(newest.given[0]).toBe('from pot, revision 2 (mix): amount');
    expect(volume(await card('mix for=pot@1 recipe=castable'))).toBeCloseTo(0.01, 9);
    expect(volume(await card('mix for=pot 1 recipe=castable'))).toBeCloseTo(0.01, 9);
  });

  it('of that very name goes before a revision', async () => {
    const { card } = talk();
    await card('build save pot for=(mix 10 L)');
    await card('build save pot 1 for=(mix 15 L)');
    expect(volume(await card('build show pot 1'))).toBeCloseTo(0.015, 9);
    expect(volume(await card('build show pot@1'))).toBeCloseTo(0.01, 9);
  });

  it('says what changed, and keeps nothing anew where nothing did', async () => {
    const { card } = talk();
    await card('build save pot for=(mix 10 L)');
    expect((await card('build save pot for=(mix 12 L ram=light)')).notes).toEqual([
      'mix 12 L ram=light',
      'amount: 10 L → 12 L',
      'rammed how: not given → light',
    ]);
    expect((await card('build save POT for=(mix 12 L ram=light)')).headline).toContain('revision 2, is this very');
    expect((await card('build show pot')).given[1]).toContain('since revision 1: amount: 10 L → 12 L');
  });

  it('stands on no other answer: what for= handed over is kept with it', async () => {
    const { card, memory } = talk();
    await card('build save pot for=(mix 10 L)');
    await card('build save face for=(mix for=pot recipe=castable)');
    await card('build drop pot');
    expect(volume(await card('build show face'))).toBeCloseTo(0.01, 9);
    await card('mix 8 L');
    await card('build save second for=(again ram=light)');
    expect((await memory.build('ann', 'second'))?.ask).toEqual({
      command: 'mix',
      options: { amount: '8 L', ram: 'light' },
    });
  });

  it('is not kept where its question can’t be answered, and the mistake keeps its cautions', async () => {
    const { refused, memory } = talk();
    const reply = await refused('build save pot for=(mix 10 L recipe=foo)');
    expect(reply.error.example).toMatch(/^build save pot for=\(mix 10 L recipe=/);
    expect(reply.cautions.at(-1)?.id).toBe('local-rules');
    expect((await refused('build save pot for=(mix 10 L foo=3)')).cautions.at(-1)?.id).toBe('local-rules');
    for (const line of ['build save pot for=(help)', 'build save pot', 'build save pot for=(why)']) await refused(line);
    expect(await memory.builds('ann')).toEqual([]);
  });

  it('of another person is not found', async () => {
    const { card, memory } = talk();
    await card('build save pot for=(mix 10 L)');
    const { error } = await talk({ memory, asker: 'ben' }).refused('mix for=pot');
    expect(error.what).toContain('no build called "pot", nor any other');
  });

  it('with a near miss of its name is offered', async () => {
    const { card, refused } = talk();
    await card('build save club furnace for=(mix 10 L)');
    const { error } = await refused('mix 3 L for=club furnce');
    expect(error.code).toBe('unknown-name');
    expect(error.example).toBe('mix 3 L for=club furnace');
    expect((await refused('build show clubfurnace')).error.example).toBe('build show club furnace');
  });

  it('is shared as it is, copied once under a name, and free of the first from then on', async () => {
    const { card, memory } = talk();
    await card('build save pot for=(mix 10 L)');
    const code = (await card('build share pot')).headline.split(' ')[0]!;
    expect((await card('build share POT')).headline).toContain(code);
    await card('build save pot for=(mix 20 L)');
    const ben = talk({ memory, asker: 'ben' });
    await ben.card(`build copy ${code.toLowerCase()}`);
    expect(volume(await ben.card('build show pot'))).toBeCloseTo(0.01, 9);
    expect((await ben.refused(`build copy ${code}`)).error.example).toBe(`build copy ${code} as=copy of pot`);
    await ben.card(`build copy ${code} as=copy of pot`);
    await ben.card('build drop pot');
    expect(volume(await card('build show pot'))).toBeCloseTo(0.02, 9);
    expect((await ben.refused('build copy AAAA2222')).error.code).toBe('unknown-name');
  });

  it('is dropped whole: the number of a revision behind its name costs nothing', async () => {
    const { card, refused } = talk();
    await card('build save pot for=(mix 10 L)');
    await card('build save pot for=(mix 20 L)');
    for (const line of ['build drop pot 1', 'build drop pot@2', 'build share pot 1']) {
      expect((await refused(line)).error.code).toBe('refused');
    }
    const dropped = await card('build drop pot');
    expect(dropped.headline).toBe('Dropped pot with its 2 revisions.');
    expect((await card(dropped.next[0]!.line)).headline).toBe('Kept as pot, revision 1.');
    expect(volume(await card('build show pot'))).toBeCloseTo(0.02, 9);
  });
});

describe('what is kept', () => {
  const saved = async (count: number, name: (index: number) => string) => {
    const memory = inProcessMemory();
    const ask = (index: number) => ({ command: 'mix', options: { amount: `${index + 1} L` } });
    for (let index = 0; index < count; index += 1) {
      await memory.saveBuild('ann', { name: name(index), ask: ask(index) as Build['ask'] }, new Date(index));
    }
    return talk({ memory });
  };

  it('is bounded: 200 builds a person, 200 revisions a build', async () => {
    const many = await saved(200, (index) => `pot ${index}x`);
    expect((await many.refused('build save pot for=(mix 3 L)')).error.code).toBe('refused');
    await many.memory.saveBuild(
      'ben',
      { name: 'his', ask: { command: 'mix', options: { amount: '3 L' } } as Build['ask'] },
      new Date(0),
    );
    const code = await many.memory.shareBuild('ben', 'his');
    expect((await many.refused(`build copy ${code}`)).error.code).toBe('refused');
    await many.card('build save pot 7x for=(mix 3 L)');
    await many.card('build drop pot 7x');
    await many.card('build save pot for=(mix 3 L)');

    const often = await saved(200, () => 'pot');
    expect((await often.refused('build save pot for=(mix 300 L)')).error.what).toMatch(/^pot has 200 revisions/);
    await often.card('build save pan for=(mix 3 L)');
  });
});

describe('lines of any words', () => {
  const word = fc.constantFrom(
    'build save',
    'build show',
    'build compare',
    'build share',
    'build copy',
    'build drop',
    'build list',
    'pot',
    'pan',
    '2',
    '@1',
    'vs',
    'last',
    'for=',
    'for=last',
    '(mix 3 L)',
    '(',
    ')',
    '=',
    'mix 2 L',
    'again',
    'why',
    'price',
    'price list',
    'sand 5 kg €2',
    'who=place',
    'units',
    'forget',
    'everything',
    'mydata',
    'as=',
  );
  const line = fc.oneof(
    fc.array(word, { minLength: 1, maxLength: 5 }).map((words) => words.join(' ')),
    fc.string({ maxLength: 30 }).map((rest) => `build save ${rest} for=(mix 3 L)`),
    fc.string({ maxLength: 30 }).map((rest) => `build show ${rest}`),
  );

  it('are answered or refused with what works, and a hot answer keeps its cautions whoever repeats it', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(line, { maxLength: 8 }), async (lines) => {
        const { ask } = talk();
        await ask('mix 1 L');
        await ask('build save pot');
        for (const typed of lines) {
          const reply = await ask(typed);
          if (reply.kind === 'error') {
            for (const part of Object.values(reply.error)) expect(part).not.toBe('');
          } else if (reply.card.figures.length > 0 || reply.card.working.length > 0) {
            expect(reply.card.cautions.at(-1)?.id).toBe('local-rules');
          }
        }
      }),
      { numRuns: 300 },
    );
  }, 120_000);
});

describe('two builds', () => {
  it('stand side by side with their difference, and with the cautions of both', async () => {
    const { card } = talk();
    await card('build save one for=(mix 10 L)');
    await card('build save other for=(mix 20 L recipe=castable)');
    const compared = await card('build compare one vs other');
    expect(compared.table?.columns).toEqual(['figure', 'one 1', 'other 1', 'difference']);
    expect(compared.table?.rows).toContainEqual(['fills, rammed', '10 L', '20 L', '+10 L']);
    expect(compared.table?.rows).toContainEqual(['holds to', '1150 °C', '1350 °C', '+200 °C']);
    const ids = compared.cautions.map(({ id }) => id);
    expect(ids).toEqual([...new Set(ids)]);
    for (const id of ['silica-dust', 'damp-lining']) expect(ids).toContain(id);
    expect(ids.at(-1)).toBe('local-rules');
    expect(compared.notes).toContain('amount: 10 L → 20 L');
  });

  it('are told in the units their questions were typed in', async () => {
    const { card } = talk();
    await card('build save one for=(mix 1 cu ft)');
    await card('build save other for=(mix 2 cu ft)');
    const { table } = await card('build compare one vs other');
    expect(table?.rows).toContainEqual(['fills, rammed', '1 cu ft', '2 cu ft', '+1 cu ft']);
  });

  it('may be revisions, named or the newest two, or the last question; either way round', async () => {
    const { card } = talk();
    await card('build save pot for=(mix 10 L)');
    await card('build save pot for=(mix 12 L)');
    const newest = await card('build compare pot');
    expect(newest.table).toEqual((await card('build compare pot 1 vs pot 2')).table);
    const back = await card('build compare pot 2 vs pot 1');
    expect(back.table?.rows).toContainEqual(['fills, rammed', '12 L', '10 L', '−2 L']);
    await card('mix 12 L');
    expect((await card('build compare pot vs last')).headline).toContain('come to the same in all');
  });

  it.each([
    ['build compare pot', 'missing'],
    ['build compare pot vs', 'unknown-name'],
    ['build compare vs pot', 'unknown-name'],
    ['build compare pot vs last', 'nothing-before'],
    ['build compare pot vs (mix 3 L foo=1)', 'unknown-option'],
    ['build compare', 'missing'],
    ['build compare pot vs pot vs pot', 'missing'],
    ['build compare pot vs pan', 'unknown-name'],
    ['build compare pot vs (touch 60 °C)', 'impossible'],
  ])('"%s" is refused: %s', async (line, code) => {
    const { card, refused } = talk();
    await card('build save pot for=(mix 10 L)');
    expect((await refused(line)).error.code).toBe(code);
  });
});

describe('a build that an older version kept', () => {
  it.each([
    ['an option that is gone', { command: 'mix', options: { amount: '10 L', dampness: '3' } }, 'mix 10 L'],
    [
      'a value that is no longer read',
      { command: 'mix', options: { amount: '10 L', ram: 'softly' } },
      'mix 10 L ram=hard',
    ],
    ['a command that is gone', { command: 'mixx', options: { amount: '10 L' } }, 'mix 10 L'],
  ])('with %s says which it is and how it is mended, and is not lost', async (_what, question, line) => {
    const { card, refused, memory } = talk();
    await memory.saveBuild('ann', { name: 'old pot', ask: question as Build['ask'] }, new Date(0));
    for (const asked of ['build show old pot', 'mix for=old pot recipe=castable']) {
      const { error } = await refused(asked);
      expect(error.what).toMatch(/^your build old pot, revision 1, can't be answered as it was kept: /);
      expect(error.example).toBe(`build save old pot for=(${line})`);
    }
    expect(await memory.revisions('ann', 'old pot')).toHaveLength(1);
    await card('build list');
    await card(`build save old pot for=(${line})`);
    expect(volume(await card('build show old pot'))).toBeCloseTo(0.01, 9);
    expect(await memory.revisions('ann', 'old pot')).toHaveLength(2);
  });
});

describe('a name', () => {
  const asker = { asker: 'ann', place: 'shed' };

  it.each([
    ['last', 'LAST'],
    ['a=b', 'a b'],
    ['pot (big)', 'pot big'],
    ['pot@2', 'pot 2'],
    ['this vs that', 'this and that'],
    ['', 'club furnace'],
    ['?!', 'club furnace'],
    ['x'.repeat(41), 'x'.repeat(40)],
  ])('"%s" is refused with one that works', (typed) => {
    try {
      readName(typed, 'name');
    } catch (error) {
      expect(error).toBeInstanceOf(AskError);
      const { example } = error as AskError;
      expect(readName(example, 'name')).toBe(example);
      return;
    }
    expect.fail('this should be refused');
  });

  it('is what the grammar reads back, wherever it may stand', () => {
    const typed = fc.oneof(
      fc.string({ maxLength: 45 }),
      fc.string({ unit: 'grapheme', maxLength: 45 }),
      fc
        .array(fc.constantFrom('vs', 'last', 'club', '2', '@', ';', 'for', ' ', '\u202e', 'ö'), { maxLength: 8 })
        .map((words) => words.join(' ')),
    );
    const accepted = (text: string) => {
      try {
        return readName(text, 'name');
      } catch (error) {
        if (error instanceof AskError) return undefined;
        throw error;
      }
    };
    fc.assert(
      fc.property(typed, (text) => {
        const name = accepted(text);
        fc.pre(name !== undefined);
        expect(name).not.toMatch(/\p{C}/u);
        expect([...name!].length).toBeLessThanOrEqual(40);
        expect(accepted(name!)).toBe(name);
        const { options } = parseLine(`mix 3 L for=${name} ram=light`, commands, asker);
        expect(options).toEqual({ amount: '3 L', for: name, ram: 'light' });
        expect(accepted(parseLine(`build show ${name}`, commands, asker).options.name ?? '')).toBe(name);
        expect(splitVersus(`${name} vs ${name}`)).toEqual([name, name]);
      }),
      { numRuns: 5000 },
    );
  });
});
