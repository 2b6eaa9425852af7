import { reminderRest, reminderSender } from '../../adapters/discord/reminder.ts';
import { createDelivery } from '../../bot/deliver.ts';
import { openStore, type Where } from '../../bot/store/open.ts';
import { reminderChannel } from '../../bot/store/reminders.ts';

/** Delivers what is due, until it is killed: the part of the program that is put to the test, and nothing else of it. */
export interface WorkerTask {
  readonly where: Where;
  readonly api: string;
  readonly token: string;
  readonly lease_s: number;
}

const { where, api, token, lease_s } = JSON.parse(process.argv[2] ?? '') as WorkerTask;
const store = await openStore(where);
const now = () => new Date();
const log = { info() {}, warn: (_about: object, what: string) => process.stderr.write(`${what}\n`) };
const rest = reminderRest({ token, api, perSecond: 10_000 });
createDelivery({
  outbox: store.outbox,
  channel: reminderChannel('discord:'),
  send: reminderSender({ rest, now, log }),
  now,
  log,
  lease_s,
  poll_ms: 100,
  atOnce: 8,
}).start();
process.stdout.write('ready\n');
