import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Card, Reply } from '../../commands/card.ts';
import { formatFigure } from '../../core/quantity/format.ts';
import { sampleCard, worstCautions } from '../terminal/sample-card.ts';
import { editOf, noticeOf } from './content.ts';
import { escaped, plain } from './plain.ts';
import { linesBelow, renderReply, saying } from './render.ts';

/** What the specification lets an event have. */
const eventBytes = 65_536;
/** Headers, hashes, signatures and the ids before it, as the largest events of our own homeserver had them, doubled. */
const around = 3000;

/** The event as the server keeps it: in an encrypted room the content as base64 of JSON. */
function bytesOf(content: object): number {
  const clear = JSON.stringify({ type: 'm.room.message', room_id: `!${'r'.repeat(43)}`, content });
  return Math.ceil(new TextEncoder().encode(clear).length / 3) * 4 + around;
}

const spot = { root: `$${'e'.repeat(43)}`, to: `$${'e'.repeat(43)}` };
const events = (reply: Reply) => {
  const faces = renderReply(reply);
  return [noticeOf(faces, spot, '@ann:teemer.test'), editOf(faces, spot.to)];
};

const nasty = fc.oneof(
  fc.string({ unit: 'grapheme', maxLength: 300 }),
  fc.constantFrom(
    '<script>alert(1)</script>',
    '"><img src=x onerror=y>',
    '&amp;',
    '</td></table>',
    '\u202eabc',
    '@room',
    '\ud800',
  ),
  fc.string({ maxLength: 40 }).map((text) => `<b>${text}</b>`.repeat(20)),
);

const card: fc.Arbitrary<Card> = fc
  .record({
    headline: nasty,
    cautions: fc.shuffledSubarray([...worstCautions]),
    figures: fc.array(
      fc.record({
        id: fc.constant('mix.clay'),
        // Every figure has a name.
        label: nasty.map((text) => `dry ${text}`),
        value: fc.double({ min: 0, max: 1e6, noNaN: true }),
        unit: fc.constantFrom('kg' as const, 'm3' as const, 'K' as const),
        rangeBasis: fc.constant('none' as const),
        note: nasty,
      }),
      { maxLength: 60 },
    ),
    table: fc.record({
      columns: fc.tuple(nasty, nasty),
      rows: fc.array(fc.tuple(nasty, nasty), { maxLength: 200 }),
    }),
    notes: fc.array(nasty, { maxLength: 10 }),
    given: fc.array(nasty, { maxLength: 10 }),
    next: fc.array(fc.record({ label: nasty, line: nasty }), { maxLength: 12 }),
  })
  .map((some) => ({ ...sampleCard, ...some }));

const allowed = new Set([
  'p',
  'strong',
  'em',
  'ul',
  'ol',
  'li',
  'table',
  'thead',
  'tbody',
  'tr',
  'th',
  'td',
  'pre',
  'code',
  'br',
]);

/** Every tag opened is one of ours, carries nothing but `colspan`, and is closed in its turn. */
function wellFormed(html: string): void {
  const open: string[] = [];
  for (const [tag, end, name = '', rest = ''] of html.matchAll(/<(\/?)([a-z0-9]*)([^>]*)>/g)) {
    expect(allowed, tag).toContain(name);
    expect(rest, tag).toMatch(/^(?: colspan="\d+")?$/);
    if (name === 'br') continue;
    if (end === '') open.push(name);
    else expect(open.pop()).toBe(name);
  }
  expect(open).toEqual([]);
  expect(html.replace(/<\/?[a-z0-9]+(?: colspan="\d+")?>/g, '')).not.toMatch(/[<>]/);
}

