import type { APIEmbedField } from 'discord.js';
import { clipped } from '../escape.ts';
import { limits } from '../limits.ts';

/**
 * Lines, each already escaped and no longer than a field holds, packed into as few full-width fields as they need. A field
 * must have a name, and one that is not seen leaves an empty line in the middle of a list: so what goes on says that it does.
 */
export const fieldsOf = (name: string, lines: readonly string[], between = '\n'): readonly APIEmbedField[] =>
  evenly(lines, between, limits.fieldValue).map((value, at) => ({
    name: at === 0 ? name : name === unnamed ? 'Continued' : clipped(`${name}, continued`, limits.fieldName),
    value,
    inline: false,
  }));

/** In as few texts as they need, and none of them much shorter than the others: a last line alone looks lost. */
function evenly(lines: readonly string[], between: string, room: number): readonly string[] {
  const full = packed(lines, between, room);
  if (full.length < 2) return full;
  const whole = full.reduce((sum, { length }) => sum + length, 0);
  for (let share = whole / full.length; share < room; share += room / 20) {
    const even = packed(lines, between, share);
    if (even.length <= full.length && even.every(({ length }) => length <= room)) return even;
  }
  return full;
}

/** In as few texts as they need. */
export function packed(lines: readonly string[], between: string, room: number): readonly string[] {
  const values: string[] = [];
  for (const line of lines) {
    const last = values.at(-1);
    if (last !== undefined && last.length + between.length + line.length <= room) {
      values[values.length - 1] = `${last}${between}${line}`;
    } else values.push(line);
  }
  return values;
}

/** Where each line is a thing of its own that may be long: where one ends can be seen. */
export const listed = (line: string): string => `- ${line}`;

/** A name must not be empty; this one is not seen. */
export const unnamed = '\u200b';
