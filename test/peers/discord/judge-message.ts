import type { APIAllowedMentions, APIEmbed } from 'discord.js';
import { type Component, componentFaults, countComponents } from './judge-components.ts';
import { type SchemaName, schemaFaults } from './strict.ts';

/** A message as it is sent: by a callback, an edit, a follow-up or into a channel. */
export interface MessageBody {
  readonly content?: string | null;
  readonly embeds?: readonly APIEmbed[] | null;
  readonly components?: readonly Component[] | null;
  readonly attachments?: readonly AttachmentBody[] | null;
  readonly allowed_mentions?: APIAllowedMentions | null;
  readonly flags?: number | null;
  readonly poll?: unknown;
  readonly nonce?: string | number | null;
  readonly enforce_nonce?: boolean | null;
}

export interface AttachmentBody {
  readonly id: string;
  readonly filename?: string | null;
  readonly description?: string | null;
}

/** A file of a multipart request, by the number in its part's name (`files[0]`). */
export interface SentFile {
  readonly index: number;
  readonly name: string;
  readonly contentType: string;
  readonly bytes: Uint8Array;
}

export const flag = { suppressEmbeds: 1 << 2, ephemeral: 1 << 6, silent: 1 << 12, componentsV2: 1 << 15 } as const;

/** Bytes a file may have on a server without any boost (from memory). */
export const fileLimit_bytes = 10 * 2 ** 20;

interface Sent {
  readonly body: MessageBody;
  readonly files: readonly SentFile[];
  /** Attachments of the message before an edit. */
  readonly before?: readonly { readonly id: string; readonly name: string }[];
  /** Whether a message with nothing in it is to be refused: an edit may leave everything as it was. */
  readonly edit: boolean;
}

/** What the platform refuses in a message beyond its schema (resources/message, components/reference), in words. */
export function messageFaults({ body, files, before = [], edit }: Sent): readonly string[] {
  const flags = body.flags ?? 0;
  const v2 = (flags & flag.componentsV2) !== 0;
  const allowed = flag.suppressEmbeds | flag.componentsV2 | (edit ? 0 : flag.ephemeral | flag.silent);
  return [
    ...(flags & ~allowed ? [`flags ${flags}: ${edit ? 'an edit' : 'a message'} can set only ${allowed}`] : []),
    ...embedFaults(body.embeds ?? []),
    ...componentFaults(body.components ?? [], v2),
    ...attachmentFaults(body, files, before),
    ...(v2 ? v2Faults(body) : []),
    ...(edit || !isEmpty(body, files) ? [] : ['an empty message']),
    ...((body.content?.length ?? 0) > 2000 ? ['content has more than 2000 characters'] : []),
  ];
}

/** What we ask of ourselves: nothing that was echoed may call anybody. */
export function mentionFaults(body: MessageBody): readonly string[] {
  const given = body.allowed_mentions;
  const closed = given && JSON.stringify(given) === JSON.stringify({ parse: [] });
  return closed ? [] : [`allowed_mentions is ${JSON.stringify(given) ?? 'missing'}: must be {"parse":[]}`];
}

/** A message by itself calls the one person it begins with, and nobody else. */
export function callFaults(body: MessageBody): readonly string[] {
  const called = /^<@(\d+)>/.exec(body.content ?? '')?.[1];
  const others = [...JSON.stringify([body.content, body.embeds]).matchAll(/<@[!&]?(\d+)>|@(?:everyone|here)\b/g)].slice(
    1,
  );
  return [
    ...(called === undefined ? mentionFaults(body) : []),
    ...(called !== undefined && JSON.stringify(body.allowed_mentions) !== JSON.stringify({ users: [called] })
      ? [`allowed_mentions is ${JSON.stringify(body.allowed_mentions) ?? 'missing'}: must be {"users":["${called}"]}`]
      : []),
    ...(called === undefined ? [] : others.map(([sign]) => `echoes ${sign}`)),
  ];
}

/**
 * The schema's complaints of a body as discord.js writes it: it adds `tts` and `enforce_nonce` to every message, also where the
 * schemas know no such key. Only their `false` is let through.
 */
export function bodyFaults(name: SchemaName, body: unknown): readonly string[] {
  const wire = withoutHabits(body);
  return schemaFaults(name, isRecord(wire) && isRecord(wire.data) ? { ...wire, data: withoutHabits(wire.data) } : wire);
}

