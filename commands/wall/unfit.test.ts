import { describe, expect, it } from 'vitest';
import { answerLine } from '../answer.ts';
import type { Card } from '../card.ts';
import { inProcessMemory } from '../memory.ts';

async function cardOf(line: string): Promise<Card> {
  const reply = await answerLine(line, { asker: 'ann', place: 'shed', now: new Date(0), memory: inProcessMemory() });
  if (reply.kind === 'error') throw new Error(`${line}: ${reply.error.what}`);
  return reply.card;
}

const speaks = ({ headline, cautions }: Card) => ({
  headline: /K short|is no hot face|behind it gets to/.test(headline),
  caution: cautions.some(({ id }) => id === 'lining-short'),
});
const silent = { headline: false, caution: false };
const loud = { headline: true, caution: true };
const wall = 'layers=1.5 in clay-sand lining; 2 in vermiculite';

/** The three that build or fire a furnace, each asked about one metal. */
const questions = [
  ['size melt', (metal: string) => `size melt 5 kg ${metal}`],
  ['size can', (metal: string) => `size can 20 gal crucible=5 in x 6 in metal=${metal}`],
  ['melt in a furnace', (metal: string) => `melt 3 kg ${metal} ${wall}`],
  ['fuel', (metal: string) => `fuel propane amount=3 kg rate=40 kW metal=${metal}`],
] as const;

describe.each(questions)('%s', (_name, line) => {
  it.each(['bronze', 'copper', 'iron'])('says that its lining is short of %s, as mix and wall do', async (metal) => {
    expect(speaks(await cardOf(line(metal)))).toEqual(loud);
  });

  it.each(['aluminium', 'zinc'])('says nothing of a lining that stands %s', async (metal) => {
    expect(speaks(await cardOf(line(metal)))).toEqual(silent);
  });

  it('names what to ask for, which then says nothing any more', async () => {
    const asked = line('bronze');
    const { headline } = await cardOf(asked);
    const [, change = ''] = /Ask for (.*) instead\./.exec(headline) ?? [];
    expect(change).toMatch(/^(lining|layers)=/);
    expect(speaks(await cardOf(`${asked.replace(` ${wall}`, '')} ${change}`))).toEqual(silent);
  });
});

it('a melt without a furnace has no lining to speak of', async () => {
  expect(speaks(await cardOf('melt 3 kg bronze'))).toEqual(silent);
});

it('puts a face before a wall of one layer', async () => {
  const { headline } = await cardOf('melt 3 kg bronze layers=2 in fibre blanket');
  const [, layers = ''] = /Ask for (layers=.*) instead/.exec(headline) ?? [];
  expect(layers).toMatch(/^layers=30 mm .*; 2 in /);
  expect(speaks(await cardOf(`melt 3 kg bronze ${layers}`))).toEqual(silent);
});

describe('size hands on', () => {
  it('the metal of the melt, so that mix refuses what does not stand it', async () => {
    expect((await cardOf('size melt 5 kg bronze')).handsOver.metal).toBe('bronze');
    await expect(cardOf('mix for=(size melt 5 kg bronze)')).rejects.toThrow(/Stoneware clay holds to 1150 °C/i);
    const { headline } = await cardOf('mix for=(size melt 5 kg bronze lining=dense castable)');
    expect(headline).toContain('castable');
  });
});
