import type { APIEmbed, APIEmbedField } from 'discord.js';
import type { Component } from './judge-components.ts';
import { escapeHtml, markdownHtml } from './markdown.ts';
import type { SeenAttachment, SeenMessage } from './seen.ts';

export type Theme = 'light' | 'dark';

/** What a message must have to be shown; a `SeenMessage` has it. */
export type Shown = Pick<SeenMessage, 'content' | 'embeds' | 'components' | 'attachments'> &
  Partial<Pick<SeenMessage, 'ephemeral'>>;

/**
 * A message as a page of its own, for looking at and for screenshots: in our own plain print, not as any client draws it. Pictures
 * are in the page itself, so that it needs nothing else.
 */
export function messagePage(message: Shown, given: { readonly theme: Theme; readonly question?: string }): string {
  const used = new Set(message.embeds.flatMap(({ image, thumbnail }) => [image?.url, thumbnail?.url]));
  const loose = message.attachments.filter(({ name }) => !used.has(`attachment://${name}`));
  return [
    '<!doctype html>',
    `<html lang="en" data-theme="${given.theme}"><meta charset="utf-8"><title>${escapeHtml(given.question ?? 'A message')}</title>`,
    `<style>${style}</style>`,
    '<main>',
    given.question ? `<p class="question">${escapeHtml(given.question)}</p>` : '',
    message.ephemeral ? '<p class="aside">Only the one who asked sees this.</p>' : '',
    message.content ? `<div class="text">${markdownHtml(message.content)}</div>` : '',
    ...message.embeds.map((embed) => embedHtml(embed, message.attachments)),
    ...loose.map(attachmentHtml),
    ...message.components.map((component) => componentHtml(component, message.attachments)),
    '</main></html>',
  ]
    .filter((part) => part !== '')
    .join('\n');
}

function embedHtml(embed: APIEmbed, attachments: readonly SeenAttachment[]): string {
  const colour = `#${(embed.color ?? 0x888888).toString(16).padStart(6, '0')}`;
  return [
    `<article style="--rule:${colour}">`,
    embed.author ? `<p class="aside">${escapeHtml(embed.author.name)}</p>` : '',
    embed.title ? `<h1>${markdownHtml(embed.title)}</h1>` : '',
    embed.description ? `<div class="text">${markdownHtml(embed.description)}</div>` : '',
    ...fieldGroups(embed.fields ?? []).map(groupHtml),
    embed.image ? pictureHtml(embed.image.url, attachments) : '',
    embed.footer ? `<footer>${escapeHtml(embed.footer.text)}</footer>` : '',
    '</article>',
  ].join('');
}

/** Neighbouring inline fields stand up to three abreast, the others alone. */
function fieldGroups(fields: readonly APIEmbedField[]): readonly (readonly APIEmbedField[])[] {
  const groups: APIEmbedField[][] = [];
  for (const field of fields) {
    const last = groups.at(-1);
    if (field.inline && last?.[0]?.inline && last.length < 3) last.push(field);
    else groups.push([field]);
  }
  return groups;
}

const groupHtml = (group: readonly APIEmbedField[]) =>
  `<dl>${group.map(({ name, value }) => `<div><dt>${markdownHtml(name)}</dt><dd>${markdownHtml(value)}</dd></div>`).join('')}</dl>`;

function pictureHtml(url: string, attachments: readonly SeenAttachment[]): string {
  const file = attachments.find(({ name }) => `attachment://${name}` === url);
  return file ? attachmentHtml(file) : `<p class="aside">[picture ${escapeHtml(url)}]</p>`;
}

function attachmentHtml(file: SeenAttachment): string {
  const alt = escapeHtml(file.description ?? '');
  if (!file.contentType.startsWith('image/')) return `<p class="aside">[file ${escapeHtml(file.name)}] ${alt}</p>`;
  const data = `data:${file.contentType};base64,${Buffer.from(file.bytes).toString('base64')}`;
  return `<figure><img src="${data}" alt="${alt}">${alt ? `<figcaption>${alt}</figcaption>` : ''}</figure>`;
}

function componentHtml(component: Component, attachments: readonly SeenAttachment[]): string {
  const inner = () => (component.components ?? []).map((each) => componentHtml(each, attachments)).join('');
  switch (component.type) {
    case 1:
      return `<p class="row">${inner()}</p>`;
    case 2:
      return `<span class="button${component.disabled ? ' off' : ''}">${escapeHtml(component.label ?? '•')}</span>`;
    case 3:
      return `<span class="button">${escapeHtml(component.placeholder ?? 'choose')} ▾</span>`;
    case 9:
      return `<section>${inner()}${component.accessory ? componentHtml(component.accessory, attachments) : ''}</section>`;
    case 10:
      return `<div class="text">${markdownHtml(component.content ?? '')}</div>`;
    case 12: {
      const items = (component as { items?: readonly { media: { url: string } }[] }).items ?? [];
      return items.map(({ media }) => pictureHtml(media.url, attachments)).join('');
    }
    case 14:
      return '<hr>';
    case 17:
      return `<article>${inner()}</article>`;
    default:
      return `<p class="aside">[component ${component.type}]</p>`;
  }
}

const style = `
:root { --paper: #fbfaf7; --ink: #22201c; --faint: #6d675e; --line: #d8d2c6; --card: #ffffff; --code: #f1ede4; color-scheme: light; }
[data-theme=dark] { --paper: #1c1a17; --ink: #ece7de; --faint: #a39b8f; --line: #413c35; --card: #25221e; --code: #302c27; color-scheme: dark; }
body { margin: 0; background: var(--paper); color: var(--ink); font: 15px/1.45 "DejaVu Sans", sans-serif; }
main { width: 640px; margin: 0 auto; padding: 24px; }
h1, h2, h3, h4 { font-size: 1.1em; margin: 0 0 6px; }
article { background: var(--card); border: 1px solid var(--line); border-top: 3px solid var(--rule, var(--line)); padding: 14px 16px; margin: 10px 0; }
dl { display: grid; grid-template-columns: repeat(auto-fit, minmax(0, 1fr)); gap: 4px 16px; margin: 10px 0 0; }
dl > div { min-width: 0; overflow-wrap: anywhere; }
dl:has(> :nth-child(2)) { grid-template-columns: 1fr 1fr; }
dl:has(> :nth-child(3)) { grid-template-columns: 1fr 1fr 1fr; }
dt { color: var(--faint); font-size: 0.85em; }
dd { margin: 0; }
li { margin-left: 18px; }
small, footer, figcaption, .aside, .question { color: var(--faint); font-size: 0.85em; }
small { display: block; }
.question { font-family: "DejaVu Sans Mono", monospace; margin: 0 0 10px; }
.question::before { content: "> "; }
footer { margin-top: 12px; border-top: 1px solid var(--line); padding-top: 6px; }
pre, code { background: var(--code); font: 13px/1.4 "DejaVu Sans Mono", monospace; }
pre { padding: 8px; overflow-x: auto; white-space: pre-wrap; }
blockquote { margin: 0; padding-left: 10px; border-left: 2px solid var(--line); }
figure { margin: 12px 0 0; }
img { max-width: 100%; display: block; }
.row { display: flex; flex-wrap: wrap; gap: 8px; margin: 10px 0; }
.button { border: 1px solid var(--faint); border-radius: 3px; padding: 4px 12px; font-size: 0.9em; }
.off { opacity: 0.5; }
`;
