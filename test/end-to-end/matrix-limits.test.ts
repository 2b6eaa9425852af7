import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { makeBot } from '../peers/matrix-bot.ts';
import { startSynapse, synapseMissing } from '../peers/synapse.ts';
import { openAsker, wholeAnswer } from '../peers/synapse-asker.ts';
import { watchSynapse } from '../peers/synapse-watch.ts';

/** With the limits of a homeserver nobody has touched: ten messages at once, then one in five seconds. */
const burst = 10;

test.skipIf(synapseMissing())(
  'a homeserver with its limits on gets every answer, once, in order, when it will have it',
  {
    timeout: 240_000,
  },
  async () => {
    const synapse = await startSynapse({ limits: true });
    const data = mkdtempSync(join(tmpdir(), 'teemer-limits-'));
    const watch = await watchSynapse(synapse);
    const bot = await makeBot(watch.synapse, { file: 'test/peers/unhurried-bot.ts', env: { TEEMER_DATA: data } });
    try {
      await bot.start();
      // More registrations are more than the homeserver takes.
      const askers = [await openAsker(synapse, 'ann'), await openAsker(synapse, 'bob', { encrypted: true })];
      const rooms = [await askers[0]!.room([bot.userId]), await askers[1]!.room([bot.userId], { encrypted: true })];
      const asked = await Promise.all(
        askers.map(async (asker, at) => {
          const questions: string[] = [];
          for (let n = 1; n <= 7; n++) questions.push(await asker.say(rooms[at]!, `mix ${n} L`));
          return questions;
        }),
      );
      for (const [at, questions] of asked.entries()) {
        const asker = askers[at]!;
        for (const [n, question] of questions.entries()) {
          const { shown } = await wholeAnswer(asker, { bot: bot.userId, question, patience_ms: 120_000 });
          expect(shown.body).toContain(`amount ${n + 1} L`);
        }
      }
      await new Promise((resolve) => setTimeout(resolve, 1500));
      for (const [at, questions] of asked.entries()) {
        const answers = askers[at]!.heard.filter(
          ({ sender, content, relation }) =>
            sender === bot.userId && content.msgtype === 'm.notice' && relation.rel_type === 'm.thread',
        );
        const answered = answers.map(({ content }) => (content['m.relates_to'] as Thread)['m.in_reply_to'].event_id);
        expect(answered).toEqual(questions);
      }
      const refused = watch.puts.filter(({ status }) => status === 429);
      // Beside them, on a slow machine, words that it takes a little.
      expect(watch.puts.filter(({ status, txn }) => status === 200 && txn.endsWith('.answer'))).toHaveLength(14);
      // Otherwise nothing was put to the test.
      expect(refused.length).toBeGreaterThanOrEqual(14 - burst - 2);
      for (const { ended_ms, retry_after_s } of refused) {
        expect(retry_after_s).toBeGreaterThan(0);
        // 50 ms: the client's clock may hear of it a little later than the watch, never wait a little less.
        const early = watch.puts.filter(
          ({ began_ms }) => began_ms > ended_ms + 50 && began_ms < ended_ms + retry_after_s! * 1000 - 50,
        );
        expect(early.map(({ began_ms }) => began_ms - ended_ms)).toEqual([]);
      }
      expect(bot.log()).not.toMatch(/"level":(?:40|50)/);
      expect(await bot.stop()).toBe(0);
      for (const asker of askers) asker.leave();
    } finally {
      await bot.stop('SIGKILL');
      watch.close();
      await synapse.remove();
      rmSync(data, { recursive: true, force: true });
    }
  },
);

interface Thread {
  readonly 'm.in_reply_to': { readonly event_id: string };
}
