import { createCipheriv, createDecipheriv, createHash, randomBytes } from 'node:crypto';

/** The keys of a file as an event of an encrypted room carries them (Matrix specification, "Sending encrypted attachments", v2). */
export interface FileKeys {
  readonly v: 'v2';
  readonly key: {
    readonly kty: 'oct';
    readonly key_ops: readonly string[];
    readonly alg: 'A256CTR';
    readonly k: string;
    readonly ext: true;
  };
  readonly iv: string;
  readonly hashes: { readonly sha256: string };
}

/** AES-256 in counter mode under a key of its own; the low half of the counter begins at nothing. */
export function encryptFile(bytes: Uint8Array): { readonly bytes: Uint8Array; readonly keys: FileKeys } {
  const key = randomBytes(32);
  const iv = Buffer.concat([randomBytes(8), Buffer.alloc(8)]);
  const cipher = createCipheriv('aes-256-ctr', key, iv);
  const secret = Buffer.concat([cipher.update(bytes), cipher.final()]);
  const keys: FileKeys = {
    v: 'v2',
    key: { kty: 'oct', key_ops: ['encrypt', 'decrypt'], alg: 'A256CTR', k: key.toString('base64url'), ext: true },
    iv: unpadded(iv),
    hashes: { sha256: sha256(secret) },
  };
  return { bytes: secret, keys };
}

/** @throws where the bytes are not those that the keys were made for */
export function decryptFile(secret: Uint8Array, { key, iv, hashes }: FileKeys): Uint8Array {
  if (sha256(secret) !== hashes.sha256) throw new Error('the file is not the one its keys belong to');
  const cipher = createDecipheriv('aes-256-ctr', Buffer.from(key.k, 'base64url'), Buffer.from(iv, 'base64'));
  return Buffer.concat([cipher.update(secret), cipher.final()]);
}

const sha256 = (bytes: Uint8Array): string => unpadded(createHash('sha256').update(bytes).digest());
const unpadded = (bytes: Buffer): string => bytes.toString('base64').replace(/=+$/, '');
