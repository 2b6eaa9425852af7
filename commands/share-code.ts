const letters = '23456789ABCDEFGHJKLMNPQRSTUVWXYZ';

/** Eight letters and digits that are not taken for one another. Not guessable, though what it opens is no secret. */
export const shareCode = (): string => codeOf(crypto.getRandomValues(new Uint8Array(8)));

/** The same of the same bytes, of which the first eight count. */
export const codeOf = (bytes: Uint8Array): string =>
  Array.from(bytes.subarray(0, 8), (byte) => letters[byte % letters.length]).join('');
