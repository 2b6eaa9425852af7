import { AskError } from '../ask-error.ts';

/** Longest text read as a quantity, in characters. */
export const LONGEST = 64;

const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** One spelling for quotes, spaces, signs and powers, so that what phones and word processors make is read too. */
export function tidy(text: string): string {
  return text
    .replace(/[\s\u00a0\u2007\u2009\u200a\u202f]+/g, ' ')
    .replace(/[\u200b-\u200f\u2060\ufeff]/g, '')
    .replace(/[“”„‟″〃＂]/g, '"')
    .replace(/[‘’‚‛′´`]/g, "'")
    .replaceAll("''", '"')
    .replace(/[−–—‐‑]/g, '-')
    .replace(/[×·⋅]/g, '*')
    .replaceAll('÷', '/')
    .replaceAll('⁄', '/')
    .replaceAll('³', '3')
    .replace(/[º˚]/g, '°')
    .replace(/ ?° ?/g, (mark) => (mark.startsWith(' ') ? ' °' : '°'))
    .replace(/ ?\bdegrees? ?(?=[cf]\b)/gi, ' °')
    .trim();
}

/** `1½` as `1 1/2`, and `1 234` (thousands set apart by a space) as `1234`. */
export const spellNumbers = (text: string): string =>
  text
    .replace(/ ?[½⅓⅔¼¾⅛⅜⅝⅞]/g, (mark) => ` ${VULGAR[mark.trim()]}`)
    .replace(/(\d[\d.,]*) ?k(?= ?btu)/gi, '$1e3')
    .replace(/(?<![\d.,/])\d{1,3}(?: \d{3})+(?! ?\/|\d)/g, (digits) => digits.replaceAll(' ', ''))
    .trim();

/** A short, printable piece of typed text for an error. */
export function quoted(text: string): string {
  const plain = text.replace(/[\p{C}\s]+/gu, ' ').trim();
  return plain.length > 24 ? `“${[...plain].slice(0, 24).join('')}…”` : `“${plain}”`;
}

/** Refuses what carries no size: crucible numbers differ from maker to maker, sheet gauges from metal to metal. */
export function refuseCodes(text: string, example: string): void {
  if (/^#? ?\d{1,2} ?-? ?(ga|gauge|gage|swg|awg)\b/i.test(text) || /^(ga|gauge|gage|swg|awg)\.? ?\d/i.test(text)) {
    throw new AskError({
      code: 'unreadable',
      what: `${quoted(text)} is a sheet gauge; one gauge number is a different thickness in steel, zinc-coated steel and aluminium.`,
      expected: 'the thickness, measured with a caliper at an edge without paint',
      example,
    });
  }
  if (/^(#|№|no\.? ?|nr\.? ?|number |size )\d/i.test(text) || /^(#|no\.? ?)?[a-z]{1,3}[- ]?\d{1,3}$/i.test(text)) {
    throw new AskError({
      code: 'unreadable',
      what: `${quoted(text)} looks like a maker's number; makers count differently, so it has no size here.`,
      expected: 'a measured size: outside diameter and height, or the brimful volume',
      example,
    });
  }
}

/** Which mark starts the decimals where a number could be read both ways. */
export type Decimals = 'point' | 'comma';

/** Whether a number could be read both ways: one to three digits, one mark, three digits. */
export const isTwoWay = (digits: string): boolean => /^[1-9]\d{0,2}[.,]\d{3}$/.test(digits);

/** Both readings of such numbers in a text, spelled so that each can be read one way only. */
export function bothSpellings(text: string): readonly [grouped: string, decimal: string] {
  const each = /(?<![\d.,])([1-9]\d{0,2})[.,](\d{3})(?![\d.,])/g;
  const decimal = (whole: string, rest: string): string => {
    const short = rest.replace(/0+$/, '');
    return short === '' ? whole : `${whole}.${short.length === 3 ? `${short}0` : short}`;
  };
  return [text.replace(each, '$1$2'), text.replace(each, (_, whole, rest) => decimal(whole, rest))];
}

/** Value of digits with points and commas; `undefined` where the marks make no sense. */
export function readDigits(digits: string, decimals: Decimals): number | undefined {
  const [, body = '', power = ''] = /^([\d.,]+)(e[+-]?\d+)?$/i.exec(digits) ?? [];
  const value = (whole: string, rest = ''): number => Number(`${whole || '0'}.${rest || '0'}${power}`);
  if (isTwoWay(body)) {
    const [whole = '', rest = ''] = body.split(/[.,]/);
    return body.includes(',') === (decimals === 'comma') ? value(whole, rest) : value(whole + rest);
  }
  if (/^\d*[.,]?\d+$/.test(body) || /^\d+[.,]$/.test(body)) {
    const [whole = '', rest = ''] = body.split(/[.,]/);
    return value(whole, rest);
  }
  for (const [group, point] of [
    [',', '.'],
    ['.', ','],
  ] as const) {
    if (new RegExp(`^\\d{1,3}(\\${group}\\d{3})+(\\${point}\\d*)?$`).test(body)) {
      const [whole = '', rest = ''] = body.replaceAll(group, '').split(point);
      return value(whole, rest);
    }
  }
  return undefined;
}
