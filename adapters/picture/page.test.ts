import { describe, expect, it } from 'vitest';
import { textPage } from './page.ts';

describe('an answer as a picture', () => {
  it('escapes what was typed and names itself', () => {
    const svg = textPage('14" <b> & more\nWhat can hurt   steam', { title: 'mix 14" <b>' });
    expect(svg).toContain('14&quot; &lt;b&gt; &amp; more');
    expect(svg).toContain('<title>mix 14&quot; &lt;b&gt;</title>');
    expect(svg).not.toContain('<b>');
    expect(svg).toContain('class="hurt"');
  });

  it('grows with the text, so that nothing is cut', () => {
    const height = (text: string) => Number(/height="(\d+)"/.exec(textPage(text, { title: 't' }))?.[1]);
    expect(height('a\nb\nc\nd') - height('a\nb')).toBe(40);
  });
});
