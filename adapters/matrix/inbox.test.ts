import type { ISyncResponse, MatrixClient } from 'matrix-js-sdk';
import { beforeEach, expect, test, vi } from 'vitest';
import { createInbox } from './inbox.ts';

const now_ms = Date.UTC(2026, 3, 12);
const minute_ms = 60_000;
const log = { debug: vi.fn(), info: vi.fn(), warn: vi.fn(), error: vi.fn() };
let asked: string[];

const event = (event_id: string, origin_server_ts: number) => ({
  event_id,
  origin_server_ts,
  type: 'm.room.message',
  sender: '@ann:here',
  content: { msgtype: 'm.text', body: 'mix 30 L' },
});
type Sent = ReturnType<typeof event>;

/** `pages` are what was missed, newest first. */
const opened = (pages: readonly (readonly Sent[])[] = []) =>
  createInbox({
    client: () =>
      ({
        getSafeUserId: () => '@bot:here',
        createMessagesRequest: async (_room: string, token: string) => ({
          chunk: pages[Number(token)] ?? [],
          end: String(Number(token) + 1),
        }),
      }) as unknown as MatrixClient,
    concerns: async () => 'usual',
    ask: async (key) => {
      asked.push(key);
      return true;
    },
    remember: () => {},
    mayInvite: () => true,
    refuse: () => {},
    now: () => new Date(now_ms),
    log,
  });
const synced = (events: readonly Sent[], more: object = {}) =>
  ({
    next_batch: '1',
    rooms: { join: { '!r:here': { timeline: { events, ...more } } } },
  }) as unknown as ISyncResponse;

beforeEach(() => {
  asked = [];
  vi.clearAllMocks();
});

test('an event from the future keeps nothing that is missed later from being read back', async () => {
  const inbox = opened([[event('$missed', now_ms - minute_ms)]]);
  inbox.seenUpTo(now_ms - 60 * minute_ms);
  await inbox.receive(synced([event('$future', now_ms + 365 * 86_400_000)]), '0');
  expect(inbox.seen()).toBe(now_ms);
  await inbox.receive(synced([event('$new', now_ms)], { limited: true, prev_batch: '0' }), '1');
  expect(asked).toEqual(['$future', '$missed', '$new']);
});

test('nor does one that was kept with the place of the sync before', async () => {
  const inbox = opened([[event('$missed', now_ms - minute_ms)]]);
  inbox.seenUpTo(now_ms + 365 * 86_400_000);
  await inbox.receive(synced([], { limited: true, prev_batch: '0' }), '1');
  expect(asked).toEqual(['$missed']);
});

test('where more was missed than is read back the log warns of it', async () => {
  const full = Array.from({ length: 30 }, (_, page) => [event(`$${page}`, now_ms)]);
  const inbox = opened(full);
  inbox.seenUpTo(now_ms);
  await inbox.receive(synced([], { limited: true, prev_batch: '0' }), '1');
  expect(asked).toHaveLength(20);
  expect(log.warn).toHaveBeenCalledTimes(1);
  await opened([[event('$a', now_ms)], []]).receive(synced([], { limited: true, prev_batch: '0' }), '1');
  expect(log.warn).toHaveBeenCalledTimes(1);
});
