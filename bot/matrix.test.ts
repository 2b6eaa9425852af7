import { expect, test } from 'vitest';
import { inProcessMemory } from '../commands/memory.ts';
import { cautionsIn, isUrgent } from './matrix.ts';

test.each([
  ['emergency', true],
  ['Emergency!', true],
  ['emergency burn', true],
  [`emergency ${'he is burned and '.repeat(100)}`, true],
  ['mix 30 L', false],
  ['help', false],
  ['emergent', false],
  ['my hand', false],
])('%j is urgent: %j', (line, urgent) => expect(isUrgent(line)).toBe(urgent));

test.each([
  ['dry can', /damp/i],
  ['again 3 in', /damp/i],
  ['mix 30 L in the garage', /door|air|monoxide|outdoors/i],
  ['help', /^$/],
])('what can hurt in %j, which could not be answered, is known', async (line, warns) => {
  const memory = inProcessMemory();
  const who = { asker: 'ann', place: 'shed' };
  await memory.rememberAsk({ ...who, command: 'dry', options: { build: 'can' } });
  const texts = (await cautionsIn(line, who, memory)).map(({ text }) => text);
  expect(texts.join(' ')).toMatch(warns);
});
