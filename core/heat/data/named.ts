import { AskError } from '../../ask-error.ts';
import { nameKey } from '../../materials/catalogue.ts';
import { nearest } from '../../materials/nearest.ts';

interface Named {
  readonly id: string;
  readonly name: string;
  readonly aliases: readonly string[];
}

/** @throws AskError `unknown-name`, with the nearest names. */
export function named<T extends Named>(what: string, list: readonly T[], text: string): T {
  const key = nameKey(text);
  const namesOf = ({ id, name, aliases }: Named) => [id, name, ...aliases];
  const found = list.find((entry) => namesOf(entry).some((name) => nameKey(name) === key));
  if (found) return found;
  const [near] = nearest(key, list.flatMap(namesOf), 1);
  throw new AskError({
    code: 'unknown-name',
    what: `no ${what} is called "${text.slice(0, 60)}"`,
    expected: list.map(({ name }) => name).join(', '),
    example: near ?? list[0]!.name,
  });
}
