import { describe, expect, test } from 'vitest';
import { conversation } from './conversation.ts';
import { fencesOf, readReadme, withPicture, writeReadme } from './readme.ts';

/** Everything the README shows is asked here. `WRITE_README=1 npx vitest run test/contract` redraws its picture. */
const text = readReadme();
const asked = fencesOf(text).filter(({ info }) => info.startsWith('teemer'));
const shellLines = [...text.matchAll(/npm run -s ask -- [^'\n]*'([^']+)'/g)].map(([, line = '']) => line);

test('the picture is what the program answers', async () => {
  const drawn = await withPicture(text);
  if (process.env.WRITE_README) writeReadme(drawn);
  else expect(text).toBe(drawn);
});

test('there are questions to try', () => {
  expect(asked.length).toBeGreaterThan(1);
  expect(shellLines.length).toBeGreaterThan(0);
});

describe.each(asked.map(({ info, lines }, at): [string, string, readonly string[]] => [`${at + 1}`, info, lines]))(
  'README conversation %s',
  (_at, info, lines) => {
    const ask = conversation();

    test.each(lines)('%s', async (line) => {
      const reply = await ask(line);
      if (reply.kind === 'error' && info !== 'teemer refused') expect.fail(reply.error.what);
      expect(reply.kind).toBe(info === 'teemer refused' ? 'error' : 'card');
    });
  },
);

test.each(shellLines)("npm run -s ask -- '%s'", async (line) => {
  expect((await conversation()(line)).kind).toBe('card');
});
