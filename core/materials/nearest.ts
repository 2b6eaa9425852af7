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

/** The same, with two neighbours exchanged as one slip: `mxi`. */
function slips(a: string, b: string): number {
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, j) => j)];
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const replaced = rows[i - 1]![j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      const exchanged =
        i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1] ? rows[i - 2]![j - 2]! + 1 : replaced;
      row.push(Math.min(rows[i - 1]![j]! + 1, row[j - 1]! + 1, replaced, exchanged));
    }
    rows.push(row);
  }
  return rows[a.length]![b.length]!;
}

/**
 * The one name a word is a slip of the finger from: one letter in so many at most, or its beginning, three letters or
 * more. Nothing where that is no name or several: a guess from further off says what nobody meant.
 */
export function slipOf(word: string, names: readonly string[], oneIn = 3): string | undefined {
  const asked = word.toLowerCase().slice(0, 40);
  const all = [...new Set(names)];
  const begun = asked.length >= 3 ? all.filter((name) => name.startsWith(asked)) : [];
  if (begun.length === 1) return begun[0];
  const near = all
    .map((name) => ({ name, off: slips(asked, name.toLowerCase()) }))
    .filter(({ name, off }) => oneIn * off <= Math.max(asked.length, name.length))
    .toSorted((a, b) => a.off - b.off);
  return near[0]?.name;
}

/** Beyond this share of other letters a name is no slip of another one. */
const farOff = 0.4;

/** Of the names most like a text those that it may be a slip of: none, where all are far off. */
export const nearby = (text: string, names: readonly string[], most = 3): string[] =>
  nearest(text, names, most, farOff);

/** The names most like a text: one text inside the other counts half its edits. */
export function nearest(text: string, names: readonly string[], most = 3, furthest = Infinity): string[] {
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
    .filter((one) => one.cost <= furthest)
    .sort((a, b) => a.cost - b.cost || a.name.localeCompare(b.name, 'en'))
    .slice(0, most)
    .map(({ name }) => name);
}
