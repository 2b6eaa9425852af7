const broken = '\u200b';

/**
 * Text that shows as it was typed: no formatting, mention, time stamp, masked or plain link comes of it. Line breaks
 * stay, other invisible characters become spaces.
 */
export const escaped = (text: string): string => (isHarmless(text) ? text : marked(tidied(text)));

const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789';
const beginners = `${letters}(±°–·→−`;
/** By character code: what means nothing anywhere, and of that what means nothing even at the begin of a line. */
const [anywhere, atBegin] = [`${beginners} !"#$%&')+,-./;=?{}^²³µ×—‘’“”…≤≥:\n`, beginners].map((all) => {
  const codes = new Uint8Array(0x2300);
  for (const letter of all) codes[letter.charCodeAt(0)] = 1;
  return codes;
}) as [Uint8Array, Uint8Array];
const [colon, slash, newline] = [':', '/', '\n'].map((sign) => sign.charCodeAt(0));

/**
 * Most of what is said: its lines begin with a letter, a digit or a bracket and hold nothing that means anything. By hand:
 * every answer is read through here, and an expression takes five times as long.
 */
function isHarmless(text: string): boolean {
  if (!atBegin[text.charCodeAt(0)]) return false;
  for (let at = 1; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (!anywhere[code]) return false;
    if (code === colon && text.charCodeAt(at + 1) === slash) return false;
    if (code === newline && !atBegin[text.charCodeAt(at + 1)]) return false;
  }
  return true;
}

const marked = (text: string): string =>
  text
    .replace(/[\\*_~`|<[\]]/g, '\\$&')
    .replace(/^(\s*)([#>-])/gm, '$1\\$2')
    .replace(/@/g, `@${broken}`)
    .replace(/:\/\//g, `:${broken}//`);

/** For labels, footers and other text that knows no formatting. */
export const plain = (text: string): string => (isHarmless(text) ? text : tidied(text));

const tidied = (text: string): string =>
  text
    .replace(/\r\n?/g, '\n')
    .replace(/[^\P{Cc}\n]|\p{Cf}/gu, ' ')
    .replace(/\p{Cs}/gu, '�');

/** At most `most` characters, with a sign where something is missing. Never half a letter. */
export function clipped(text: string, most: number): string {
  if (text.length <= most) return text;
  let kept = '';
  for (const letter of text) {
    if (kept.length + letter.length > most - 1) break;
    kept += letter;
  }
  return `${kept}…`;
}

/** Escaped, and at most `most` characters after that: never half an escape. */
export function escapedTo(text: string, most: number): string {
  const whole = escaped(text);
  if (whole.length <= most) return whole;
  let raw = clipped(text, most);
  while (escaped(raw).length > most) raw = clipped(raw, raw.length - Math.max(1, (escaped(raw).length - most) >> 1));
  return escaped(raw);
}
