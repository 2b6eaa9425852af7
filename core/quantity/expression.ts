import { AskError } from '../ask-error.ts';
import { type Decimals, quoted, readDigits } from './typed.ts';
import { type Dimension, meaningOf, nearestUnit, type Unit, unitNameAt } from './units.ts';

/** A value on the way: SI of its dimension, `number` for a plain one. */
export interface Value {
  readonly dimension: Dimension;
  readonly si: number;
}

export interface Evaluated extends Value {
  /** The first unit met. */
  readonly unit: Unit | undefined;
}

const plain = ({ dimension }: Value): boolean => dimension === 'number' || dimension === 'fraction';

/** Reads one text as quantities joined by + − × ÷ and parentheses. Knows nothing else: no names, no functions. */
export class Expression {
  private at = 0;
  private readonly lower: string;
  private firstUnit: Unit | undefined;
  private readonly text: string;
  private readonly decimals: Decimals;
  private readonly wanted: readonly Dimension[];
  private readonly example: string;

  constructor(text: string, decimals: Decimals, wanted: readonly Dimension[], example: string) {
    this.text = text;
    this.lower = text.toLowerCase();
    this.decimals = decimals;
    this.wanted = wanted;
    this.example = example;
  }

  evaluate(): Evaluated {
    const value = this.sum();
    this.space();
    if (this.at < this.text.length) throw this.unread();
    return { ...value, unit: this.firstUnit };
  }

  private sum(): Value {
    let left = this.product();
    for (;;) {
      const sign = this.take(/[+-]/y);
      if (!sign) return left;
      left = this.added(left, this.product(), sign === '-' ? -1 : 1);
    }
  }

