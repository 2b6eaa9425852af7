import fc from 'fast-check';
import { expect, test } from 'vitest';
import { componentId, readComponentId } from './component-id.ts';
import { limits } from './limits.ts';
import { newStateId } from './state.ts';

test('an id is read back as it was written, and is short enough', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('next', 'working', 'units', 'choose'),
      fc.string({ maxLength: 40 }),
      (verb, argument) => {
        const state = newStateId();
        const id = componentId(verb, state, argument);
        expect(id.length).toBeLessThanOrEqual(limits.customId);
        expect(readComponentId(id)).toEqual({ verb, state, argument });
      },
    ),
  );
});

test.each(['', 'x', 't0:n:s:1', 't1:q:s:1', 't1:n', 't1:toString:s:', 'T1:n:s:1'])(
  '"%s" is none of this version',
  (id) => {
    expect(readComponentId(id)).toBeUndefined();
  },
);

test('one that is too long is never sent', () => {
  expect(() => componentId('next', newStateId(), 'x'.repeat(100))).toThrow(RangeError);
});
