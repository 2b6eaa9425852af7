import type { APIEmbedField } from 'discord.js';
import { limits } from '../limits.ts';

/** Lines, each already escaped and no longer than a field holds, packed into as few full-width fields as they need. */
export function fieldsOf(name: string, lines: readonly string[]): readonly APIEmbedField[] {
  const values: string[] = [];
  for (const line of lines) {
    const last = values.at(-1);
    if (last !== undefined && last.length + 1 + line.length <= limits.fieldValue) {
      values[values.length - 1] = `${last}\n${line}`;
    } else values.push(line);
  }
  return values.map((value, at) => ({ name: at === 0 ? name : continued, value, inline: false }));
}

/** A name must not be empty; this one is not seen. */
const continued = '\u200b';
