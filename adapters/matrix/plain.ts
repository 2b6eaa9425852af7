/** Text without signs that steer a reader or break a message: line breaks stay, other invisible ones become spaces. */
export const plain = (text: string): string =>
  text
    .replace(/\r\n?/g, '\n')
    .replace(/[^\P{Cc}\n]|\p{Cf}/gu, ' ')
    .replace(/\p{Cs}/gu, '�');

/** Text that shows in HTML as it was typed: no tag, entity or attribute comes of it. */
export const escaped = (text: string): string => plain(text).replace(/[&<>"']/g, (sign) => entities[sign] ?? sign);

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};