  private product(): Value {
    let left = this.signed();
    for (;;) {
      const sign = this.take(/[*/]|x(?= ?[\d(.])/iy);
      if (!sign) return left;
      const right = this.signed();
      left = sign === '/' ? this.divided(left, right) : this.multiplied(left, right);
    }
  }

  private signed(): Value {
    const sign = this.take(/[+-]/y);
    if (this.take(/\(/y)) {
      const inner = this.sum();
      if (!this.take(/\)/y)) throw this.fail(`A parenthesis is open in ${quoted(this.text)}.`, 'a closing parenthesis');
      const unit = inner.dimension === 'number' ? this.unit() : undefined;
      const value = unit ? this.measured(inner.si, unit) : inner;
      if (!sign || sign === '+') return value;
      if (value.dimension === 'temperature') throw this.temperatures();
      return { ...value, si: -value.si };
    }
    return this.measure(sign === '-' ? -1 : 1);
  }

  /** `14 in`, `3 ft 2 in`, `$9`, `9`. */
  private measure(sign: 1 | -1): Value {
    const money = this.take(/\$/y);
    const number = this.number();
    if (number === undefined) throw this.unread();
    if (money) {
      this.firstUnit ??= meaningOf('$', this.wanted);
      return { dimension: 'money', si: sign * number };
    }
    let unit = this.unit();
    if (!unit) return { dimension: 'number', si: sign * number };
    const first = this.measured(sign * number, unit);
    let si = first.si;
    for (;;) {
      const before = this.at;
      if (unit.name === 'ft' && this.text[this.at - 1] === "'") this.take(/-(?=\d)/y);
      const more = this.number();
      if (more === undefined) {
        this.at = before;
        return { dimension: first.dimension, si };
      }
      const smaller = this.unit();
      if (!smaller || smaller.dimension !== unit.dimension || smaller.factor >= unit.factor || unit.offset !== 0) {
        throw this.fail(`${quoted(this.text)} has two numbers with nothing between them.`, 'one quantity');
      }
      si += sign * more * smaller.factor;
      unit = smaller;
    }
  }

  private measured(number: number, unit: Unit): Value {
    this.firstUnit ??= unit;
    return { dimension: unit.dimension, si: number * unit.factor + unit.offset };
  }

  private number(): number | undefined {
    const mixed = this.take(/\d+(?: |-)\d+ ?\/ ?\d+(?![\d.,])/y);
    if (mixed) {
      const [whole = 0, top = 0, bottom = 0] = mixed.split(/[ \-/]+/).map(Number);
      if (top >= bottom)
        throw this.fail(`${quoted(mixed)} is no mixed number.`, 'a whole number and a fraction under 1');
      return whole + top / bottom;
    }
    const fraction = this.take(/\d+ ?\/ ?\d+(?![\d.,])/y);
    if (fraction) {
      const [top = 0, bottom = 0] = fraction.split('/').map(Number);
      if (bottom === 0) throw this.fail(`${quoted(this.text)} divides by zero.`, 'a divisor other than 0');
      return top / bottom;
    }
    const digits = this.take(/[.,]?\d[\d.,]*(?:e[+-]?\d+)?/iy);
    if (digits === undefined) return undefined;
    const value = readDigits(digits, this.decimals);
    if (value === undefined)
      throw this.fail(`The points and commas in ${quoted(digits)} make no number.`, 'one number');
    return value;
  }

  private unit(): Unit | undefined {
    this.space();
    const name = unitNameAt(this.lower, this.at);
    if (name === undefined) {
      const word = /[a-zµ°%"'$€£#][\w°²]*/iy;
      word.lastIndex = this.at;
      const typed = word.exec(this.text)?.[0];
      if (!typed || /^x$/i.test(typed)) return undefined;
      const near = nearestUnit(typed, this.wanted);
      throw new AskError({
        code: 'unknown-unit',
        what: `${quoted(typed)} is no unit I know.`,
        expected: `a listed unit; the nearest is ${near.name}`,
        example: this.example,
      });
    }
    this.at += name.length;
    if (this.text[this.at] === '.' && !/\d/.test(this.text[this.at + 1] ?? '')) this.at++;
    return meaningOf(name, this.wanted);
  }

  private added(left: Value, right: Value, sign: 1 | -1): Value {
    if (left.dimension === 'temperature' || right.dimension === 'temperature') throw this.temperatures();
    if (left.dimension === right.dimension) return { ...left, si: left.si + sign * right.si };
    throw this.mixedUp(left, right, sign === 1 ? 'added to' : 'subtracted from');
  }

  private multiplied(left: Value, right: Value): Value {
    if (left.dimension === 'temperature' || right.dimension === 'temperature') throw this.temperatures();
    if (plain(left)) return { dimension: right.dimension, si: left.si * right.si };
    if (plain(right)) return { dimension: left.dimension, si: left.si * right.si };
    throw this.mixedUp(left, right, 'multiplied with');
  }

  private divided(left: Value, right: Value): Value {
    if (left.dimension === 'temperature' || right.dimension === 'temperature') throw this.temperatures();
    if (right.si === 0) throw this.fail(`${quoted(this.text)} divides by zero.`, 'a divisor other than 0');
    if (plain(right)) return { dimension: left.dimension, si: left.si / right.si };
    if (left.dimension === right.dimension) return { dimension: 'number', si: left.si / right.si };
    throw this.mixedUp(left, right, 'divided by');
  }

  private take(pattern: RegExp): string | undefined {
    this.space();
    pattern.lastIndex = this.at;
    const found = pattern.exec(this.text)?.[0];
    if (found !== undefined) this.at += found.length;
    return found;
  }

  private space(): void {
    while (this.text[this.at] === ' ') this.at++;
  }

  private unread(): AskError {
    const rest = this.text.slice(this.at);
    const what = rest
      ? `I can't read ${quoted(rest)} in ${quoted(this.text)}.`
      : `${quoted(this.text)} stops too early.`;
    return this.fail(what, 'a number with its unit');
  }

  private temperatures(): AskError {
    const what = `${quoted(this.text)} calculates with temperatures, which start at different zeros.`;
    return this.fail(what, 'one temperature');
  }

  private mixedUp(left: Value, right: Value, verb: string): AskError {
    const what = `In ${quoted(this.text)} a ${left.dimension} and a ${right.dimension} can't be ${verb} each other.`;
    return new AskError({
      code: 'wrong-dimension',
      what,
      expected: 'the same kind of quantity on both sides, or a plain number to multiply and divide by',
      example: this.example,
    });
  }

  private fail(what: string, expected: string): AskError {
    return new AskError({ code: 'unreadable', what, expected, example: this.example });
  }
}
