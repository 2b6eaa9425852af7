import { AskError } from '../core/ask-error.ts';
import type { UnitSystem } from '../core/quantity/figure.ts';
import type { Quantity } from '../core/quantity/parse.ts';
import type { Assumption } from './card.ts';
import type { Command } from './command.ts';
import { isOptional, metaOf, readChoice, type Typed } from './options.ts';

export interface ReadOptions {
  readonly values: Record<string, unknown>;
  readonly given: readonly string[];
  readonly assumed: readonly Assumption[];
  readonly units: UnitSystem;
}

const unitsOption = { label: 'units', choices: ['metric', 'us'] } as const;

/**
 * Raw text to the command's own values. Plain numbers take the reader's unit, and the card says so. What another answer
 * `handed` over is not listed again as given.
 */
export function readOptions(
  command: Command,
  { units: asked, log: _, ...raw }: Readonly<Record<string, string>>,
  preferred: UnitSystem | undefined,
  handed: readonly string[] = [],
): ReadOptions {
  const chosen = asked === undefined ? preferred : readChoice(asked, unitsOption) === 'us' ? 'US' : 'metric';
  const first = parse(command, raw, chosen);
  const units = chosen ?? mostTyped(first);
  const values = units === (chosen ?? 'metric') ? first : parse(command, raw, units);
  return {
    values,
    units,
    given: Object.entries(raw).flatMap(([name, text]) =>
      handed.includes(name) ? [] : [`${labelOf(command, name)} ${text}`],
    ),
    assumed: Object.entries(values).flatMap(([name, value]) =>
      isQuantity(value) && value.assumedUnit !== undefined
        ? [
            {
              text: `${labelOf(command, name)} ${raw[name]} means ${withUnit(value)}`,
              override: `${name}=${withUnit(value)}`,
            },
          ]
        : [],
    ),
  };
}

function parse(
  command: Command,
  raw: Readonly<Record<string, string>>,
  system: UnitSystem | undefined,
): Record<string, unknown> {
  const missing = Object.entries(command.options.shape).find(
    ([name, field]) => !(name in raw) && !isOptional(field as never),
  );
  if (missing) {
    throw new AskError({
      code: 'missing',
      what: `${command.name} needs ${labelOf(command, missing[0])}`,
      expected: missing[0] === command.subject ? `it right after the name` : `${missing[0]}=…`,
      example: command.examples[0]?.line ?? command.name,
      option: missing[0],
    });
  }
  const typed = Object.entries(raw).map(([name, text]): [string, Typed] => [name, { text, system }]);
  const result = command.options.safeParse(Object.fromEntries(typed));
  if (result.success) return result.data;
  const [issue] = result.error.issues;
  const option = String(issue?.path[0] ?? '');
  const inner = issue?.code === 'custom' ? issue.params?.error : undefined;
  if (inner instanceof AskError) throw option === '' ? inner : inner.with({ option });
  throw new AskError({
    code: 'unreadable',
    what: issue?.message ?? 'the options could not be read',
    expected: Object.keys(command.options.shape).join(', '),
    example: command.examples[0]?.line ?? command.name,
  });
}

function mostTyped(values: Record<string, unknown>): UnitSystem {
  const systems = Object.values(values).flatMap((value) => (isQuantity(value) && value.system ? [value.system] : []));
  const us = systems.filter((system) => system === 'US').length;
  return us > systems.length - us ? 'US' : 'metric';
}

const withUnit = ({ text, assumedUnit }: Quantity): string => `${text} ${assumedUnit ?? ''}`.trim();

const isQuantity = (value: unknown): value is Quantity =>
  typeof value === 'object' && value !== null && 'si' in value && 'dimension' in value;

function labelOf(command: Command, name: string): string {
  const field = command.options.shape[name];
  return field ? metaOf(field as never).label : name;
}