function withoutHabits(part: unknown): unknown {
  if (!isRecord(part)) return part;
  const { tts, enforce_nonce, ...rest } = part;
  return { ...rest, ...(tts === false ? {} : { tts }), ...(enforce_nonce === false ? {} : { enforce_nonce }) };
}

function embedFaults(embeds: readonly APIEmbed[]): readonly string[] {
  const faults = embeds.flatMap((embed, index) => {
    const required = [
      ...(embed.fields ?? []).flatMap((field, at) => [
        { where: `fields.${at}.name`, text: field.name },
        { where: `fields.${at}.value`, text: field.value },
      ]),
      ...(embed.footer ? [{ where: 'footer.text', text: embed.footer.text }] : []),
      ...(embed.author ? [{ where: 'author.name', text: embed.author.name }] : []),
    ];
    const blank = required.filter(({ text }) => (text ?? '').trim() === '').map(({ where }) => `${where} is empty`);
    const shown = embedCharacters(embed) > 0 || embed.image?.url || embed.thumbnail?.url;
    return [...blank, ...(shown ? [] : ['shows nothing'])].map((fault) => `embeds.${index}: ${fault}`);
  });
  const sum = embeds.reduce((total, embed) => total + embedCharacters(embed), 0);
  return sum > 6000 ? [...faults, `embeds have ${sum} characters together: at most 6000`] : faults;
}

/** Characters of an embed that count towards the 6000. */
export function embedCharacters(embed: APIEmbed): number {
  const texts = [embed.title, embed.description, embed.footer?.text, embed.author?.name];
  const fields = (embed.fields ?? []).flatMap((field) => [field.name, field.value]);
  return [...texts, ...fields].reduce((sum, text) => sum + (text?.length ?? 0), 0);
}

function attachmentFaults(
  body: MessageBody,
  files: readonly SentFile[],
  before: readonly { readonly id: string; readonly name: string }[],
): readonly string[] {
  const listed = body.attachments ?? [];
  const kept = body.attachments ? before.filter(({ id }) => listed.some((entry) => entry.id === id)) : before;
  const nameOf = (file: SentFile) => listed.find((entry) => entry.id === String(file.index))?.filename ?? file.name;
  const names = [...kept.map(({ name }) => name), ...files.map(nameOf)];
  const known = new Set([...before.map(({ id }) => id), ...files.map((file) => String(file.index))]);
  return [
    ...listed.filter((entry) => !known.has(entry.id)).map((entry) => `attachments: ${entry.id} has no file`),
    ...files.filter((file) => file.bytes.length > fileLimit_bytes).map((file) => `${file.name} is larger than 10 MiB`),
    ...files.filter((file) => file.bytes.length === 0).map((file) => `${file.name} is empty`),
    ...(names.length > 10 ? [`${names.length} attachments: at most 10`] : []),
    ...references(body)
      .filter((name) => !names.includes(name))
      .map((name) => `attachment://${name} is not attached (${names.join(', ') || 'nothing is'})`),
    // The platform rewrites other names, and what refers to them by the old name shows nothing.
    ...names.filter((name) => !/^[\w.-]+$/.test(name)).map((name) => `the file name ${name} would be rewritten`),
  ];
}

/** Names that a message refers to by `attachment://`. */
function references(body: MessageBody): readonly string[] {
  const found: string[] = [];
  JSON.stringify([body.embeds, body.components], (key, value) => {
    if ((key === 'url' || key === 'icon_url') && typeof value === 'string' && value.startsWith('attachment://')) {
      found.push(value.slice('attachment://'.length));
    }
    return value;
  });
  return found;
}

function v2Faults(body: MessageBody): readonly string[] {
  const beside = [
    ...(body.content ? ['content'] : []),
    ...(body.embeds?.length ? ['embeds'] : []),
    ...(body.poll ? ['a poll'] : []),
  ];
  const count = countComponents(body.components ?? []);
  return [
    ...beside.map((what) => `components v2 with ${what} beside them`),
    ...(count > 40 ? [`${count} components: at most 40`] : []),
  ];
}

function isEmpty(body: MessageBody, files: readonly SentFile[]): boolean {
  return !(
    body.content?.trim() ||
    body.embeds?.length ||
    body.components?.length ||
    body.attachments?.length ||
    files.length ||
    body.poll
  );
}

export const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
