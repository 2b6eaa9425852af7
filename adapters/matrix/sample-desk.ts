import { createDesk, type DeskParts } from './desk.ts';
import type { Door } from './door.ts';
import type { RawEvent } from './read.ts';

/** A room with one question in it, and a desk that answers it, for the tests of what a desk does. */
export const sampleQuestion = (body: string, more: Partial<RawEvent> = {}): RawEvent => ({
  event_id: '$q',
  room_id: '!r',
  sender: '@ann:here',
  type: 'm.room.message',
  origin_server_ts: 0,
  content: { msgtype: 'm.text', body },
  ...more,
});

export const sampleDoor = (more: Partial<Door>): Door => ({
  fetch: async () => undefined,
  send: async (_room, _content, txn) => `$${txn}`,
  upload: async () => ({}),
  redact: async () => {},
  typing: async () => {},
  sendOpenly: async () => '$open',
  isHeldBack: () => false,
  ...more,
});

/** `kept` is what outlives a desk: another with the same is the process after it. */
export const sampleDesk = (
  more: Pick<DeskParts, 'door' | 'answer'> & Partial<DeskParts>,
  kept = new Map<string, unknown>(),
) =>
  createDesk({
    states: { put: async (id, value) => void kept.set(id, value), get: async (id) => kept.get(id) },
    budget: { take: () => ({ wait_s: 0 }) },
    now: () => new Date(0),
    log: { debug: () => {}, info: () => {}, warn: () => {}, error: () => {} },
    me: '@bot:here',
    prefix: '!teemer',
    place: () => ({ direct: true, mayModerate: true, names: ['teemer'] }),
    readsSecrets: true,
    isCommand: () => true,
    isOnMessage: () => false,
    isUrgent: () => false,
    isPrivate: () => false,
    cautions: async () => [],
    last: async () => undefined,
    recall: async () => {},
    files: async () => [],
    ...more,
  });
