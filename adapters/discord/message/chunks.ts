import type { APIEmbedField } from 'discord.js';
import { limits } from '../limits.ts';

/** Lines, each already escaped and no longer than a field holds, packed into as few full-width fields as they need. */
export const fieldsOf = (name: string, lines: readonly string[], between = '\n'): readonly APIEmbedField[] =>
  packed(lines, between, limits.fieldValue).map((value, at) => ({
    name: at === 0 ? name : unnamed,
    value,
    inline: false,
  }));

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
