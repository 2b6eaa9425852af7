/** An event as it comes from the server, and after decryption. Nothing in it is trusted. */
export interface RawEvent {
  readonly event_id: string;
  readonly room_id?: string;
  readonly sender: string;
  readonly type: string;
  readonly origin_server_ts: number;
  readonly state_key?: string;
  readonly content: Readonly<Record<string, unknown>>;
}

/** What an event says, as far as it can be a question. */
export type Said =
  | {
      readonly kind: 'text';
      readonly text: string;
      /** The thread it stands in. */
      readonly root?: string;
      /** The message it answers by name, not merely the last one of its thread. */
      readonly replyTo?: string;
      /** The message it takes the place of. */
      readonly edits?: string;
    }
  | { readonly kind: 'reaction'; readonly to: string; readonly key: string };

/** The words of a message, whoever's: a person's, or a bot's notice. */
export function wordsOf({ type, content }: Pick<RawEvent, 'type' | 'content'>): string {
  if (type !== 'm.room.message') return '';
  const answers = fields(fields(content['m.relates_to'])['m.in_reply_to']).event_id !== undefined;
  return withoutQuote(text(content.body) ?? '', answers);
}

/** Undefined for everything that is no person's words: notices of other bots, pictures, edits of nothing. */
export function saidIn({ type, content }: Pick<RawEvent, 'type' | 'content'>): Said | undefined {
  const relation = fields(content['m.relates_to']);
  const target = text(relation.event_id);
  if (type === 'm.reaction') {
    const key = text(relation.key);
    return relation.rel_type === 'm.annotation' && target && key ? { kind: 'reaction', to: target, key } : undefined;
  }
  if (type !== 'm.room.message') return undefined;
  if (relation.rel_type === 'm.replace') {
    const now = fields(content['m.new_content']);
    const words = text(now.body);
    if (now.msgtype !== 'm.text' || words === undefined || !target) return undefined;
    return { kind: 'text', text: withoutQuote(words, true), edits: target };
  }
  const words = text(content.body);
  if (content.msgtype !== 'm.text' || words === undefined) return undefined;
  const root = relation.rel_type === 'm.thread' ? target : undefined;
  const named = text(fields(relation['m.in_reply_to']).event_id);
  const replyTo = relation.is_falling_back === true ? undefined : named;
  return {
    kind: 'text',
    text: withoutQuote(words, named !== undefined),
    ...(root === undefined ? {} : { root }),
    ...(replyTo === undefined ? {} : { replyTo }),
  };
}

/** Some clients quote what they answer in lines that begin with `> `. */
function withoutQuote(words: string, answers: boolean): string {
  return (answers ? words.replace(/^(?:> .*\n)+\n?/, '') : words).trim();
}

export interface Address {
  readonly prefix: string;
  /** The bot's display name, the first part of its id, its id. */
  readonly names: readonly string[];
}

/** What follows the prefix or the bot's name; undefined where neither stands first. Nothing behind it asks for help. */
export function addressed(words: string, { prefix, names }: Address): string | undefined {
  const linked = mention.exec(words);
  if (linked && isOneOf(names, linked[1] ?? '')) return behind(words.slice(linked[0].length));
  const lower = words.toLowerCase();
  if (prefix !== '' && lower.startsWith(prefix.toLowerCase())) {
    const rest = words.slice(prefix.length);
    if (rest === '' || /^\s/.test(rest)) return rest.trim() || 'help';
  }
  for (const name of names.toSorted((a, b) => b.length - a.length)) {
    if (name === '') continue;
    const at = lower.startsWith(name.toLowerCase()) ? 0 : lower.startsWith(`@${name.toLowerCase()}`) ? 1 : -1;
    if (at < 0) continue;
    const line = behind(words.slice(at + name.length));
    if (line !== undefined) return line;
  }
  return undefined;
}

/** What follows a name: nothing of it where the name goes on, as in `Teemers`. */
const behind = (rest: string): string | undefined =>
  /^[:,]?(?:\s|$)/.test(rest) ? rest.replace(/^[:,\s]+/, '').trim() || 'help' : undefined;

/** A name picked from a list, as some clients write it in plain text: `[Teemer](https://matrix.to/#/@teemer:example.org)`. */
const mention = /^\[(?:\\.|[^\]\\])*\]\(<?https:\/\/matrix\.to\/#\/([^\s()?>]+)(?:\?[^\s()>]*)?>?\)/;

/** Whether an id, as it stands in an address, is among the names. */
function isOneOf(names: readonly string[], part: string): boolean {
  try {
    const id = decodeURIComponent(part);
    return id.startsWith('@') && names.includes(id);
  } catch {
    return false;
  }
}

const fields = (value: unknown): Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
const text = (value: unknown): string | undefined => (typeof value === 'string' ? value : undefined);
