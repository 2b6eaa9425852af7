import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Caution } from '../core/hazard/caution.ts';
import { rules } from '../core/hazard/rules/rules.ts';
import { answerLine } from './answer.ts';
import type { Card, Reply } from './card.ts';
import { largestOf, rangesFollow } from './early.ts';
import { inProcessMemory } from './memory.ts';

const me = { asker: 'ann', place: 'shed', now: new Date(0) };
const cardOf = (reply: Reply): Card => {
  if (reply.kind === 'error') throw new Error(reply.error.what);
  return reply.card;
};

async function asked(line: string) {
  const heard: Card[] = [];
  const reply = await answerLine(line, { ...me, memory: inProcessMemory(), early: (card) => void heard.push(card) });
  return { heard, card: cardOf(reply) };
}
const whole = async (line: string) => cardOf(await answerLine(line, { ...me, memory: inProcessMemory() }));

/** Each of them, or a graver one of the same topic: ends that no sample reaches may trigger that instead. */
function expectAll(cautions: readonly Caution[], among: readonly Caution[]): void {
  const rank = { danger: 0, caution: 1, note: 2 };
  const topicOf = (id: string) => rules.find((rule) => rule.id === id)?.topic ?? id;
  for (const { id, severity, text } of cautions)
    expect(
      among.some((one) => topicOf(one.id) === topicOf(id) && rank[one.severity] <= rank[severity]),
      text,
    ).toBe(true);
}

const lines = [
  'fuel lump charcoal amount=5 kg metal=aluminium',
  'fuel briquettes then lump amount=10 lb prices=briquettes 16 lb $12; lump 20 lb $22',
  'wall 2 in clay-sand; 2 in vermiculite finish=galvanised hold=3 h',
  'wall 40 mm clay-sand lining; 60 mm vermiculite damp=6% ramp=6 h',
  'settle wall 2 in clay-sand; 2 in vermiculite vs wall 3 in castable; 2 in fibre blanket by=shell, stored',
  'claim 3 kg of charcoal melts 6 kg of aluminium',
];

describe('an early answer', { timeout: 240_000 }, () => {
  it.each(lines)('%s: comes once, and changes nothing of the whole one', async (line) => {
    const { heard, card } = await asked(line);
    expect(heard).toHaveLength(1);
    expect(card).toEqual(await whole(line));
    const [early] = heard;
    expect(early!.headline).toContain(rangesFollow);
    expect(early!.command).toBe(card.command);
    for (const one of early!.given) expect(card.given).toContain(one);
    expectAll(card.cautions, early!.cautions);
    expect(early!.figures.some(({ rangeBasis }) => rangeBasis === 'sampled')).toBe(false);
    expect(early!.next).toEqual([]);
  });

  it('says nothing that a hand would go by', async () => {
    const { heard, card } = await asked('wall 2 in clay-sand; 2 in vermiculite');
    expect(card.figures.some(({ id }) => id.startsWith('wall.touch'))).toBe(true);
    expect(heard[0]!.figures.some(({ id }) => id.startsWith('wall.touch'))).toBe(false);
    expect(heard[0]!.notes).toEqual([]);
    expect(await asked('claim my 60 L drum stays cool to touch for two hours at 900 °C')).toMatchObject({ heard: [] });
  });

  it.each([
    ['there is no range to wait for', 'wall 1 in castable; 2.5 in perlite hot=1000 °C'],
    ['nothing is slow about it', 'mix 30 L'],
  ])('is not there where %s', async (_, line) => expect((await asked(line)).heard).toEqual([]));

  it('is none of a question on the way to another, nor of one that can’t be answered', async () => {
    expect((await asked('mix for=(wall 2 in clay-sand; 2 in vermiculite)')).heard).toEqual([]);
    const heard: Card[] = [];
    const early = (card: Card) => void heard.push(card);
    const reply = await answerLine('fuel propane amount=5 kg metal=iron excess=300%', {
      ...me,
      memory: inProcessMemory(),
      early,
    });
    expect(reply.kind).toBe('error');
    expect(heard).toEqual([]);
  });

  it('warns of all that the whole wall warns of, whatever its layers, finish and heat', async () => {
    const thick = fc.constantFrom('0.5 in', '1 in', '2 in', '3 in');
    const hot = fc.tuple(thick, fc.constantFrom('clay-sand', 'castable', 'fibre blanket'));
    const behind = fc.tuple(thick, fc.constantFrom('vermiculite', 'perlite', 'insulating brick', 'fibre blanket'));
    await fc.assert(
      fc.asyncProperty(
        fc.tuple(hot, behind),
        fc.constantFrom('painted', 'galvanised', 'bare'),
        fc.constantFrom('700 °C', '900 °C', '1100 °C'),
        fc.constantFrom('20 min', '4 h'),
        async (layers, finish, hot, hold) => {
          const wall = layers.map((each) => each.join(' ')).join('; ');
          const { heard, card } = await asked(`wall ${wall} finish=${finish} hot=${hot} hold=${hold}`);
          if (heard.length === 0) return;
          expectAll(card.cautions, heard[0]!.cautions);
        },
      ),
      { numRuns: 6, seed: 11 },
    );
  });
});

describe('the largest an output can be', () => {
  const spread = fc
    .tuple(
      fc.double({ min: -5, max: 5, noNaN: true }),
      fc.double({ min: 0, max: 3, noNaN: true }),
      fc.double({ min: 0, max: 3, noNaN: true }),
    )
    .map(([typical, down, up]) => ({ low: typical - down, typical, high: typical + up }));

  it('is beyond every draw, where it rises or falls with each input', () => {
    fc.assert(
      fc.property(
        spread,
        spread,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (a, b, one, other) => {
          const model = ({ a: x = 0, b: y = 0 }: Readonly<Record<string, number>>) => ({ y: Math.exp(x) - y ** 3 });
          const draw = { a: a.low + one * (a.high - a.low), b: b.low + other * (b.high - b.low) };
          expect(largestOf({ inputs: { a, b }, model }, 'y')).toBeGreaterThanOrEqual(model(draw).y - 1e-9);
        },
      ),
    );
  });
});
