import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { answerLine } from '../../../commands/answer.ts';
import type { Card, Reply } from '../../../commands/card.ts';
import { inProcessMemory } from '../../../commands/memory.ts';
import type { Figure } from '../../../core/quantity/figure.ts';
import { sampleCard, worstCautions } from '../../terminal/sample-card.ts';
import { limits } from '../limits.ts';
import { messageOf } from './card.ts';
import { errorMessage } from './error.ts';
import type { Message } from './payload.ts';
import { lengthOf } from './spread.ts';

/** Every published limit of a message, by name where one is broken. */
function broken({ content = '', embeds, files }: Message): readonly string[] {
  const embed = embeds[0]!;
  const { description = '', fields = [], footer } = embed;
  const over = (name: string, length: number, most: number) => (length > most ? [`${name}: ${length} > ${most}`] : []);
  return [
    ...over('content', content.length, limits.content),
    ...over('description', description.length, limits.description),
    ...over('fields', fields.length, limits.fields),
    ...over('footer', footer?.text.length ?? 0, limits.footer),
    ...over('embed', lengthOf(embed), limits.embed),
    ...over('embeds', embeds.length, 1),
    ...over('files', files.length, 2),
    ...fields.flatMap(({ name, value }) => [
      ...over('field name', name.length, limits.fieldName),
      ...over('field value', value.length, limits.fieldValue),
      ...(name === '' ? ['a field has no name'] : []),
      ...(value.trim() === '' ? ['a field says nothing'] : []),
    ]),
    ...(content === '' && description === '' ? ['no headline'] : []),
  ];
}

const nasty = fc.oneof(
  fc.string({ maxLength: 60, unit: 'grapheme' }),
  fc.constantFrom(
    '@everyone',
    '<@1234>',
    '**',
    '`x`',
    '||s||',
    '[a](https://b.c)',
    '\n# h',
    '\\',
    '___',
    '﷽'.repeat(40),
  ),
  fc.string({ maxLength: 3000 }),
  fc.constant('*'.repeat(1500)),
);
const figure = fc.record({
  id: fc.constant('x.y'),
  label: nasty,
  value: fc.double({ noNaN: true, min: -1e12, max: 1e12 }),
  unit: fc.constantFrom('m', 'kg', 'K', 'W', 'count', 'Pa', 's'),
  rangeBasis: fc.constant('none'),
  note: nasty,
});
const card = fc
  .record({
    headline: nasty,
    cautions: fc.oneof(fc.constant(worstCautions), fc.subarray([...worstCautions])),
    figures: fc.array(figure, { maxLength: 40 }),
    table: fc.record({
      columns: fc.array(nasty, { maxLength: 6 }),
      rows: fc.array(fc.array(nasty, { maxLength: 6 }), { maxLength: 60 }),
    }),
    notes: fc.array(nasty, { maxLength: 30 }),
    given: fc.array(nasty, { maxLength: 20 }),
    assumed: fc.array(fc.record({ text: nasty, override: nasty }), { maxLength: 20 }),
    doubt: nasty,
    sources: fc.constantFrom(['derived'], ['derived', 'common-practice']),
    command: fc.constantFrom('mix', 'why'),
    steps: fc.nat(60),
    units: fc.constantFrom('metric', 'US'),
  })
  .map(({ steps, ...parts }) => {
    const working = Array.from({ length: steps }, () => sampleCard.working[0]!);
    return { ...sampleCard, ...parts, working } as Card;
  });

const everything = ({ content = '', embeds }: Message) =>
  [content, embeds[0]?.description ?? '', ...(embeds[0]?.fields ?? []).map(({ value }) => value)].join('\n');

const fieldsNamed = (card: Card, name: string) =>
  (messageOf(card).embeds[0]?.fields ?? []).filter((field) => field.name.startsWith(name));

