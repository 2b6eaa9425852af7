import { readKey } from '../quantity/key.ts';
import type { Numbers, Step } from '../step.ts';

/** One of the arithmetic clauses of a formula, its names bound to the numbers of its step. */
export interface Equation {
  /** What stands before the colon: which of two, or why. */
  readonly title?: string;
  /** Key of the result in `gives`. */
  readonly key: string;
  readonly right: Term;
}

export type Term =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'constant'; readonly name: 'π' | 'σ' }
  | { readonly kind: 'key'; readonly key: string; readonly value: number }
  | { readonly kind: 'call'; readonly name: '√' | 'tan'; readonly of: Term }
  | { readonly kind: 'power'; readonly base: Term; readonly exponent: number }
  | { readonly kind: 'operation'; readonly operator: Operator; readonly left: Term; readonly right: Term };

export type Operator = '+' | '−' | '×' | '÷';

/** σ of Stefan and Boltzmann, W/(m²K⁴), CODATA 2018. */
export const constants = { π: Math.PI, σ: 5.670374419e-8 } as const;

/**
 * The clauses of a step's formula that are plain arithmetic in the names of its numbers: `dry mass = volume × dry
 * density × (1 + spare)`. A name is the key without its unit. A formula in prose, a differential equation and a name
 * without a number have none: nothing is guessed. `tan` takes degrees.
 */
export function equationsOf({ formula, inputs, gives }: Step): readonly Equation[] {
  const { title, body } = titled(formula);
  return body.split(/;\s+/).flatMap((clause): readonly Equation[] => {
    const [name = '', right, ...more] = clause.split('=');
    const key = Object.keys(gives).find((one) => readKey(one).label === normal(name));
    if (right === undefined || more.length > 0 || key === undefined) return [];
    const { [key]: _, ...others } = gives;
    const term = parse(right, bound(inputs, others));
    return term ? [{ ...(title === '' ? {} : { title }), key, right: term }] : [];
  });
}

/** What the right side comes to. */
export function worth(term: Term): number {
  switch (term.kind) {
    case 'number':
    case 'key':
      return term.value;
    case 'constant':
      return constants[term.name];
    case 'call':
      return term.name === '√' ? Math.sqrt(worth(term.of)) : Math.tan((worth(term.of) * Math.PI) / 180);
    case 'power':
      return worth(term.base) ** term.exponent;
    case 'operation':
      return operate[term.operator](worth(term.left), worth(term.right));
  }
}

const operate: Readonly<Record<Operator, (left: number, right: number) => number>> = {
  '+': (left, right) => left + right,
  '−': (left, right) => left - right,
  '×': (left, right) => left * right,
  '÷': (left, right) => left / right,
};

/** The first colon before the first equals sign parts a title from what is reckoned. */
function titled(formula: string): { readonly title: string; readonly body: string } {
  const before = formula.slice(0, Math.max(0, formula.indexOf('=')));
  const colon = before.lastIndexOf(': ');
  return { title: colon < 0 ? '' : formula.slice(0, colon), body: formula.slice(colon < 0 ? 0 : colon + 2) };
}

const normal = (name: string): string => name.trim().toLowerCase().replace(/\s+/g, ' ');

/** What went in goes before what else came out. Two of one name are none. */
function bound(inputs: Numbers, others: Numbers): ReadonlyMap<string, Term> {
  const names = [...new Set([...Object.keys(inputs), ...Object.keys(others)])].map((key) => ({
    key,
    label: readKey(key).label,
  }));
  return new Map(
    names.flatMap(({ key, label }): readonly [string, Term][] => {
      const own = names.filter((one) => one.label === label && one.key in inputs);
      const rivals = own.length > 0 ? own : names.filter((one) => one.label === label);
      const value = inputs[key] ?? others[key];
      return rivals.length === 1 && rivals[0]!.key === key && value !== undefined
        ? [[label.toLowerCase(), { kind: 'key', key, value }]]
        : [];
    }),
  );
}

const token = /\s*(?:(\d+(?:\.\d+)?)|([πσ√])|([²³⁴])|([+−×÷/()])|(\p{L}[\p{L}\p{Nd}]*(?: [\p{L}\p{Nd}]+)*))/uy;
const superscripts: Readonly<Record<string, number>> = { '²': 2, '³': 3, '⁴': 4 };

/** By the usual precedence, left to right. Nothing where anything is left over or unknown. */
function parse(text: string, names: ReadonlyMap<string, Term>): Term | undefined {
  const tokens = tokensOf(text.trim());
  if (!tokens) return undefined;
  let at = 0;
  const take = (...wanted: readonly string[]): string | undefined =>
    wanted.includes(tokens[at] ?? '') ? tokens[at++] : undefined;
  const many = (next: () => Term | undefined, operators: readonly string[]) => (): Term | undefined => {
    let left = next();
    for (let sign = take(...operators); left && sign !== undefined; sign = take(...operators)) {
      const right = next();
      left = right && { kind: 'operation', operator: sign === '/' ? '÷' : (sign as Operator), left, right };
    }
    return left;
  };
  const atom = (): Term | undefined => {
    const word = tokens[at++] ?? '';
    if (word === '(') {
      const inner = sum();
      return take(')') ? inner : undefined;
    }
    if (word === '√' || (word === 'tan' && tokens[at] === '(')) {
      const of = tokens[at] === '(' ? atom() : undefined;
      return of && { kind: 'call', name: word, of };
    }
    if (word === 'π' || word === 'σ') return { kind: 'constant', name: word };
    return /^\d/.test(word) ? { kind: 'number', value: Number(word) } : names.get(normal(word));
  };
  const power = (): Term | undefined => {
    const base = atom();
    const raised = take(...Object.keys(superscripts));
    return raised === undefined || !base ? base : { kind: 'power', base, exponent: superscripts[raised]! };
  };
  const product = many(power, ['×', '÷', '/']);
  const sum = many(product, ['+', '−']);
  const whole = sum();
  return at === tokens.length ? whole : undefined;
}

function tokensOf(text: string): readonly string[] | undefined {
  const found: string[] = [];
  token.lastIndex = 0;
  while (token.lastIndex < text.length) {
    const match = token.exec(text);
    if (!match) return undefined;
    found.push(match[0].trim());
  }
  return found;
}
