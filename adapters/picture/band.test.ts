import { describe, expect, it } from 'vitest';
import { answerLine } from '../../commands/answer.ts';
import type { Card } from '../../commands/card.ts';
import { inProcessMemory } from '../../commands/memory.ts';
import { commands } from '../../commands/registry.ts';
import { localRules } from '../../core/hazard/cautions.ts';
import { sampleCard, worstCautions } from '../terminal/sample-card.ts';
import { withCautions } from './band.ts';
import { drawingSvg } from './drawing.ts';
import { picturesOf } from './pictures.ts';
import { sampleChart, sampleDrawing, samplePattern } from './sample.ts';
import { letter_px } from './theme.ts';

const look = { units: 'US', theme: 'light' } as const;
const wordsOf = (svg: string) =>
  svg
    .replace(/<(?:title|desc)>.*?<\/(?:title|desc)>/gs, '')
    .replace(/<[^>]*>/g, ' ')
    .replace(/&quot;/g, '"')
    .replace(/&amp;/g, '&')
    .replace(/\s+/g, ' ');
const sizeOf = (svg: string) => /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg)!.slice(1).map(Number) as [number, number];

async function cardOf(line: string): Promise<Card | undefined> {
  const reply = await answerLine(line, { asker: 'a', place: 'p', now: new Date(0), memory: inProcessMemory() });
  return reply.kind === 'card' ? reply.card : undefined;
}

describe('what can hurt below a picture', () => {
  it('is every danger, caution and note in its own words, even of the worst card', async () => {
    const card = {
      ...sampleCard,
      drawings: [sampleDrawing, samplePattern],
      chart: sampleChart,
      cautions: worstCautions,
    };
    for (const picture of picturesOf(card)) {
      for (const theme of ['light', 'dark'] as const) {
        const words = wordsOf(await picture.svg({ units: 'US', theme }));
        for (const { text, severity } of worstCautions) {
          expect(words).toContain(severity === 'danger' ? `Danger: ${text}` : text);
        }
      }
    }
  });

  it('adds to the height alone, with letters as large as the picture’s own', () => {
    const { title, alt } = sampleDrawing;
    const plain = drawingSvg(sampleDrawing, look);
    const banded = withCautions(plain, { title, alt, cautions: worstCautions }, look);
    const [[width, height], [wider, taller]] = [sizeOf(plain), sizeOf(banded)];
    expect(wider).toBe(width);
    expect(taller).toBeGreaterThan(height + worstCautions.length * letter_px);
    const scale = Number(/scale\(([\d.]+)\)/.exec(banded)![1]);
    expect((letter_px * scale * 550) / wider).toBeCloseTo(11);
    expect(banded).toContain(`<title>${title}</title>`);
    expect(banded.match(/<title>/g)).toHaveLength(1);
  });

  it('is nothing where nothing can hurt', () => {
    const plain = drawingSvg(sampleDrawing, look);
    expect(withCautions(plain, { title: 't', alt: 'a', cautions: [] }, look)).toBe(plain);
  });

  const shown = commands.filter(({ slow, takesLine }) => !slow && !takesLine);
  it.each(shown.map(({ name, examples }) => [name, examples[0]?.line ?? name] as const))(
    'stands on every picture of %s that is hot work',
    async (_name, line) => {
      const card = await cardOf(line);
      if (!card?.cautions.some(({ id }) => id === localRules.id)) return;
      for (const picture of picturesOf(card)) {
        const words = wordsOf(await picture.svg({ units: card.units, theme: 'light' }));
        expect(words, picture.id).toContain('What can hurt');
        for (const { text } of card.cautions) expect(words, picture.id).toContain(text);
      }
    },
  );
});
