import type { APIEmbedField } from 'discord.js';
import { limits } from '../limits.ts';

/** Lines, each already escaped and no longer than a field holds, packed into as few full-width fields as they need. */
export function fieldsOf(name: string, lines: readonly string[], between = '\n'): readonly APIEmbedField[] {
  const values: string[] = [];
  for (const line of lines) {
    const last = values.at(-1);
    if (last !== undefined && last.length + between.length + line.length <= limits.fieldValue) {
      values[values.length - 1] = `${last}${between}${line}`;
    } else values.push(line);
  }
  return values.map((value, at) => ({ name: at === 0 ? name : unnamed, value, inline: false }));
}

/** Where each line is a thing of its own that may be long: where one ends can be seen. */
export const listed = (line: string): string => `- ${line}`;

/** A name must not be empty; this one is not seen. */
export const unnamed = '\u200b';
