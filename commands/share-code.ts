/** Eight letters and digits that are not taken for one another. Not guessable, though what it opens is no secret. */
export function shareCode(): string {
  const letters = '23456789ABCDEFGHJKLMNPQRSTUVWXYZ';
  return Array.from(crypto.getRandomValues(new Uint8Array(8)), (byte) => letters[byte % letters.length]).join('');
}
