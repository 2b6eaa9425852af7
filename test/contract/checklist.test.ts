import { describe, expect, test } from 'vitest';
import { limits } from '../../adapters/discord/limits.ts';
import { messageOf } from '../../adapters/discord/message/card.ts';
import { linesBelow, renderReply as matrixReply } from '../../adapters/matrix/render.ts';
import { renderReply as terminalReply } from '../../adapters/terminal/render.ts';
import { answerLine } from '../../commands/answer.ts';
import type { Card } from '../../commands/card.ts';
import { inProcessMemory } from '../../commands/memory.ts';
import { allStages } from '../../core/build/stages.ts';

/** The builds with the most to say, at each of their stages, ticked by many: they are shown whole wherever they are read. */
const builds = [
  'size can 20 gal crucible=5 in x 6 in fuel=charcoal metal=brass) recipe=fireclay-sand',
  'size can propane cylinder 100 lb crucible=5 in x 6 in insulation=fibre blanket form=card metal=aluminium) fuel=oil',
  'mix 30 L recipe=castable)',
];

async function walk(build: string, see: (card: Card, at: string) => void): Promise<void> {
  const memory = inProcessMemory();
  const ask = async (line: string, asker: string): Promise<Card> => {
    const reply = await answerLine(line, { asker, place: 'shed', now: new Date('2026-02-03T12:00:00Z'), memory });
    if (reply.kind === 'error') throw new Error(`${line}: ${reply.error.what}`);
    return reply.card;
  };
  let card = await ask(`checklist start ${'Millpond casters furnace the second'} for=(${build}`, 'discord:1');
  for (let turn = 0; card.next[0]?.line.startsWith('checklist tick'); turn++) {
    see(card, `${build}, turn ${turn}`);
    card = await ask(card.next[0].line, `discord:${turn % 7}`);
  }
  see(card, `${build}, at its end`);
  expect(card.headline).toMatch(/all \d+ done/);
}

const bare = (text: string) => text.replace(/[\\​*]/g, '').replace(/\s+/g, ' ');

describe.each(builds)('%s', (build) => {
  test('is whole on Discord, Matrix and at the prompt, stage after stage', { timeout: 60_000 }, async () => {
    let shown = 0;
    await walk(build, (card, at) => {
      shown += 1;
      const { embeds, files } = messageOf(card);
      expect(files, at).toEqual([]);
      const discord = bare(embeds.flatMap(({ fields = [] }) => fields.map(({ value }) => value)).join('\n'));
      const reply = { kind: 'card', card } as const;
      const matrix = matrixReply(reply).body;
      const prompt = bare(terminalReply(reply, { color: false, width: 90 }));
      for (const text of [...card.notes, ...card.cautions.map((one) => one.text)]) {
        for (const where of [discord, bare(matrix), prompt]) expect(where, at).toContain(bare(text));
      }
      for (const [, , name] of card.table?.rows ?? []) expect(discord, at).toContain(bare(name ?? ''));
      expect(card.next.length).toBeLessThanOrEqual(limits.buttonsInRow);
      expect(linesBelow(reply)).toHaveLength(card.next.length);
    });
    expect(shown).toBeGreaterThan(allStages.length);
  });
});
