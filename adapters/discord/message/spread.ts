import type { APIEmbed } from 'discord.js';
import { clipped } from '../escape.ts';
import { limits } from '../limits.ts';

export const lengthOf = ({ title = '', description = '', fields = [], footer, author }: APIEmbed): number =>
  fields.reduce(
    (sum, { name, value }) => sum + name.length + value.length,
    title.length + description.length + (footer?.text.length ?? 0) + (author?.name.length ?? 0),
  );

export const fits = (embed: APIEmbed): boolean =>
  lengthOf(embed) <= limits.embed &&
  (embed.description?.length ?? 0) <= limits.description &&
  (embed.fields?.length ?? 0) <= limits.fields;

/**
 * The gravest case: more cautions than one embed holds beside the answer, or even alone. Then the answer stands above it
 * as the message's own text, which counts by itself, and below it there as many of the first lines as it takes.
 */
export function spread({ description = '', fields = [], ...rest }: APIEmbed): { content: string; embed: APIEmbed } {
  const left = fields.map(({ value, ...field }) => ({ ...field, lines: value.split('\n') }));
  const lifted: string[] = [];
  const embed = () => ({ ...rest, fields: left.map(({ lines, ...field }) => ({ ...field, value: lines.join('\n') })) });
  for (let [first] = left; first && !fits(embed()); [first] = left) {
    lifted.push(...first.lines.splice(0, 1));
    if (first.lines.length === 0) left.shift();
  }
  const below = lifted.map((line) => `\n${line}`).join('');
  return { content: `${clipped(description, limits.content - below.length)}${below}`, embed: embed() };
}
