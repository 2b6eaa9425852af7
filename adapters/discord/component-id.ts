import { limits } from './limits.ts';

/** What a button, a menu or a form does. Old messages keep their ids, so a verb never changes its meaning. */
const verbs = {
  n: 'next',
  l: 'line',
  a: 'all',
  w: 'working',
  u: 'units',
  s: 'share',
  o: 'only-me',
  c: 'change',
  m: 'changed',
  f: 'filled',
  v: 'choose',
} as const;

export type Verb = (typeof verbs)[keyof typeof verbs];

export interface ComponentId {
  readonly verb: Verb;
  /** Id of what the store keeps for it; of a form, the command; of a line that stands in the id itself, who reads what comes of it. */
  readonly state: string;
  readonly argument: string;
}

const version = 't1';
const letterOf = Object.fromEntries(Object.entries(verbs).map(([letter, verb]) => [verb, letter]));

export function componentId(verb: Verb, state: string, argument: string | number = ''): string {
  const id = [version, letterOf[verb], state, argument].join(':');
  if (id.length > limits.customId) throw new RangeError(`a component's id has ${id.length} characters`);
  return id;
}

/** As private as the message that it stands on, or for everybody even where that is not. */
export const forAll = 'all';
const asItStands = 'r';

/** A line that stands in the id itself, so that nothing has to be kept for it. Undefined where it is too long for that. */
export function lineId(line: string, { open = false }: { open?: boolean } = {}): string | undefined {
  const state = open ? forAll : asItStands;
  const room = limits.customId - componentId('line', state).length;
  return line.length > room ? undefined : componentId('line', state, line);
}

/** Undefined for what this version does not know. */
export function readComponentId(id: string): ComponentId | undefined {
  const [before, letter = '', state = '', ...rest] = id.split(':');
  const verb = Object.hasOwn(verbs, letter) ? verbs[letter as keyof typeof verbs] : undefined;
  return before === version && verb && state !== '' ? { verb, state, argument: rest.join(':') } : undefined;
}
