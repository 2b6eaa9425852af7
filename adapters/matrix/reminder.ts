import { Direction, type MatrixClient, MatrixError } from 'matrix-js-sdk';
import type { Reach } from '../../commands/reach.ts';
import { type Due, type Said, type Sender, type Sent, saidOf } from '../../commands/remind/due.ts';
import { type Block, htmlOf, textOf } from './blocks.ts';
import { type Door, decrypted } from './door.ts';
import { Later, laterOf } from './later.ts';
import type { States } from './ports.ts';
import type { RawEvent } from './read.ts';
import { byNumber, said as cautionLine } from './render.ts';
import { repliesIn } from './replies.ts';

export interface ReminderParts {
  readonly client: MatrixClient;
  readonly door: Pick<Door, 'send'>;
  readonly states: States;
  readonly now: () => Date;
}

/** A homeserver keeps a transaction's id for longer than this. */
const txnKnown_s = 1200;
const pageSize = 100;
const mostPages = 5;

/** In the room somebody asks in: where the bot hears them, they hear it. */
export function reachIn(client: MatrixClient, room: string): Reach {
  const others = (client.getRoom(room)?.getJoinedMemberCount() ?? 0) > 2;
  const said = others ? 'I write to you in this room, where others read it too.' : 'I write to you here.';
  return { kind: 'here', place: `matrix:${room}`, said };
}

/** Writes reminders into the room they were asked for in, or where that is closed into one with nobody else. */
export function reminderSender({ client, door, states, now }: ReminderParts): Sender {
  const replies = repliesIn(states, now);

  return async (due) => {
    const { place, asker } = due.reminder;
    const user = asker.slice('matrix:'.length);
    const room = place.slice('matrix:'.length);
    const isIn = client.getRoom(room)?.getMyMembership() === 'join';
    const sent = isIn ? await into(room, user, due, []) : { kind: 'gone' as const, fault: 'not in the room' };
    if (sent.kind !== 'gone') return sent;
    const direct = directRoom(client, user, room);
    if (direct === undefined) return sent;
    return into(direct, user, due, ['I may no longer write where you asked for it.']);
  };

  async function into(room: string, user: string, due: Due, remarks: readonly string[]): Promise<Sent> {
    try {
      const before = await wasSent(room, due);
      if (before === 'yes') return { kind: 'sent' };
      const said = saidOf(due.reminder, { now: now(), mayBeRepeat: before === 'unknown' });
      const content = letterOf({ ...said, remarks: [...remarks, ...said.remarks] }, user);
      const id = await door.send(room, content, due.key);
      const lines = said.next.map(({ line }) => line);
      const where = { room, question: due.key, asker: user };
      // Without it the numbers below it mean nothing; it has arrived all the same.
      await replies.keep(where, { id, root: id, files: [] }, { lines }).catch(() => {});
      return { kind: 'sent' };
    } catch (error) {
      return faultOf(error);
    }
  }

  /** Of a try that nobody knows the end of: its transaction answers for a while, the room itself for longer. */
  async function wasSent(room: string, { reminder, perhapsSent }: Due): Promise<'yes' | 'no' | 'unknown'> {
    if (!perhapsSent || (perhapsSent.tries <= 2 && perhapsSent.ago_s < txnKnown_s)) return 'no';
    const me = client.getSafeUserId();
    const since_ms = reminder.dueAt.getTime() - 60_000;
    let from: string | null = null;
    let secret = false;
    for (let page = 0; page < mostPages; page++) {
      const { chunk, end }: { chunk: object[]; end?: string } = await client.createMessagesRequest(
        room,
        from,
        pageSize,
        Direction.Backward,
      );
      for (const raw of chunk as RawEvent[]) {
        if (raw.sender !== me || raw.origin_server_ts < since_ms) continue;
        const event = await decrypted(client, raw);
        if (event === 'secret') secret = true;
        else if (String(event.content.body).includes(`Reminder ${reminder.id}`)) return 'yes';
      }
      const last = (chunk as RawEvent[]).at(-1);
      if (!last || end === undefined || last.origin_server_ts < since_ms) return secret ? 'unknown' : 'no';
      from = end;
    }
    return 'unknown';
  }
}

/**
 * Plain text, not a notice: notices call nobody, whoever they name. It names one person and stands outside of threads,
 * where everybody looks.
 */
function letterOf(said: Said, user: string) {
  const blocks = blocksOf(said);
  return {
    msgtype: 'm.text',
    format: 'org.matrix.custom.html',
    body: textOf(blocks),
    formatted_body: htmlOf(blocks),
    'm.mentions': { user_ids: [user] },
  };
}

const blocksOf = ({ what, cautions, holds, remarks, foot, next }: Said): readonly Block[] => [
  { kind: 'strong', text: what },
  ...remarks.map((text): Block => ({ kind: 'words', text })),
  ...list(
    'What can hurt',
    cautions.map((one) => cautionLine(one, false)),
  ),
  ...list('First make sure', holds),
  {
    kind: 'numbered',
    label: 'Ask next',
    items: next.map(({ line, label }) => ({ line, label: label === line ? '' : label })),
    after: byNumber,
  },
  { kind: 'words', text: foot },
];

const list = (label: string, items: readonly string[]): readonly Block[] =>
  items.length === 0 ? [] : [{ kind: 'list', label, items }];

/** A room of the two, where there is one. */
function directRoom(client: MatrixClient, user: string, not: string): string | undefined {
  const rooms = client.getRooms().filter((room) => {
    const alone = room.getJoinedMemberCount() + room.getInvitedMemberCount() === 2;
    return (
      alone && room.roomId !== not && room.getMyMembership() === 'join' && room.getMember(user)?.membership === 'join'
    );
  });
  return rooms[0]?.roomId;
}

function faultOf(thrown: unknown): Exclude<Sent, { kind: 'sent' }> {
  const error = laterOf(thrown);
  const fault = (error instanceof Error ? `${error.name}: ${error.message}` : String(error)).slice(0, 200);
  if (error instanceof Later) {
    return { kind: 'later', fault, perhaps: true, ...(error.wait_s === undefined ? {} : { wait_s: error.wait_s }) };
  }
  const gone = error instanceof MatrixError && [403, 404].includes(error.httpStatus ?? 0);
  return gone ? { kind: 'gone', fault } : { kind: 'later', fault, perhaps: true };
}
