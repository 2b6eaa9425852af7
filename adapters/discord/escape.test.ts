import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clipped, escaped, escapedTo } from './escape.ts';

describe('text that somebody typed', () => {
  test.each([
    ['@everyone', /@(everyone|here)/],
    ['<@1234> <#5> <t:0:R> </mix:1>', /(^|[^\\])</],
    ['[here](https://example.org)', /(^|[^\\])\[|:\/\//],
    ['**loud** ~~gone~~ ||hidden||', /(^|[^\\])[*~|]/],
  ])('%s comes to nothing', (typed, dangerous) => {
    expect(typed).toMatch(dangerous);
    expect(escaped(typed)).not.toMatch(dangerous);
  });

  test.each(['# heading', '> quote', '- item', 'one\n# two'])('%s is no block', (typed) => {
    expect(escaped(typed)).not.toMatch(/^\s*[#>-]/m);
  });

  test('sizes, dates and signs stay as they are read', () => {
    expect(escaped('14" x 8", 1 1/2 in (38 mm), +5 %')).toBe('14" x 8", 1 1/2 in (38 mm), +5 %');
  });

  test('marks that turn text round and controls become spaces', () => {
    expect(escaped('a\u202eb\u0007c\nd')).toBe('a b c\nd');
  });

  test('clipped to a length, never through an escape or a letter', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), fc.integer({ min: 1, max: 40 }), (text, most) => {
        const short = escapedTo(`**${text}**😀`, most);
        expect(short.length).toBeLessThanOrEqual(most);
        expect(short.isWellFormed()).toBe(true);
        expect(/(?:^|[^\\])(?:\\\\)*\\$/.test(short)).toBe(false);
        expect(clipped(text, most).length).toBeLessThanOrEqual(most);
      }),
    );
  });
});
