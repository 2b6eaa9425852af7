import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { makeBot } from '../peers/matrix-bot.ts';
import { startSynapse, synapseMissing } from '../peers/synapse.ts';
import { answerTo, openAsker } from '../peers/synapse-asker.ts';

const patience_ms = 60_000;

test.skipIf(synapseMissing())(
  'the program, of the source or of the bundle, answers in an encrypted room with a picture, and after a restart',
  {
    timeout: 240_000,
  },
  async () => {
    const synapse = await startSynapse();
    const data = mkdtempSync(join(tmpdir(), 'teemer-program-'));
    const bot = await makeBot(synapse, { env: { TEEMER_DATA: data } });
    try {
      await bot.start();
      const ann = await openAsker(synapse, 'ann', { encrypted: true });
      const room = await ann.room([bot.userId], { encrypted: true });
      const ask = async (line: string) => ann.hear(answerTo(bot.userId, await ann.say(room, line)), patience_ms);
      expect(await ask('mix 30 L')).toMatchObject({ wasEncrypted: true, failed: false, shield: 0 });
      await ask('size can 20 gal crucible=6 in x 8 in');
      const picture = await ann.hear(({ content }) => content.msgtype === 'm.image', patience_ms);
      expect(picture.content).toMatchObject({ file: { v: 'v2' }, info: { mimetype: 'image/png' } });
      expect(await bot.stop()).toBe(0);
      await bot.start();
      const again = await ask('mix 31 L');
      expect(again).toMatchObject({ wasEncrypted: true, failed: false, shield: 0 });
      expect(again.content.body).toContain('amount 31 L');
      expect(await bot.stop()).toBe(0);
      ann.leave();
    } finally {
      await bot.stop('SIGKILL');
      await synapse.remove();
      rmSync(data, { recursive: true, force: true });
    }
  },
);