describe('a card as a message', () => {
  test('whatever it holds: headline and every caution, tags of ours only, within an event', () => {
    fc.assert(
      fc.property(card, (made) => {
        const reply: Reply = { kind: 'card', card: made };
        const { body, formatted_body } = renderReply(reply);
        expect(body).toContain(plain(made.headline));
        expect(formatted_body).toContain(escaped(made.headline).replaceAll('\n', '<br>'));
        for (const { text } of made.cautions) {
          expect(body).toContain(plain(text));
          expect(formatted_body).toContain(escaped(text));
        }
        wellFormed(formatted_body);
        const [notice, edit] = events(reply);
        // Where edits are not known the outer words are all there is of the answer.
        for (const { text } of made.cautions) expect(edit!.body).toContain(plain(text));
        expect(edit!.body).toContain(plain(made.headline.slice(0, 200)));
        expect(Object.keys(notice!)).toEqual(expect.arrayContaining(['body', 'formatted_body']));
        expect(JSON.stringify([notice, edit])).not.toContain('"brief"');
        for (const event of [notice!, edit!]) expect(bytesOf(event)).toBeLessThanOrEqual(eventBytes);
      }),
      { numRuns: 150 },
    );
  });

  test('every figure that is shown stands in both, the rest is counted', () => {
    fc.assert(
      fc.property(card, (made) => {
        const { body, formatted_body } = renderReply({ kind: 'card', card: made });
        const left = Number(/… (\d+) more left out/.exec(body)?.[1] ?? 0);
        const shown = made.figures.filter((figure) => {
          const { lead } = formatFigure(figure, made.units);
          const there = [body.includes(plain(figure.label)) && body.includes(lead)];
          there.push(formatted_body.includes(`<td>${escaped(figure.label).replaceAll('\n', '<br>')}</td>`));
          return there.every(Boolean);
        });
        expect(shown.length).toBeGreaterThanOrEqual(made.figures.length - left);
      }),
      { numRuns: 100 },
    );
  });

  test('the worst card: every caution there is, long tables, a long headline', () => {
    const long = 'ä'.repeat(1000);
    const worst: Card = {
      ...sampleCard,
      headline: long,
      cautions: worstCautions,
      figures: Array.from({ length: 200 }, () => ({ ...sampleCard.figures[0]!, label: long, note: long })),
      table: { columns: ['a', 'b'], rows: Array.from({ length: 500 }, () => [long, long]) },
      notes: Array.from({ length: 50 }, () => long),
      given: Array.from({ length: 50 }, () => long),
    };
    const { body } = renderReply({ kind: 'card', card: worst });
    for (const { text } of worstCautions) expect(body).toContain(text);
    expect(body).toContain(long);
    for (const event of events({ kind: 'card', card: worst })) expect(bytesOf(event)).toBeLessThanOrEqual(eventBytes);
  });

  test('in the order of the house: answer, what can hurt, figures, the rest', () => {
    const { body, formatted_body } = renderReply({ kind: 'card', card: sampleCard });
    const order = [
      '15 kg clay and',
      'What can hurt',
      'dry clay',
      'batch',
      'Squeeze it',
      'You gave',
      'I assumed',
      'Ask next',
    ];
    for (const face of [body, formatted_body]) {
      const at = order.map((words) => face.indexOf(words));
      expect(at).toEqual(at.toSorted((a, b) => a - b));
      expect(at[0]).toBeGreaterThanOrEqual(0);
    }
    expect(body).toContain('- dry clay: 15 kg · (12 to 18) · 33 lb · 1 bag');
    expect(body).toContain('1. again damp=0% (drier)');
  });

  test('drops sources first, then rows, then figures', () => {
    const filled = (length: number) =>
      renderReply({ kind: 'card', card: { ...sampleCard, notes: Array.from({ length }, () => 'n'.repeat(500)) } }).body;
    const whole = filled(0);
    expect(whole).toMatch(/Sources.*why lists them/);
    const seen = Array.from({ length: 60 }, (_, at) => filled(at)).map((body) => ({
      sources: body.includes('Sources:'),
      rows: body.includes('- first: 8 kg'),
      figures: body.includes('dry clay'),
    }));
    for (const { sources, rows, figures } of seen) {
      if (!rows) expect(sources).toBe(false);
      if (!figures) expect(rows).toBe(false);
    }
    expect(seen.some(({ figures }) => !figures)).toBe(true);
  });

  test('a danger that the question triggers stands first', () => {
    const cautions = worstCautions.filter(({ leads }) => leads);
    expect(cautions.length).toBeGreaterThan(0);
    const { body } = renderReply({ kind: 'card', card: { ...sampleCard, cautions } });
    expect(body.startsWith('Danger: ')).toBe(true);
  });
});

test('an error says what is right and can be asked by number, with every caution', () => {
  fc.assert(
    fc.property(fc.record({ what: nasty, expected: nasty, example: nasty }), (error) => {
      const reply = { kind: 'error', error: { code: 'unfit', ...error }, cautions: worstCautions } satisfies Reply;
      const { body, formatted_body } = renderReply(reply);
      wellFormed(formatted_body);
      for (const { text } of worstCautions) {
        expect(body).toContain(text);
        expect(events(reply)[1]!.body).toContain(text);
      }
      expect(linesBelow(reply)).toEqual([error.example]);
      for (const event of events(reply)) expect(bytesOf(event)).toBeLessThanOrEqual(eventBytes);
    }),
  );
});

test('a sentence of the bot’s own says what can hurt in what it is about', () => {
  const { body, formatted_body, brief } = saying('That went wrong here.', worstCautions);
  for (const { text } of worstCautions) {
    for (const face of [body, brief]) expect(face).toContain(text);
    expect(formatted_body).toContain(escaped(text));
  }
});

test('what numbers are for is said in letters that every machine has', () => {
  const { body, formatted_body } = renderReply({ kind: 'card', card: sampleCard });
  expect(body).toContain('Answer with a number, or react with the key of its digit');
  expect(`${body}${formatted_body}`).not.toMatch(/[\ufe0f\u20e3]/);
});

test('a notice calls on nobody but the asker; an edit on nobody', () => {
  const [notice, edit] = events({ kind: 'card', card: sampleCard });
  expect(notice).toMatchObject({ msgtype: 'm.notice', 'm.mentions': { user_ids: ['@ann:teemer.test'] } });
  expect(edit).toMatchObject({ 'm.mentions': {}, 'm.new_content': { msgtype: 'm.notice', 'm.mentions': {} } });
});
