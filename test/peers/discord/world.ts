import type { Clock } from './clock.ts';

/** The people and places of the made-up platform, and its numbers. */
export interface Who {
  /** Name of the member; `ada` if nobody is named. */
  user?: string;
  /** Where: a server the bot is in (default), the bot's own direct messages, or elsewhere by the member's own installation. */
  place?: 'guild' | 'bot-dm' | 'user-install';
  /** Which of the servers, counted from 0: there is one on each shard. */
  guild?: number;
  admin?: boolean;
  locale?: string;
}

export interface User {
  readonly id: string;
  readonly username: string;
  readonly global_name: string | null;
  readonly discriminator: '0';
  readonly avatar: null;
  readonly bot: boolean;
  readonly flags: 0;
  readonly public_flags: 0;
  readonly primary_guild: null;
}

export interface Place {
  readonly kind: 'guild' | 'bot-dm' | 'user-install';
  readonly channelId: string;
  readonly guildId?: string;
  readonly name: string;
  /** The member of a direct message channel. */
  readonly member?: User;
}

export interface World {
  readonly applicationId: string;
  readonly bot: User;
  readonly guilds: readonly { readonly id: string; readonly channelId: string; readonly shard: number }[];
  /** A new id, later ones greater. */
  id(): string;
  user(name: string): User;
  userById(id: string): User | undefined;
  /** The place where somebody acts; direct message channels come to be when they are first used. */
  place(who: Who): Place;
  directChannel(userId: string): Place | undefined;
  /** The place of a channel the bot may write into. */
  channel(channelId: string): Place | undefined;
  /** What people do to their channels while the bot looks away. */
  readonly doors: Doors;
}

export interface Doors {
  /** Members who take no direct messages from the bot, by id. */
  readonly closed: Set<string>;
  /** Channels that are deleted, that the bot was shut out of, or whose history it may not read. */
  readonly gone: Set<string>;
  readonly shut: Set<string>;
  readonly unread: Set<string>;
}

const epoch_ms = 1_420_070_400_000;

export function createWorld(given: { readonly shards: number; readonly applicationId?: string; clock: Clock }): World {
  let count = 0n;
  // 22 low bits of an id count, the others are its time: an id tells when it was made.
  const id = (from: Clock = given.clock) => String((BigInt(from.now() - epoch_ms) << 22n) | (count++ & 0x3fffffn));
  const users = new Map<string, User>();
  const places = new Map<string, Place>();
  const applicationId = given.applicationId ?? id();
  const bot: User = person(applicationId, 'teemer', true);
  users.set(bot.username, bot);
  const guilds = Array.from({ length: given.shards }, (_, shard) => {
    const guild = { id: guildOn(shard), channelId: id(), shard };
    places.set(guild.channelId, { kind: 'guild', channelId: guild.channelId, guildId: guild.id, name: '#furnace' });
    return guild;
  });

  /** A server's shard is told by the time in its id. */
  function guildOn(shard: number): string {
    const now = BigInt(given.clock.now() - epoch_ms);
    const total = BigInt(given.shards);
    return String(((now - (now % total) + BigInt(shard)) << 22n) | (count++ & 0x3fffffn));
  }

  function user(name: string): User {
    const known = users.get(name);
    if (known) return known;
    const made = person(id(), name, false);
    users.set(name, made);
    return made;
  }

  const userById = (userId: string) => [...users.values()].find((each) => each.id === userId);

  function room(kind: 'bot-dm' | 'user-install', member: User): Place {
    const name = kind === 'bot-dm' ? `direct messages with ${member.username}` : `${member.username}'s other group`;
    const known = [...places.values()].find((place) => place.kind === kind && place.name === name);
    if (known) return known;
    const made: Place = { kind, channelId: id(), name, member };
    places.set(made.channelId, made);
    return made;
  }

  return {
    doors: { closed: new Set(), gone: new Set(), shut: new Set(), unread: new Set() },
    applicationId,
    bot,
    guilds,
    id,
    user,
    userById,
    place(who) {
      if ((who.place ?? 'guild') !== 'guild') return room(who.place as 'bot-dm' | 'user-install', user(nameOf(who)));
      const guild = guilds[who.guild ?? 0];
      if (guild === undefined) throw new Error(`There is no server ${who.guild}: there are ${guilds.length}.`);
      return places.get(guild.channelId)!;
    },
    directChannel(userId) {
      const member = userById(userId);
      return member && !member.bot ? room('bot-dm', member) : undefined;
    },
    channel: (channelId) => {
      const place = places.get(channelId);
      return place?.kind === 'user-install' ? undefined : place;
    },
  };
}

export const nameOf = (who: Who) => who.user ?? 'ada';

const person = (id: string, username: string, bot: boolean): User => ({
  id,
  username,
  global_name: null,
  discriminator: '0',
  avatar: null,
  bot,
  flags: 0,
  public_flags: 0,
  primary_guild: null,
});

/** A channel as the platform describes it. */
export function channelObject(place: Place, world: World): Record<string, unknown> {
  const common = { id: place.channelId, flags: 0, last_message_id: null };
  if (place.kind === 'guild') {
    const described = { name: place.name.slice(1), position: 0, parent_id: null, topic: null, nsfw: false };
    return {
      ...common,
      type: 0,
      guild_id: place.guildId,
      permission_overwrites: [],
      rate_limit_per_user: 0,
      ...described,
    };
  }
  if (place.kind === 'bot-dm') return { ...common, type: 1, recipients: [place.member] };
  return { ...common, type: 3, name: null, icon: null, owner_id: world.applicationId, recipients: [] };
}

/** A server as the platform describes it when the bot comes in. */
export function guildObject(place: Place, world: World): Record<string, unknown> {
  const joined_at = new Date(0).toISOString();
  const everybody = { id: place.guildId, name: '@everyone', color: 0, hoist: false, position: 0, permissions: '0' };
  return {
    id: place.guildId,
    name: 'a made-up club',
    icon: null,
    owner_id: world.user('ada').id,
    joined_at,
    large: false,
    unavailable: false,
    member_count: 2,
    preferred_locale: 'en-US',
    features: [],
    roles: [{ ...everybody, managed: false, mentionable: false, flags: 0 }],
    channels: [channelObject(place, world)],
    members: [{ user: world.bot, roles: [], joined_at, deaf: false, mute: false, flags: 0 }],
    ...{ threads: [], emojis: [], stickers: [], presences: [], voice_states: [], stage_instances: [] },
    ...{ guild_scheduled_events: [], soundboard_sounds: [] },
  };
}
