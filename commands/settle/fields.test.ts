import { expect, test } from 'vitest';
import { answerAsk } from '../answer.ts';
import { inProcessMemory } from '../memory.ts';

const context = () => ({ asker: 'ann', place: 'shed', now: new Date(0), memory: inProcessMemory() });

/** The figures and the headline of an argument. */
async function settled(options: Readonly<Record<string, string>>, at = context()) {
  const reply = await answerAsk({ command: 'settle', options, asker: 'ann', place: 'shed' }, at);
  if (reply.kind === 'error') throw new Error(reply.error.what);
  const { headline, figures } = reply.card;
  return { headline, figures };
}

test('sides in fields of their own are weighed like those of a line', async () => {
  const [one, other, third] = ['mix 30 L', 'mix 30 L recipe=castable', 'mix 40 L'];
  const fields = await settled({ one, other, third, by: 'cost' });
  expect(fields).toEqual(await settled({ line: `${one} vs ${other} vs ${third} by=cost` }));
});

test('asked again with another line, no side of before is left', async () => {
  const at = context();
  await settled({ one: 'mix 30 L', other: 'mix 35 L', third: 'mix 40 L', by: 'cost' }, at);
  const reply = await answerAsk(
    { command: 'again', options: { change: 'mix 50 L vs mix 60 L' }, asker: 'ann', place: 'shed' },
    at,
  );
  if (reply.kind === 'error') throw new Error(reply.error.what);
  const { headline, figures } = reply.card;
  expect({ headline, figures }).toEqual(await settled({ one: 'mix 50 L', other: 'mix 60 L', by: 'cost' }));
});
