/** The platform's markup as far as a bot writes it, as HTML: for pictures of messages only. */
export function markdownHtml(text: string): string {
  return text
    .split(/```(?:\w+\n)?\n?([\s\S]*?)```/)
    .map((part, index) => (index % 2 === 1 ? `<pre>${escapeHtml(part)}</pre>` : lines(part)))
    .join('');
}

export function escapeHtml(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
}

/** The line breaks beside a code block are the block's own. */
function lines(text: string): string {
  const inner = text.replace(/^\n|\n$/g, '');
  return inner === '' ? '' : inner.split('\n').map(line).join('');
}

function line(text: string): string {
  const [, mark, rest = ''] = /^(#{1,3}|-#|>|[-*]) (.*)$/.exec(text) ?? [];
  if (mark === undefined) return text === '' ? '<br>' : `<div>${inline(text)}</div>`;
  if (mark === '-#') return `<small>${inline(rest)}</small>`;
  if (mark === '>') return `<blockquote>${inline(rest)}</blockquote>`;
  if (mark.startsWith('#')) return `<h${mark.length + 1}>${inline(rest)}</h${mark.length + 1}>`;
  return `<li>${inline(rest)}</li>`;
}

/** The first mark that closes wins; what is escaped or in code is left as it stands. */
function inline(text: string): string {
  const marks =
    /\\([^\w\s])|`([^`]+)`|\*\*(.+?)\*\*(?!\*)|__(.+?)__|~~(.+?)~~|\*([^*]+)\*|\b_([^_]+)_\b|\[([^\]]+)\]\((https?:[^)\s]+)\)/g;
  let out = '';
  let from = 0;
  for (const found of text.matchAll(marks)) {
    const [whole, escaped, code, bold, under, struck, italic, italic2, label, url] = found;
    out += escapeHtml(text.slice(from, found.index));
    from = found.index + whole.length;
    if (escaped !== undefined) out += escapeHtml(escaped);
    else if (code !== undefined) out += `<code>${escapeHtml(code)}</code>`;
    else if (bold !== undefined) out += `<b>${inline(bold)}</b>`;
    else if (under !== undefined) out += `<u>${inline(under)}</u>`;
    else if (struck !== undefined) out += `<s>${inline(struck)}</s>`;
    else if (label !== undefined) out += `<a href="${escapeHtml(url ?? '')}">${inline(label)}</a>`;
    else out += `<i>${inline(italic ?? italic2 ?? '')}</i>`;
  }
  return out + escapeHtml(text.slice(from));
}
