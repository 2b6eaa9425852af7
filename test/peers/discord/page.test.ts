import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { markdownHtml } from './markdown.ts';
import { messagePage, type Shown } from './page.ts';
import { findChromium, shoot } from './shoot.ts';

const message: Shown = {
  content: '',
  embeds: [
    {
      title: 'Clay–sand lining',
      description: '**33 lb** dry clay and **107 lb** sand',
      color: 0xb3541e,
      fields: [
        { name: 'What can hurt', value: 'Silica: damp the powder' },
        { name: 'dry clay', value: '33 lb', inline: true },
        { name: 'sand', value: '107 lb', inline: true },
        { name: 'water', value: '1.1 to 1.6 gal', inline: true },
        { name: 'cost', value: '$24', inline: true },
      ],
      image: { url: 'attachment://mix.png' },
      footer: { text: '3 sources' },
    },
  ],
  components: [{ type: 1, components: [{ type: 2, style: 2, label: 'dry it', custom_id: 't1:next:1' }] }],
  attachments: [
    {
      id: '1',
      name: 'mix.png',
      description: 'two sacks',
      contentType: 'image/png',
      bytes: new Uint8Array([1, 2, 3]),
      url: '',
    },
  ],
};

describe('the page of a message', () => {
  const page = messagePage(message, { theme: 'dark', question: '/mix amount:1.1 cu ft' });

  test('has all that the message has, once', () => {
    for (const part of [
      'Clay–sand lining',
      '<b>33 lb</b>',
      'Silica: damp the powder',
      '3 sources',
      'dry it',
      '#b3541e',
    ]) {
      expect(page.split(part)).toHaveLength(2);
    }
    expect(page.match(/<img src="data:image\/png;base64,AQID" alt="two sacks">/g)).toHaveLength(1);
    expect(page).toContain('data-theme="dark"');
  });

  test('sets inline fields three abreast and the others alone', () => {
    const groups = [...page.matchAll(/<dl>(.*?)<\/dl>/g)].map(([, group = '']) => group.split('<dt>').length - 1);
    expect(groups).toEqual([1, 3, 1]);
  });

  test('lets nothing through as markup of the page', () => {
    const shown = messagePage(
      { ...message, content: '<script>alert(1)</script>' },
      { theme: 'light', question: '<b>' },
    );
    expect(shown).not.toContain('<script>');
    expect(shown).not.toContain('<b></p>');
  });

  test.skipIf(findChromium() === undefined)('is photographed whole', () => {
    const folder = mkdtempSync(join(tmpdir(), 'teemer-shot-'));
    try {
      const picture = join(folder, 'page.png');
      shoot(page, picture);
      const png = readFileSync(picture);
      expect(png.subarray(1, 4).toString()).toBe('PNG');
      expect(png.readUInt32BE(16)).toBe(700);
      expect(png.readUInt32BE(20)).toBeGreaterThan(200);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });
});

test.each([
  ['a **b** c', '<div>a <b>b</b> c</div>'],
  ['2 \\* 3 \\* 4', '<div>2 * 3 * 4</div>'],
  ['`a*b*c`', '<div><code>a*b*c</code></div>'],
  ['*a* and _b_', '<div><i>a</i> and <i>b</i></div>'],
  ['snake_case_name', '<div>snake_case_name</div>'],
  ['-# small', '<small>small</small>'],
  ['- one', '<li>one</li>'],
  ['```\na < b\n```', '<pre>a &lt; b\n</pre>'],
  ['[why](https://example.org/a)', '<div><a href="https://example.org/a">why</a></div>'],
  ['a & b', '<div>a &amp; b</div>'],
])('the markup %j', (text, html) => {
  expect(markdownHtml(text)).toBe(html);
});
