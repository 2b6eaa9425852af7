import { createDecipheriv, createHash } from 'node:crypto';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { decryptFile, encryptFile } from './encrypted-file.ts';

test('what was sealed is opened again, and nothing else is', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 5000 }), (bytes) => {
      const sealed = encryptFile(bytes);
      expect(new Uint8Array(decryptFile(sealed.bytes, sealed.keys))).toEqual(bytes);
      if (bytes.length === 0) return;
      const other = Uint8Array.from(sealed.bytes, (byte, at) => (at === 0 ? byte ^ 1 : byte));
      expect(() => decryptFile(other, sealed.keys)).toThrow('not the one');
    }),
  );
});

test('as the specification has it: AES-CTR, the low half of the counter zero, base64 without padding', () => {
  const bytes = Buffer.from('a drawing');
  const { bytes: secret, keys } = encryptFile(bytes);
  expect(keys).toMatchObject({ v: 'v2', key: { kty: 'oct', alg: 'A256CTR', ext: true } });
  const iv = Buffer.from(keys.iv, 'base64');
  expect(iv).toHaveLength(16);
  expect(iv.subarray(8)).toEqual(Buffer.alloc(8));
  expect(keys.iv + keys.hashes.sha256).not.toContain('=');
  expect(Buffer.from(keys.key.k, 'base64url')).toHaveLength(32);
  expect(keys.hashes.sha256).toBe(createHash('sha256').update(secret).digest('base64').replace(/=+$/, ''));
  const opener = createDecipheriv('aes-256-ctr', Buffer.from(keys.key.k, 'base64url'), iv);
  expect(opener.update(secret)).toEqual(bytes);
});

test('no key and no counter is used twice', () => {
  const made = Array.from({ length: 50 }, () => encryptFile(new Uint8Array(3)).keys);
  expect(new Set(made.map(({ key }) => key.k)).size).toBe(50);
  expect(new Set(made.map(({ iv }) => iv)).size).toBe(50);
});
