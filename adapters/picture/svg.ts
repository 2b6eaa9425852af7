const entities: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Text for an element or an attribute; control characters are no XML, so they become spaces. */
export const escaped = (text: string): string =>
  text.replace(/\p{Cc}/gu, ' ').replace(/[&<>"]/g, (character) => entities[character] ?? '');

/** A hundredth of a px is finer than any screen or printer shows. */
export const short = (value: number): string => String(Math.round(value * 100) / 100);

type Attributes = Readonly<Record<string, string | number | undefined>>;

/** One element; attributes are escaped, `inside` is taken as SVG. */
export function element(name: string, attributes: Attributes, inside = ''): string {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${typeof value === 'number' ? short(value) : escaped(value!)}"`)
    .join('');
  return inside === '' ? `<${name}${written}/>` : `<${name}${written}>${inside}</${name}>`;
}

/** The names a screen reader says. */
export const named = (title: string, desc: string): string =>
  `${element('title', {}, escaped(title))}${element('desc', {}, escaped(desc))}`;
