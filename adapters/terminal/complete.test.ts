import { expect, test } from 'vitest';
import { commands } from '../../commands/registry.ts';
import { completer } from './complete.ts';

const complete = completer(commands);

test.each([
  ['mi', 'mix '],
  ['ex', 'exit'],
  ['help st', 'stuff '],
  ['mix 30 L da', 'damp='],
  ['mix 30 L un', 'units='],
  ['mix 30 L ram=l', 'ram=light'],
  ['again ra', 'ratio='],
])('"%s" offers "%s"', (line, offered) => {
  const [found, word] = complete(line);
  expect(found).toContain(offered);
  expect(line.endsWith(word)).toBe(true);
});

test('options of other commands are not offered', () => {
  expect(complete('stuff perlite ra')[0]).toEqual([]);
});
