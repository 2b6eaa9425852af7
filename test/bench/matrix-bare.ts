import { ClientEvent, createClient, RoomEvent, SyncState } from 'matrix-js-sdk';
import { logger } from 'matrix-js-sdk/lib/logger.js';

/** The least bot there can be on the same library, encryption included: one constant answer, whatever is said. */
const nothing = () => {};
const quiet = { trace: nothing, debug: nothing, info: nothing, warn: nothing, error: nothing, getChild: () => quiet };
Object.assign(logger, quiet, { log: nothing });
const { MATRIX_HOMESERVER: baseUrl = '', MATRIX_USER: user = '', MATRIX_PASSWORD: password = '' } = process.env;
const { access_token, device_id, user_id } = await createClient({ baseUrl, logger: quiet }).loginRequest({
  type: 'm.login.password',
  identifier: { type: 'm.id.user', user },
  password,
});
const client = createClient({
  baseUrl,
  userId: user_id,
  accessToken: access_token,
  deviceId: device_id,
  logger: quiet,
});
await client.initRustCrypto({ useIndexedDB: false });
client.on(RoomEvent.MyMembership, (room, membership) => {
  if (membership === 'invite') void client.joinRoom(room.roomId);
});
client.on(RoomEvent.Timeline, async (event, room, toStart, _removed, { liveEvent }) => {
  if (toStart || !liveEvent || !room || event.getSender() === user_id) return;
  await client.decryptEventIfNeeded(event);
  if (event.getContent().msgtype !== 'm.text') return;
  const id = event.getId() ?? '';
  await client.sendEvent(
    room.roomId,
    'm.room.message' as never,
    {
      msgtype: 'm.notice',
      body: '33 lb of clay and 106 lb of sand.',
      'm.relates_to': { rel_type: 'm.thread', event_id: id, is_falling_back: true, 'm.in_reply_to': { event_id: id } },
    } as never,
  );
});
client.on(ClientEvent.Sync, (state) => {
  if (state === SyncState.Prepared) process.stderr.write('connected to Matrix\n');
});
await client.startClient({ initialSyncLimit: 1 });
