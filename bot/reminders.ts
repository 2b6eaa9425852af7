import type { Reach } from '../commands/reach.ts';
import type { Sender } from '../commands/remind/due.ts';
import { createDelivery, type Delivery, type DeliveryParts } from './deliver.ts';
import type { Outbox } from './store/outbox.ts';
import { reminderChannel } from './store/reminders.ts';

/** What is kept only while the program runs is called for by nobody after it. */
export const notKept: Reach = {
  kind: 'none',
  why: 'whoever runs me has given me nothing to remember by, so a reminder would be gone when I am started anew',
};

interface Parts {
  readonly outbox: Outbox | undefined;
  readonly send: Sender;
  readonly now: () => Date;
  readonly log: DeliveryParts['log'];
  readonly poll_ms?: number | undefined;
}

/** Sends the reminders of people of one platform, where there is a store that they wait in. */
export function remindersOf(platform: string, { outbox, poll_ms, ...parts }: Parts): Delivery {
  if (!outbox) return { start() {}, stop: async () => {} };
  const channel = reminderChannel(`${platform}:`);
  return createDelivery({ outbox, channel, ...parts, ...(poll_ms === undefined ? {} : { poll_ms }) });
}

/** Keys of messages that were sent are let go of long after anything could send them again. */
export const sentKeep_ms = 30 * 86_400_000;
