import type { Clock } from './clock.ts';
import { flag, type MessageBody, type SentFile } from './judge-message.ts';
import type { SeenAttachment, SeenMessage, Sight } from './seen.ts';
import type { Place, User, World } from './world.ts';

/** For how long a nonce keeps a message from being sent again: "the past few minutes" in the documentation, 5 min taken. */
const nonceKeeps_ms = 5 * 60_000;

type Writable<T> = { -readonly [K in keyof T]: T[K] };

/** A message of the platform, with all who look at it. */
export interface Kept {
  readonly view: Writable<SeenMessage>;
  readonly place: Place;
  readonly sights: Set<Sight>;
  readonly at: number;
  readonly asked?: Asked;
  editedAt?: number;
}

/** The interaction that a message answers. */
export interface Asked {
  readonly id: string;
  readonly type: number;
  readonly user: User;
}

export interface Messages {
  create(given: {
    readonly place: Place;
    readonly body: MessageBody;
    readonly files?: readonly SentFile[];
    readonly sight: Sight;
    readonly ephemeral?: boolean;
    readonly loading?: boolean;
    readonly asked?: Asked;
  }): Kept;
  edit(kept: Kept, body: MessageBody, files: readonly SentFile[]): void;
  remove(kept: Kept): void;
  find(id: string): Kept | undefined;
  /** Newest first, as the platform lists them. Ephemeral ones are not in a channel. */
  inChannel(channelId: string): readonly Kept[];
  /** The message of a nonce, for the minutes in which it is known. */
  byNonce(nonce: string | number | null | undefined, channelId: string): Kept | undefined;
  forgetNonces(): void;
  attachment(id: string): SeenAttachment | undefined;
  /** A message as the platform writes it. */
  wire(kept: Kept): Record<string, unknown>;
}

export function keepMessages(given: {
  readonly world: World;
  readonly clock: Clock;
  readonly files: () => string;
}): Messages {
  const { world, clock } = given;
  const all = new Map<string, Kept>();
  const nonces = new Map<string, Kept>();

  function attach(body: MessageBody, files: readonly SentFile[], channelId: string): SeenAttachment[] {
    return files.map((file) => {
      const entry = body.attachments?.find((listed) => listed.id === String(file.index));
      const id = world.id();
      const name = entry?.filename ?? file.name;
      return {
        id,
        name,
        ...(entry?.description ? { description: entry.description } : {}),
        contentType: file.contentType,
        bytes: file.bytes,
        url: `${given.files()}/${channelId}/${id}/${name}`,
      };
    });
  }

  const touch = (kept: Kept) => {
    for (const sight of kept.sights) sight.touch();
  };

  return {
    create({ place, body, files = [], sight, ephemeral = false, loading = false, asked }) {
      const id = world.id();
      const view: Writable<SeenMessage> = {
        id,
        channelId: place.channelId,
        ephemeral,
        loading,
        deleted: false,
        edits: 0,
        content: body.content ?? '',
        embeds: body.embeds ?? [],
        components: body.components ?? [],
        attachments: attach(body, files, place.channelId),
        flags: (body.flags ?? 0) | (ephemeral ? flag.ephemeral : 0),
        ...(body.nonce === undefined || body.nonce === null ? {} : { nonce: body.nonce }),
      };
      const kept: Kept = { view, place, sights: new Set([sight]), at: clock.now(), ...(asked ? { asked } : {}) };
      all.set(id, kept);
      if (body.enforce_nonce && view.nonce !== undefined) nonces.set(`${view.channelId} ${view.nonce}`, kept);
      sight.change({ messages: [...sight.seen.messages, view] });
      return kept;
    },
    edit(kept, body, files) {
      const { view } = kept;
      const filled = view.loading;
      if (body.content !== undefined) view.content = body.content ?? '';
      if (body.embeds !== undefined) view.embeds = body.embeds ?? [];
      if (body.components !== undefined) view.components = body.components ?? [];
      const stay = body.attachments
        ? view.attachments.filter(({ id }) => body.attachments?.some((entry) => entry.id === id))
        : view.attachments;
      view.attachments = [...stay, ...attach(body, files, kept.place.channelId)];
      view.flags |= (body.flags ?? 0) & (flag.componentsV2 | flag.suppressEmbeds);
      view.loading = false;
      // A deferral that is filled is not shown as an edit.
      if (!filled) {
        view.edits += 1;
        kept.editedAt = clock.now();
      }
      touch(kept);
    },
    remove(kept) {
      kept.view.deleted = true;
      touch(kept);
    },
    find: (id) => {
      const kept = all.get(id);
      return kept?.view.deleted ? undefined : kept;
    },
    inChannel: (channelId) =>
      [...all.values()]
        .filter(({ view }) => view.channelId === channelId && !view.deleted && !view.ephemeral)
        .toReversed(),
    byNonce(nonce, channelId) {
      const kept = nonces.get(`${channelId} ${nonce}`);
      return kept && !kept.view.deleted && clock.now() - kept.at < nonceKeeps_ms ? kept : undefined;
    },
    forgetNonces: () => nonces.clear(),
    attachment: (id) => [...all.values()].flatMap(({ view }) => view.attachments).find((each) => each.id === id),
    wire,
  };

  function wire(kept: Kept): Record<string, unknown> {
    const { view, place, asked } = kept;
    const address = new Map(view.attachments.map(({ name, url }) => [`attachment://${name}`, url]));
    return {
      id: view.id,
      type: asked?.type === 2 ? 20 : asked ? 19 : 0,
      channel_id: view.channelId,
      author: world.bot,
      content: view.content,
      timestamp: new Date(kept.at).toISOString(),
      edited_timestamp: kept.editedAt === undefined ? null : new Date(kept.editedAt).toISOString(),
      tts: false,
      mention_everyone: false,
      mentions: [],
      mention_roles: [],
      pinned: false,
      flags: view.flags | (view.loading ? 1 << 7 : 0),
      embeds: view.embeds.map((embed) => ({
        type: 'rich',
        ...addressed(embed, address),
        ...(embed.fields ? { fields: embed.fields.map((field) => ({ inline: false, ...field })) } : {}),
      })),
      components: numbered(addressed(view.components, address)),
      attachments: view.attachments.map(({ bytes, contentType, name, ...rest }) => ({
        ...rest,
        filename: name,
        size: bytes.length,
        content_type: contentType,
        proxy_url: rest.url,
      })),
      ...(view.nonce === undefined ? {} : { nonce: view.nonce }),
      ...(place.guildId && !asked ? { guild_id: place.guildId } : {}),
      ...(asked
        ? {
            application_id: world.applicationId,
            webhook_id: world.applicationId,
            interaction_metadata: { ...asked, authorizing_integration_owners: {} },
          }
        : {}),
    };
  }
}

/** With the addresses of attachments in the place of their names. */
function addressed<T>(part: T, address: ReadonlyMap<string, string>): T {
  return JSON.parse(
    JSON.stringify(part, (_, value) => (typeof value === 'string' ? (address.get(value) ?? value) : value)),
  ) as T;
}

/** The platform gives every component of a message a number, and a select how many may be chosen. */
function numbered(components: unknown): unknown {
  let count = 0;
  return JSON.parse(JSON.stringify(components), (_, value) => {
    if (typeof value !== 'object' || value === null || typeof value.type !== 'number') return value;
    return { id: ++count, ...(value.type === 3 ? { min_values: 1, max_values: 1 } : {}), ...value };
  });
}
