import type { Reminder } from '../memory-weeks.ts';

/**
 * Reminders as an iCalendar file (RFC 5545): an event with an alarm each, in UTC, which every calendar turns into its
 * own clock. Lines end in CRLF and are folded at 75 octets; commas, semicolons, backslashes and line breaks are escaped.
 */
export function calendarOf(reminders: readonly Pick<Reminder, 'dueAt' | 'what' | 'holds'>[], now: Date): string {
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Teemer//reminders//EN',
    ...reminders.flatMap(({ dueAt, what, holds }) => [
      'BEGIN:VEVENT',
      `UID:${uidOf(dueAt, what)}`,
      `DTSTAMP:${stamp(now)}`,
      `DTSTART:${stamp(dueAt)}`,
      'DURATION:PT15M',
      `SUMMARY:${escaped(what)}`,
      ...(holds.length > 0 ? [`DESCRIPTION:${escaped(['First make sure:', ...holds].join('\n- '))}`] : []),
      'BEGIN:VALARM',
      'ACTION:DISPLAY',
      `DESCRIPTION:${escaped(what)}`,
      'TRIGGER:PT0S',
      'END:VALARM',
      'END:VEVENT',
    ]),
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}

/** The same for the same reminder, so that a calendar that is given it twice keeps one. */
function uidOf(dueAt: Date, what: string): string {
  let sum = 0x811c9dc5;
  for (const octet of new TextEncoder().encode(what)) sum = Math.imul(sum ^ octet, 0x01000193) >>> 0;
  return `${stamp(dueAt)}-${sum.toString(36)}@teemer.invalid`;
}

const stamp = (at: Date): string => at.toISOString().replace(/[-:]|\.\d{3}/g, '');

const escaped = (text: string): string =>
  text
    .replace(/\r\n?/g, '\n')
    .replace(/[^\P{Cc}\n]/gu, ' ')
    .replace(/[\\;,]/g, '\\$&')
    .replace(/\n/g, '\\n');

/** At most 75 octets a line, and no letter torn. */
function folded(line: string): string {
  const octets = (text: string) => new TextEncoder().encode(text).length;
  let all = '';
  let length = 0;
  for (const letter of line) {
    const more = octets(letter);
    if (length + more > 75) {
      all += '\r\n ';
      length = 1;
    }
    all += letter;
    length += more;
  }
  return all;
}