describe('a card as a message', () => {
  test('breaks no limit, whatever is on it, and never loses headline or cautions', () => {
    fc.assert(
      fc.property(card, (any) => {
        const message = messageOf(any);
        expect(broken(message)).toEqual([]);
        const said = everything(message).replaceAll('\\', '');
        for (const { text } of any.cautions) expect(said).toContain(text);
      }),
      { numRuns: 150 },
    );
  });

  test('the card with the most cautions there can be keeps each of them and its headline', () => {
    const message = messageOf({ ...sampleCard, headline: 'x'.repeat(800), cautions: worstCautions });
    expect(broken(message)).toEqual([]);
    const said = everything(message);
    expect(said).toContain('x'.repeat(800));
    for (const { text } of worstCautions) expect(said).toContain(text);
    expect(message.files.map(({ name }) => name)).toEqual(['mix.txt']);
    expect(new TextDecoder().decode(message.files[0]?.bytes)).toContain('dry clay');
  });

  test('stands in the order of the house: answer, what can hurt, figures, table, the rest', () => {
    const { embeds, files } = messageOf(sampleCard);
    expect(embeds[0]?.description).toBe('**15 kg clay and 49 kg sand.**');
    expect(embeds[0]?.fields?.map(({ name }) => name)).toEqual([
      'What can hurt',
      'dry clay',
      'sand',
      'batch · clay',
      'Beside it',
      'Biggest doubt',
      'I assumed',
      'You gave',
    ]);
    expect(embeds[0]?.fields?.[0]?.inline).toBe(false);
    expect(embeds[0]?.fields?.[1]).toMatchObject({ value: '**15 kg**\n(12 to 18)\n33 lb\n1 bag', inline: true });
    expect(embeds[0]?.footer?.text).toContain('Sources:');
    expect(files).toEqual([]);
  });

  test('drops sources first, then rows, then figures', () => {
    const filled = (length: number) =>
      messageOf({ ...sampleCard, notes: Array.from({ length }, () => 'n'.repeat(99)) });
    const seen = Array.from({ length: 64 }, (_, at) => filled(at)).map(({ embeds: [embed] }) => ({
      sources: embed?.footer?.text.includes('Sources') ?? false,
      rows: embed?.fields?.find(({ name }) => name.startsWith('batch'))?.value.split('\n').length ?? 0,
      figures: embed?.fields?.filter(({ inline }) => inline).length ?? 0,
    }));
    for (const { sources, rows, figures } of seen) {
      if (rows < 2) expect(sources).toBe(false);
      if (figures < 2) expect(rows).toBe(0);
    }
    expect(seen.at(-1)).toEqual({ sources: false, rows: 0, figures: 0 });
    expect(seen[0]).toEqual({ sources: true, rows: 2, figures: 2 });
  });

  test('a long one is brief at first: what is needed first, without table and sources, and says what shows the rest', () => {
    const figure = (at: number, first: boolean): Figure => ({
      ...sampleCard.figures[0]!,
      id: `mix.f${at}`,
      label: `number ${at}`,
      group: at < 20 ? 'place' : 'buy',
      ...(first ? { first } : {}),
    });
    const long = { ...sampleCard, figures: Array.from({ length: 30 }, (_, at) => figure(at, at % 3 === 0)) };
    const { embeds, files } = messageOf(long, undefined, { brief: true });
    const fields = embeds[0]!.fields!;
    expect(fields.map(({ name }) => name)).toEqual([
      'What can hurt',
      'place',
      'buy',
      'Beside it',
      'Biggest doubt',
      'I assumed',
      'You gave',
    ]);
    expect(fields[1]!.value).toContain('number 0: **15 kg** (12 to 18) · 33 lb · 1 bag\nnumber 3: ');
    expect(fields[1]!.value).not.toContain('number 1:');
    expect(embeds[0]!.footer?.text).toBe('10 of 30 figures, and no table: All figures shows the rest.');
    expect(files).toEqual([]);
    const whole = messageOf(long).embeds[0]!;
    expect(whole.fields!.find(({ name }) => name === 'place')!.value.split('\n')).toHaveLength(20);
    expect(whole.footer?.text).toContain('Sources:');
    const unmarked = { ...long, figures: long.figures.map(({ first: _, ...one }) => one) };
    const shown = messageOf(unmarked, undefined, { brief: true }).embeds[0]!.fields!;
    expect(shown.find(({ name }) => name === 'place')!.value.split('\n')).toHaveLength(12);
  });

  test('a list that is too long for one field goes on under a name that is seen, in parts of one size', () => {
    const assumed = Array.from({ length: 16 }, (_, at) => ({ text: `${at} ${'x'.repeat(66)}` }));
    const [first, second, ...others] = fieldsNamed({ ...sampleCard, assumed }, 'I assumed');
    expect([first?.name, second?.name, others]).toEqual(['I assumed', 'I assumed, continued', []]);
    expect(Math.abs(first!.value.length - second!.value.length)).toBeLessThan(150);
    const rows = Array.from({ length: 40 }, (_, at) => [`row ${at}`, 'y'.repeat(50)]);
    const names = fieldsNamed({ ...sampleCard, table: { columns: ['a', 'b'], rows } }, 'a · b').map(({ name }) => name);
    expect(names.slice(0, 2)).toEqual(['a · b', 'a · b, continued']);
  });

  test('a long list that is all there is to read stands in one piece below the answer', () => {
    const rows = Array.from({ length: 40 }, (_, at) => [`row ${at}`, 'y'.repeat(50)]);
    const read = { ...sampleCard, cautions: [], figures: [], table: { columns: ['a', 'b'], rows } };
    const [embed] = messageOf(read).embeds;
    expect(embed?.description).toMatch(/^\*\*15 kg clay.*\n\n\*a · b\*\n\*\*row 0\*\* y+\n/);
    for (const [head] of rows) expect(embed?.description).toContain(`**${head}**`);
    expect(embed?.fields?.map(({ name }) => name)).not.toContain('a · b');
    const endless = { ...read, table: { columns: ['a', 'b'], rows: [...rows, ...rows, ...rows] } };
    expect(messageOf(endless).embeds[0]?.description?.length).toBeLessThanOrEqual(4096);
    expect(messageOf(endless).files.map(({ name }) => name)).toContain('mix.txt');
  });

  test.each(['help', 'emergency'])('%s has no empty line in a list', async (line) => {
    const reply = await answerLine(line, { asker: 'a', place: 'p', now: new Date(0), memory: inProcessMemory() });
    if (reply.kind === 'error') throw new Error(reply.error.what);
    const unnamed = messageOf(reply.card).embeds[0]?.fields?.filter(({ name }) => name.trim() === '\u200b') ?? [];
    expect(unnamed.length).toBeLessThanOrEqual(1);
  });

  test('why writes the working out', () => {
    const fields = messageOf({ ...sampleCard, command: 'why' }).embeds[0]?.fields ?? [];
    expect(fields.find(({ name }) => name === 'The working')?.value).toContain('dry mass = volume × density');
    expect(fields.some(({ name }) => name === 'Sources')).toBe(true);
  });

  test('what the card hands over as a file is attached', () => {
    const { files } = messageOf({ ...sampleCard, attachment: { name: 'mydata.json', text: '{"builds":[]}' } });
    expect(files).toEqual([{ name: 'mydata.json', bytes: new TextEncoder().encode('{"builds":[]}') }]);
  });

  test('a picture is the embed’s image and carries its words', () => {
    const message = messageOf(sampleCard, { name: 'mix.png', bytes: new Uint8Array(3), alt: 'a ring' });
    expect(message.embeds[0]?.image?.url).toBe('attachment://mix.png');
    expect(message.files).toHaveLength(1);
  });
});

test('an error breaks no limit either, with every caution there is', () => {
  fc.assert(
    fc.property(fc.record({ what: nasty, expected: nasty, example: nasty }), (error) => {
      const reply = { kind: 'error', error: { code: 'unfit', ...error }, cautions: worstCautions } as const;
      const message = errorMessage(reply satisfies Reply);
      expect(broken(message)).toEqual([]);
      for (const { text } of worstCautions) expect(everything(message)).toContain(text);
    }),
  );
});
