import type { APIEmbed, APIMessageTopLevelComponent } from 'discord.js';

export interface FileOut {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly alt?: string;
}

/** A message as plain data; files travel beside it. */
export interface Message {
  readonly content?: string;
  readonly embeds: readonly APIEmbed[];
  readonly components: readonly APIMessageTopLevelComponent[];
  readonly files: readonly FileOut[];
}

/** The body that goes over the wire. Nothing in it can ping anyone, and an edit takes away what is not in it. */
export function bodyOf({ content, embeds, components, files }: Message, flags?: number) {
  return {
    content: content ?? '',
    embeds,
    components,
    attachments: files.map(({ name, alt }, id) => ({
      id: String(id),
      filename: name,
      ...(alt === undefined ? {} : { description: alt }),
    })),
    allowed_mentions: { parse: [] },
    ...(flags === undefined ? {} : { flags }),
  };
}
