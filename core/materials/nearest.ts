/** Edits (insert, delete, replace one letter) that turn one word into the other. */
export function distance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const replaced = row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(row[j]! + 1, next[j - 1]! + 1, replaced));
    }
    row = next;
  }
  return row[b.length]!;
}

/** The names most like a text: one text inside the other counts half its edits. */
export function nearest(text: string, names: readonly string[], most = 3): string[] {
  const plain = (name: string): string => name.toLowerCase().replaceAll('-', ' ');
  const asked = plain(text.slice(0, 60));
  const cost = (name: string): number => {
    const known = plain(name);
    const edits = distance(asked, known) / Math.max(asked.length, known.length, 1);
    const inside = asked.length >= 3 && (known.includes(asked) || asked.includes(known));
    return inside ? edits / 2 : edits;
  };
  return [...new Set(names)]
    .map((name) => ({ name, cost: cost(name) }))
    .sort((a, b) => a.cost - b.cost || a.name.localeCompare(b.name, 'en'))
    .slice(0, most)
    .map(({ name }) => name);
}
