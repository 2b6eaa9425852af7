import { writeSync } from 'node:fs';
import { openStore, type Where } from '../../bot/store/open.ts';
import { askerOf, askOf, priceOf, stepsOf } from './ledger.ts';

/**
 * Writes to the store without end, and says after each write that it was acknowledged; it is there to be killed. One
 * person after another: everything of theirs is written, and of every second one then forgotten.
 */
const { where, from } = JSON.parse(process.argv[2] ?? '') as { where: Where; from: number };
const { memory, outbox, handled, close } = await openStore(where);

const write = {
  asked: (n: number) => memory.rememberAsk({ asker: askerOf(n), place: 'shed', ...askOf(n) }),
  units: (n: number) => memory.setUnits({ asker: askerOf(n) }, 'US'),
  saved: (n: number) => memory.saveBuild(askerOf(n), { name: 'can', ask: askOf(n) }, new Date(n)),
  shared: (n: number) => memory.shareBuild(askerOf(n), 'can'),
  priced: (n: number) => memory.setPrice({ asker: askerOf(n) }, priceOf(n), new Date(n)),
  queued: (n: number) =>
    outbox.enqueue({ key: `key ${n}`, channel: 'soak', body: askOf(n), dueAt: new Date(n), asker: askerOf(n) }),
  claimed: (n: number) => outbox.claim('soak', { now: new Date(n), lease_s: 0.001, limit: 1000 }),
  sent: (n: number) => outbox.sent(`key ${n}`, new Date(n)),
  handled: (n: number) => handled.first(`event ${n}`, { now: new Date(n), keep_s: 1e6 }),
  forgotten: (n: number) => memory.forget(askerOf(n)),
};

try {
  for (let n = from; ; n++) {
    for (const step of stepsOf(n)) {
      await write[step](n);
      writeSync(1, `${n} ${step}\n`);
    }
  }
} catch (error) {
  // The server is gone; what was said up to here must be there when it is back.
  writeSync(2, `${error instanceof Error ? error.message : error}\n`);
  await close();
}
