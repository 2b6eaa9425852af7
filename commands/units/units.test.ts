import { expect, it } from 'vitest';
import { answerLine } from '../answer.ts';
import { inProcessMemory } from '../memory.ts';

it('a person’s units lead before their place’s, and both before what was typed', async () => {
  const memory = inProcessMemory();
  const ask = async (line: string, asker = 'ann') => {
    const reply = await answerLine(line, { asker, place: 'shed', now: new Date(0), memory });
    if (reply.kind === 'error') throw new Error(reply.error.what);
    return reply.card;
  };
  const leads = async (asker?: string) => (await ask('mix 30 L', asker)).units;
  expect((await ask('units')).headline).toMatch(/^Nothing is set/);
  expect(await leads()).toBe('metric');
  await ask('units US who=place');
  expect([await leads(), await leads('ben')]).toEqual(['US', 'US']);
  expect((await ask('units')).headline).toMatch(/^You have chosen none; in this place US units lead/);
  await ask('units metric');
  expect([await leads(), await leads('ben')]).toEqual(['metric', 'US']);
  expect((await ask('units')).headline).toMatch(/^For you metric units lead/);
  await ask('units as typed');
  expect(await leads()).toBe('US');
  await ask('units as typed who=place');
  expect(await leads()).toBe('metric');
  expect((await ask('mix 1.1 cu ft')).units).toBe('US');
});
