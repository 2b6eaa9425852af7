import { expect, test } from 'vitest';
import { isUrgent } from './matrix.ts';

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
