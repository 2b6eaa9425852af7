import { randomBytes } from 'node:crypto';
import type { MatrixClient } from 'matrix-js-sdk';
import type { BootstrapCrossSigningOpts, CryptoCallbacks } from 'matrix-js-sdk/lib/crypto-api/index.js';
import { decodeRecoveryKey, encodeRecoveryKey } from 'matrix-js-sdk/lib/crypto-api/recovery-key.js';
import { readSecret, writeSecret } from './files.ts';
import type { Log } from './ports.ts';

/** The key to the secrets on the server, in a file of its own and nowhere else. */
export interface Recovery {
  readonly callbacks: CryptoCallbacks;
  /** The key there is, or a new one. */
  open(): { readonly privateKey: Uint8Array<ArrayBuffer>; readonly encodedPrivateKey: string };
  readonly exists: () => boolean;
}

export function recoveryIn(file: string): Recovery {
  const read = (): Uint8Array<ArrayBuffer> | undefined => {
    const bytes = readSecret(file);
    return bytes && decodeRecoveryKey(bytes.toString('utf8').trim());
  };
  return {
    exists: () => read() !== undefined,
    open() {
      const known = read();
      const privateKey = known ?? new Uint8Array(randomBytes(32));
      const encodedPrivateKey = encodeRecoveryKey(privateKey) ?? '';
      if (!known) writeSecret(file, `${encodedPrivateKey}\n`);
      return { privateKey, encodedPrivateKey };
    },
    callbacks: {
      async getSecretStorageKey({ keys }) {
        const [id] = Object.keys(keys);
        const key = read();
        return id !== undefined && key ? [id, key] : null;
      },
    },
  };
}

/**
 * Lets people see that the device is the bot's own: no red shield. The first time keys are made; a new device of an
 * account that has some takes them over with the recovery key; without that key, they are made anew.
 */
export async function crossSign(
  client: MatrixClient,
  recovery: Recovery,
  { password, log }: { password: string | undefined; log: Log },
): Promise<void> {
  const crypto = client.getCrypto();
  if (!crypto) return;
  const signed = await crypto.isCrossSigningReady();
  if (signed && (await crypto.isSecretStorageReady())) return;
  const known = await crypto.userHasCrossSigningKeys(client.getSafeUserId(), true);
  const anew = known && !signed && !recovery.exists();
  if (anew)
    log.warn({}, 'the keys the account signs with are lost and made anew: people see that its identity changed');
  await crypto.bootstrapCrossSigning({
    setupNewCrossSigning: anew,
    authUploadDeviceSigningKeys: byPassword(client, password),
  });
  const key = recovery.open();
  await crypto.bootstrapSecretStorage({
    createSecretStorageKey: async () => key,
    setupNewSecretStorage: anew,
    setupNewKeyBackup: !known || anew,
  });
  log.info({}, 'this device is signed as the account’s own');
}

type Auth = NonNullable<BootstrapCrossSigningOpts['authUploadDeviceSigningKeys']>;

/** New keys need no password; others of an account do. */
const byPassword =
  (client: MatrixClient, password: string | undefined): Auth =>
  async (upload) => {
    try {
      return await upload(null);
    } catch (error) {
      const { httpStatus, data } = error as { httpStatus?: number; data?: { session?: string } };
      if (httpStatus !== 401 || password === undefined) throw error;
      const identifier = { type: 'm.id.user', user: client.getSafeUserId() };
      return upload({ type: 'm.login.password', identifier, password, session: data?.session } as Parameters<
        typeof upload
      >[0]);
    }
  };
