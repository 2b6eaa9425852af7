/** Why a question could not be answered. Stable: adapters and tests match on it. */
export type AskErrorCode =
  | 'unknown-command'
  | 'unknown-option'
  | 'unknown-name'
  | 'unknown-unit'
  | 'missing'
  | 'unreadable'
  | 'ambiguous'
  | 'wrong-dimension'
  | 'out-of-range'
  | 'too-long'
  | 'impossible'
  | 'unfit'
  | 'refused'
  | 'nothing-before';

export interface AskErrorParts {
  readonly code: AskErrorCode;
  /** What was wrong, with the number that says so. */
  readonly what: string;
  /** What would be right. */
  readonly expected: string;
  /** Something that works, ready to send. */
  readonly example: string;
  /** The option that was wrong, where one is known. */
  readonly option?: string;
  /** Hazard facts of what is refused, beside those its command always carries. */
  readonly facts?: readonly string[];
}

/** A question that cannot be answered as asked: the asker's turn, not a fault of the program. */
export class AskError extends Error implements AskErrorParts {
  override readonly name = 'AskError';
  readonly code: AskErrorCode;
  readonly what: string;
  readonly expected: string;
  readonly example: string;
  readonly option?: string;
  readonly facts?: readonly string[];

  constructor({ code, what, expected, example, option, facts }: AskErrorParts) {
    super(what);
    this.code = code;
    this.what = what;
    this.expected = expected;
    this.example = example;
    if (option !== undefined) this.option = option;
    if (facts !== undefined) this.facts = facts;
  }

  /** The same error, seen from further out: an option name or a better example filled in. */
  with(more: Partial<AskErrorParts>): AskError {
    return new AskError({ ...this.parts(), ...(this.facts ? { facts: this.facts } : {}), ...more });
  }

  /** What the asker reads: the facts have become cautions by then. */
  parts(): Omit<AskErrorParts, 'facts'> {
    const { code, what, expected, example, option } = this;
    return option === undefined ? { code, what, expected, example } : { code, what, expected, example, option };
  }
}
