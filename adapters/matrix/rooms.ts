import { type MatrixClient, MatrixError } from 'matrix-js-sdk';
import { laterOf } from './later.ts';
import type { Log } from './ports.ts';
import type { Place } from './replies.ts';

/** Who may invite: `*`, ids of people and rooms, names of servers. */
export const mayInvite = (allow: readonly string[], inviter: string, room: string): boolean =>
  allow.some(
    (one) => one === '*' || one === inviter || one === room || one === inviter.slice(inviter.indexOf(':') + 1),
  );

/** Joins, or throws `Later`. An invitation that was taken back is none. */
export async function join(client: MatrixClient, room: string, log: Log): Promise<void> {
  try {
    await client.joinRoom(room);
    log.info({ room }, 'joined a room');
  } catch (error) {
    const later = laterOf(error);
    if (later !== error || !(error instanceof MatrixError)) throw later;
    log.warn({ room, errcode: error.errcode }, 'a room could not be joined');
  }
}

export async function leave(client: MatrixClient, room: string, log: Log): Promise<void> {
  try {
    await client.leave(room);
    await client.forget(room);
    log.info({ room }, 'left a room');
  } catch (err) {
    log.warn({ err, room }, 'a room could not be left');
  }
}

/** Nobody is there, and nobody is asked to come. */
export function isEmpty(client: MatrixClient, roomId: string): boolean {
  const room = client.getRoom(roomId);
  if (room?.getMyMembership() !== 'join' || !room.currentState.getMember(client.getSafeUserId())) return false;
  return room.getJoinedMemberCount() <= 1 && room.getInvitedMemberCount() === 0;
}

/** Power from which a person may change what a room has set: that of moderators by the specification's defaults. */
const moderator = 50;

export function placeIn(client: MatrixClient, roomId: string, sender: string): Place {
  const me = client.getSafeUserId();
  const room = client.getRoom(roomId);
  const own = room?.getMember(me)?.rawDisplayName;
  const names = [own, client.getUser(me)?.displayName, me, me.slice(1).split(':', 1)[0]];
  const direct = (room?.getJoinedMemberCount() ?? 0) + (room?.getInvitedMemberCount() ?? 0) === 2;
  return {
    direct,
    mayModerate: direct || (room?.getMember(sender)?.powerLevel ?? 0) >= moderator,
    names: names.filter((name) => name !== undefined),
  };
}
