import { stripVTControlCharacters } from 'node:util';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { renderCard, renderReply } from './render.ts';
import { sampleCard, worstCautions } from './sample-card.ts';

const look = { color: false, width: 80 };
const squeezed = (text: string) => text.replace(/\s+/g, ' ');

describe('a card', () => {
  test('stands in the order of the house', () => {
    const text = renderCard(sampleCard, look);
    const order = [
      '15 kg clay',
      'What can hurt',
      'dry clay',
      'batch',
      'Squeeze it',
      'You gave',
      'I assumed',
      'Biggest doubt',
      'Sources',
      'Ask next',
    ];
    const places = order.map((part) => text.indexOf(part));
    expect(places).not.toContain(-1);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
  });

  test('aligns figures: label, value, range, the other system, note', () => {
    const rows = renderCard(sampleCard, look).split('\n');
    expect(rows).toContain('  dry clay   15 kg   (12 to 18)   33 lb    1 bag');
    expect(rows).toContain('  sand       49 kg                108 lb');
  });

  test('heads a group of figures once, and drops the heading with its last figure', () => {
    const [clay, sand] = sampleCard.figures;
    const figures = [
      { ...clay!, group: 'buy' },
      { ...sand!, group: 'buy' },
      { ...sand!, id: 'mix.wet', label: 'wet mass', group: 'weigh' },
    ];
    const shown = renderCard({ ...sampleCard, figures }, look).split('\n');
    const at = (line: string) => shown.indexOf(line);
    expect(shown.filter((line) => line === 'buy')).toHaveLength(1);
    expect(at('buy')).toBe(shown.findIndex((line) => line.startsWith('  dry clay')) - 1);
    expect(at('weigh')).toBe(shown.findIndex((line) => line.startsWith('  wet mass')) - 1);
    const { table: _, ...bare } = sampleCard;
    const full = renderCard({ ...bare, figures }, look).split('\n').length;
    const shorter = renderCard({ ...bare, figures }, { ...look, maxLines: full - 2 });
    expect(shorter).not.toMatch(/weigh|wet mass/);
    expect(shorter).toContain('\nbuy\n');
  });

  test('names the option that overrides an assumption', () => {
    expect(renderCard(sampleCard, look)).toContain('bone dry (damp=10%) · nothing else');
  });

  test('why writes the working and the sources out', () => {
    const text = renderCard({ ...sampleCard, command: 'why' }, look);
    expect(text).toContain('1  dry mass = volume × density');
    expect(text).toContain('dry mass = 0.03 m³ × 2000 kg/m³ = 60 kg');
    expect(text).toContain('gives dry mass 60 kg (132 lb)');
    expect(text).not.toContain('why lists them');
  });

  test('leads with a danger that this question triggers', () => {
    const [leads] = worstCautions.filter((caution) => caution.leads);
    const text = squeezed(renderCard({ ...sampleCard, cautions: worstCautions }, look));
    expect(text.indexOf(squeezed(leads!.text))).toBeLessThan(text.indexOf(sampleCard.headline));
  });
});

test('an attachment is written as it is, but for what would steer the terminal', () => {
  const text = `{\n  "name": "${'long '.repeat(30)}\u009b31m"\n}`;
  const lines = renderCard({ ...sampleCard, attachment: { name: 'mydata.json', text } }, look).split('\n');
  expect(lines).toContain(`  "name": "${'long '.repeat(30)} 31m"`);
});

describe('shortening', () => {
  const lengthOf = (maxLines: number) => renderCard(sampleCard, { ...look, maxLines });

  test('drops sources, then rows, then figures', () => {
    const full = renderCard(sampleCard, look).split('\n').length;
    expect(lengthOf(full - 1)).not.toContain('Sources');
    expect(lengthOf(full - 1)).toContain('7 kg');
    expect(lengthOf(full - 3)).not.toContain('8 kg');
    expect(lengthOf(full - 3)).toContain('dry clay');
    expect(lengthOf(1)).not.toContain('dry clay');
  });

  test('never drops the headline or a caution, even of the most the rules can give', () => {
    const text = squeezed(renderCard({ ...sampleCard, cautions: worstCautions }, { ...look, maxLines: 1 }));
    expect(text).toContain(sampleCard.headline);
    for (const caution of worstCautions) expect(text).toContain(squeezed(caution.text));
  });
});

describe('an error', () => {
  const reply = {
    kind: 'error',
    error: { code: 'unknown-unit', what: '"volts" is no unit', expected: 'a volume', example: 'mix 3 L' },
    cautions: sampleCard.cautions,
  } as const;

  test('says what, what would be right, a line that works, then what can hurt', () => {
    const text = renderReply(reply, look);
    expect(text).toMatch(/^"volts" is no unit\.\nExpected {8}a volume\nTry {13}mix 3 L\n\nWhat can hurt/);
  });

  test('prefers the corrected line', () => {
    expect(renderReply({ ...reply, tryLine: 'mix 3 gal' }, look)).toContain('mix 3 gal');
  });
});

describe('on any terminal', () => {
  test('no line is wider than asked, and colour changes nothing but colour', () => {
    const words = fc.string({ maxLength: 120, unit: 'grapheme-ascii' });
    fc.assert(
      fc.property(fc.integer({ min: 30, max: 200 }), words, (width, headline) => {
        const card = { ...sampleCard, headline, cautions: worstCautions };
        const text = renderCard(card, { color: false, width });
        for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(width);
        expect(stripVTControlCharacters(renderCard(card, { color: true, width }))).toBe(text);
      }),
      { numRuns: 60 },
    );
  });

  test('nothing typed can steer it', () => {
    const text = renderCard({ ...sampleCard, headline: 'a\u001b[2Jb', given: ['x\u0007\u202e'] }, look);
    for (const steering of ['\u001b', '\u0007', '\u202e']) expect(text).not.toContain(steering);
  });
});
