import { describe, expect, it } from 'vitest';
import { answerAsk, answerLine } from '../answer.ts';
import type { Card, Reply } from '../card.ts';
import { inProcessMemory } from '../memory.ts';
import { mostStatements, readMessage } from './find.ts';

const statements = (text: string) => readMessage(text).found.map(({ statement }) => statement);

describe('statements with a number in a message', () => {
  it.each([
    ['bare', '3 kg of charcoal melts 6 kg of aluminium', ['3 kg of charcoal melts 6 kg of aluminium']],
    [
      'behind words that say nothing',
      'Well, 3 kg of charcoal melts 6 kg of aluminium!',
      ['3 kg of charcoal melts 6 kg of aluminium'],
    ],
    [
      'among sentences',
      'Nice build. I think lump burns 300 °F hotter. See you at 5.',
      ['I think lump burns 300 °F hotter'],
    ],
    [
      'on lines of a quote',
      '> lump burns 300 °F hotter\n> **2 kg of propane melts 10 kg of bronze**',
      ['lump burns 300 °F hotter', '2 kg of propane melts 10 kg of bronze'],
    ],
    [
      'in clauses',
      'lump burns 300 °F hotter, and 2 kg of propane melts 10 kg of bronze',
      ['lump burns 300 °F hotter', '2 kg of propane melts 10 kg of bronze'],
    ],
    ['before a reason without a number', 'lump burns 300 °F hotter because it is dry', ['lump burns 300 °F hotter']],
    [
      'beside a link and a mention',
      '<@123456> lump burns 300 °F hotter https://example.org/1/2',
      ['lump burns 300 °F hotter'],
    ],
    ['twice', 'lump burns 300 °F hotter. Lump burns 300 °F hotter!', ['lump burns 300 °F hotter']],
  ])('are found %s', (_, text, found) => expect(statements(text)).toEqual(found));

  it.each([
    ['3 kg of charcoal melts 6 kg of aluminium and 2 kg of brass'],
    ['3 kg of charcoal never melts 6 kg of aluminium, lump burns 300 °F hotter'],
    ['lump burns 300 °F hotter, unless it is damp'],
    ["it isn't true, lump burns 300 °F hotter"],
    ['I paid 30 dollars for 20 kg, and lump burns 300 °F hotter'],
  ])('are none where half of it would be taken: %s', (text) => {
    const { found, unread } = readMessage(text);
    expect(found).toEqual([]);
    expect(unread).toEqual([text]);
  });

  it('are none without a number, and at most three', () => {
    expect(readMessage('perlite is better. Trust me')).toEqual({ found: [], unread: [] });
    expect(readMessage('')).toEqual({ found: [], unread: [] });
    const many = [1, 2, 3, 4, 5].map((mass) => `${mass} kg of charcoal melts 6 kg of aluminium.`).join(' ');
    expect(readMessage(many).found).toHaveLength(mostStatements);
  });

  it('are looked for in no time in anything that anybody could write', () => {
    const long = 'and 3 kg of charcoal, so 6 kg of aluminium, because '.repeat(80);
    const begun = process.cpuUsage();
    readMessage(long);
    readMessage('1'.repeat(4000));
    readMessage('3 kg '.repeat(800));
    const { user, system } = process.cpuUsage(begun);
    expect((user + system) / 1e6).toBeLessThan(2);
  });
});

const context = () => ({ asker: 'ann', place: 'shed', now: new Date(0), memory: inProcessMemory() });
const cardOf = (reply: Reply): Card => {
  if (reply.kind === 'error') throw new Error(reply.error.what);
  return reply.card;
};
const weighed = async (text: string) =>
  cardOf(await answerAsk({ command: 'weigh', options: { text }, asker: 'ann', place: 'shed' }, context()));

describe('weigh', () => {
  it('judges the one statement that is understood as claim does', async () => {
    const statement = '3 kg of charcoal melts 6 kg of aluminium';
    const card = await weighed(`Honestly, ${statement}`);
    const claim = cardOf(await answerLine(`claim ${statement}`, context()));
    expect(card.headline).toBe(`“${statement}” ${claim.headline}`);
    expect(card.figures.map(({ id, value }) => [id, value])).toEqual(
      claim.figures.map(({ id, value }) => [id.replace('claim', 'weigh'), value]),
    );
    for (const { id } of claim.cautions) expect(card.cautions.map((one) => one.id)).toContain(id);
    expect(card.next[0]).toEqual({ label: 'for all to see', line: `claim ${statement}`, forAll: true });
    expect(card.next.map(({ line }) => line)).not.toContain('why');
  });

  it('asks which one where there are several, each told as it was understood', async () => {
    const card = await weighed(
      'lump burns 300 °F hotter. 2 kg of propane melts 10 kg of bronze. It cost me 4 weekends.',
    );
    expect(card.headline).toContain('2 statements');
    expect(card.next.map(({ line }) => line)).toEqual([
      'claim lump burns 300 °F hotter',
      'claim 2 kg of propane melts 10 kg of bronze',
    ]);
    expect(card.notes[0]).toMatch(/^1\. “lump burns 300 °F hotter”, understood as: .*at least/);
    expect(card.notes[2]).toContain('Not read');
    expect(card.notes[2]).toContain('4 weekends');
  });

  it('says what it can read where there is nothing, with examples that can be asked', async () => {
    for (const text of ['Nice pour!', 'It took me 4 weekends.', '', '🔥'.repeat(50)]) {
      const card = await weighed(text);
      expect(card.headline).toMatch(/no statement with a number/);
      expect(card.notes.join(' ')).toContain('3 kg of charcoal melts 6 kg of aluminium');
      for (const { line } of card.next) expect(statements(line.replace(/^claim /, ''))).toHaveLength(1);
    }
  });

  it('warns of what is written, whether or not a number of it is understood', async () => {
    const card = await weighed('Cut the propane cylinder with a grinder, it took 2 hours. Zinc coating is fine.');
    const ids = card.cautions.map(({ id }) => id);
    expect(ids.some((id) => id.includes('cylinder'))).toBe(true);
    expect(card.cautions.some(({ severity }) => severity === 'danger')).toBe(true);
    const judged = await weighed('lump burns 300 °F hotter. I cut the propane cylinder in the garage.');
    expect(judged.headline).toContain('lump burns');
    expect(judged.cautions.some(({ id }) => id.includes('cylinder'))).toBe(true);
  });

  it('keeps nothing and tells nothing back but what it read', async () => {
    const here = context();
    await answerLine('mix 30 L', here);
    const text = 'The secret of Bea is 42. lump burns 300 °F hotter';
    const card = cardOf(await answerLine(`weigh ${text}`, here));
    expect(await here.memory.lastAsk(here)).toMatchObject({ command: 'mix' });
    expect(JSON.stringify(card.given)).not.toContain('secret');
    expect(JSON.stringify(await here.memory.kept('ann'))).not.toContain('secret');
  });
});
