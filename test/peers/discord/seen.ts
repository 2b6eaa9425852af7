import type { APIEmbed, APIModalInteractionResponseCallbackData } from 'discord.js';
import type { Component } from './judge-components.ts';

export interface SeenAttachment {
  readonly id: string;
  readonly name: string;
  readonly description?: string;
  readonly contentType: string;
  readonly bytes: Uint8Array;
  readonly url: string;
}

/** A message as its readers see it now, with its edits applied. */
export interface SeenMessage {
  readonly id: string;
  readonly channelId: string;
  readonly ephemeral: boolean;
  /** Announced by a deferral, and nothing in it yet. */
  readonly loading: boolean;
  readonly deleted: boolean;
  readonly edits: number;
  readonly content: string;
  readonly embeds: readonly APIEmbed[];
  readonly components: readonly Component[];
  readonly attachments: readonly SeenAttachment[];
  readonly flags: number;
  readonly nonce?: string | number;
}

/** What came of one thing a member did, or of a message the bot sent by itself. It changes while more comes. */
export interface Seen {
  readonly id: string;
  /** What the member did, in words. */
  readonly did: string;
  readonly place: string;
  readonly state: SeenState;
  readonly messages: readonly SeenMessage[];
  readonly modal?: APIModalInteractionResponseCallbackData;
  readonly choices?: readonly { readonly name: string; readonly value: string | number }[];
  /** What the member's client says, such as "The application did not respond". */
  readonly error?: string;
  until(condition: (seen: Seen) => boolean, limit_ms?: number): Promise<Seen>;
}

export type SeenState = 'waiting' | 'answered' | 'deferred' | 'failed' | 'modal' | 'autocomplete';

export type Changes = Partial<Pick<Seen, 'state' | 'messages' | 'modal' | 'choices' | 'error'>>;

/** A `Seen` and the hand that changes it. */
export interface Sight {
  readonly seen: Seen;
  change(changes: Changes): void;
  /** Looks at the conditions that are waited for: what it shows may have changed inside a message. */
  touch(): void;
}

export function sightOf(given: { readonly id: string; readonly did: string; readonly place: string }): Sight {
  const watchers = new Set<() => void>();
  const seen: Seen = {
    ...given,
    state: 'waiting',
    messages: [],
    until(condition, limit_ms = 10_000) {
      return new Promise((resolve, reject) => {
        const look = () => {
          if (!condition(seen)) return;
          clearTimeout(timer);
          watchers.delete(look);
          resolve(seen);
        };
        // The limit keeps a test from hanging: it runs by the machine's time, whatever the peer's clock does.
        const timer = setTimeout(() => {
          watchers.delete(look);
          reject(new Error(`Not seen within ${limit_ms} ms. What was seen:\n${describeSeen(seen)}`));
        }, limit_ms);
        watchers.add(look);
        look();
      });
    },
  };
  const touch = () => {
    for (const look of [...watchers]) look();
  };
  return {
    seen,
    touch,
    change(changes) {
      Object.assign(seen, changes);
      touch();
    },
  };
}

export const playedBack = (all: readonly Seen[]) => all.map(describeSeen).join('\n\n');

function describeSeen(seen: Seen): string {
  return [
    `${seen.place} · ${seen.did}`,
    ...seen.messages.flatMap(describeMessage),
    ...(seen.modal ? [`  [form] ${seen.modal.title}`] : []),
    ...(seen.choices ? [`  [offered] ${seen.choices.map((choice) => choice.name).join(' | ')}`] : []),
    ...(seen.error ? [`  ! ${seen.error}`] : []),
    ...(seen.state === 'waiting' ? ['  (nothing yet)'] : []),
  ].join('\n');
}

function describeMessage(message: SeenMessage): readonly string[] {
  const marks = [
    ...(message.ephemeral ? ['only you see this'] : []),
    ...(message.edits > 0 ? [`edited ${message.edits}×`] : []),
  ];
  const head = marks.length > 0 ? [`(${marks.join(', ')})`] : [];
  if (message.deleted) return ['  (deleted)'];
  if (message.loading) return [...head, '(thinking)'].map((line) => `  ${line}`);
  return [
    ...head,
    ...(message.content ? message.content.split('\n') : []),
    ...message.embeds.flatMap(describeEmbed),
    ...message.attachments.map((file) => `[file ${file.name}, ${file.bytes.length} bytes] ${file.description ?? ''}`),
    ...message.components.flatMap(describeComponent),
  ].map((line) => `  ${line}`.trimEnd());
}

function describeEmbed(embed: APIEmbed): readonly string[] {
  return [
    ...(embed.author ? [embed.author.name] : []),
    ...(embed.title ? [`# ${embed.title}`] : []),
    ...(embed.description?.split('\n') ?? []),
    ...(embed.fields ?? []).map((field) => `${field.name}: ${field.value.replaceAll('\n', '\n    ')}`),
    ...(embed.image ? [`[picture ${embed.image.url}]`] : []),
    ...(embed.footer ? [`— ${embed.footer.text}`] : []),
  ].flatMap((text) => text.split('\n'));
}

function describeComponent(component: Component): readonly string[] {
  const inner = component.components ?? [];
  if (component.type === 1) return [inner.map(describeControl).join(' ')];
  if (component.type === 10) return (component.content ?? '').split('\n');
  return inner.flatMap(describeComponent);
}

function describeControl(control: Component): string {
  if (control.type !== 2) return `[${control.placeholder ?? 'choose'} ▾ ${control.options?.length ?? ''}]`;
  return `[${control.label ?? '•'}${control.disabled ? ' (off)' : ''}]`;
}
