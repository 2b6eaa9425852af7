import { type MatrixClient, MatrixError, MatrixEvent, Method } from 'matrix-js-sdk';
import type { CryptoBackend } from 'matrix-js-sdk/lib/common-crypto/CryptoBackend.js';
import { type FileOut, fileOf, type Spot } from './content.ts';
import { encryptFile } from './encrypted-file.ts';
import { Later, laterOf } from './later.ts';
import { createPace } from './paced.ts';
import type { RawEvent } from './read.ts';

/** What of the platform an answer needs. */
export interface Door {
  /** The event as it was sent, decrypted; undefined where it is gone. `secret`: it can't be decrypted. */
  fetch(room: string, event: string): Promise<RawEvent | 'secret' | undefined>;
  /** The id of the message; the same for the same `txn`. */
  send(room: string, content: object, txn: string): Promise<string>;
  /** What `content` of a file's message says of where it is. */
  upload(room: string, file: FileOut): Promise<object>;
  redact(room: string, event: string, txn: string): Promise<void>;
  typing(room: string, isTyping: boolean): Promise<void>;
  /** Not encrypted, whatever the room: for words about why something can't be read. */
  sendOpenly(room: string, content: object, txn: string): Promise<string>;
  /** Whether the homeserver has told it to be slower: what may be left out is left out. */
  isHeldBack(): boolean;
}

export function clientDoor(client: MatrixClient): Door {
  const paced = createPace();
  const limited = <Value>(ask: () => Promise<Value>) => paced(() => asked(ask));
  const put = async (room: string, type: string, content: object, txn: string) => {
    const { event_id } = await limited(() =>
      client.http.authedRequest<{ event_id: string }>(
        Method.Put,
        `/rooms/${encodeURIComponent(room)}/send/${encodeURIComponent(type)}/${encodeURIComponent(txn)}`,
        undefined,
        content,
      ),
    );
    return event_id;
  };
  const isSecret = async (room: string) => (await client.getCrypto()?.isEncryptionEnabledInRoom(room)) ?? false;

  return {
    async fetch(room, event) {
      try {
        const raw = await asked(() => client.fetchRoomEvent(room, event));
        return await decrypted(client, { ...raw, room_id: room } as RawEvent);
      } catch (error) {
        if (error instanceof MatrixError && error.httpStatus === 404) return undefined;
        throw error;
      }
    },

    async send(room, content, txn) {
      if (!(await isSecret(room))) return put(room, 'm.room.message', content, txn);
      const known = client.getRoom(room);
      if (!known) throw new Later('the room is not known yet');
      const event = new MatrixEvent({ type: 'm.room.message', room_id: room, sender: client.getSafeUserId(), content });
      await asked(() => (client.getCrypto() as unknown as CryptoBackend).encryptEvent(event, known));
      return put(room, event.getWireType(), event.getWireContent(), txn);
    },

    async upload(room, { name, type, bytes }) {
      const secret = await isSecret(room);
      const sealed = secret ? encryptFile(bytes) : undefined;
      const { content_uri } = await limited(() =>
        client.uploadContent(Buffer.from(sealed?.bytes ?? bytes), {
          type: secret ? 'application/octet-stream' : type,
          ...(secret ? { includeFilename: false } : { name }),
        }),
      );
      return sealed ? { file: { ...sealed.keys, url: content_uri } } : { url: content_uri };
    },

    async redact(room, event, txn) {
      const path = `/rooms/${encodeURIComponent(room)}/redact/${encodeURIComponent(event)}/${encodeURIComponent(txn)}`;
      await limited(() => client.http.authedRequest(Method.Put, path, undefined, {}));
    },

    async typing(room, isTyping) {
      await client.sendTyping(room, isTyping, 30_000);
    },

    sendOpenly: (room, content, txn) => put(room, 'm.room.message', content, txn),
    isHeldBack: paced.isHeldBack,
  };
}

/** The message of a file, uploaded. */
export const filed = async (door: Door, room: string, file: FileOut, spot: Spot): Promise<object> =>
  fileOf(file, await door.upload(room, file), spot);

/** In the clear; `secret` where the key is not here. */
export async function decrypted(client: MatrixClient, raw: RawEvent): Promise<RawEvent | 'secret'> {
  if (raw.type !== 'm.room.encrypted') return raw;
  const event = new MatrixEvent(raw as object);
  if (!client.getCrypto()) return 'secret';
  await client.decryptEventIfNeeded(event);
  if (event.isDecryptionFailure() || event.isBeingDecrypted()) return 'secret';
  const relation = (raw.content as { 'm.relates_to'?: unknown })['m.relates_to'];
  // Relations are not encrypted: they stand outside, and some clients leave them out inside.
  const content = { ...(relation === undefined ? {} : { 'm.relates_to': relation }), ...event.getClearContent() };
  return { ...raw, type: event.getType(), content };
}

/** What passes by itself is `Later`; the rest is thrown as it is. */
async function asked<Value>(ask: () => Promise<Value>): Promise<Value> {
  try {
    return await ask();
  } catch (error) {
    throw laterOf(error);
  }
}
