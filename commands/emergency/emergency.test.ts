import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sourceOf } from '../../core/sources/sources.ts';
import type { Answer, AnswerContext, Command } from '../command.ts';
import { emergency, topicOf } from './emergency.ts';
import { firstAid } from './first-aid.ts';

const command: Command = emergency;
const answer = async (what?: string): Promise<Answer> =>
  command.answer(what === undefined ? {} : { what }, {} as AnswerContext);

const names = [
  ...['burns', 'fire', 'gas leak', 'carbon monoxide', 'metal on skin', 'metal in eye', 'propane', 'electric shock'],
  ...['clothing fire', 'metal fire', 'fumes'],
];

describe('emergency', () => {
  it('knows these', () => expect(firstAid.map(({ name }) => name).toSorted()).toEqual(names.toSorted()));

  it.each(names)('%s: a number to call, at least four numbered steps, a source', async (name) => {
    const { headline, notes = [], sources } = await answer(name);
    expect(topicOf(name)?.name).toBe(name);
    expect(headline).toContain('112, 911 or 999');
    expect(headline.length).toBeLessThanOrEqual(200);
    expect(notes.length).toBeGreaterThanOrEqual(4);
    expect(notes.join('\n')).toContain('112, 911 or 999');
    expect(notes.every((note, index) => note.startsWith(`${index + 1}. `))).toBe(true);
    expect([headline, ...notes].join(' ')).not.toContain('!');
    expect(sources.length).toBeGreaterThan(0);
    for (const id of sources) expect(sourceOf(id).id).toBe(id);
  });

  it.each([
    ['I burned my hand', 'burns'],
    ['BURN', 'burns'],
    ['CO', 'carbon monoxide'],
    ['CO alarm', 'carbon monoxide'],
    ['eye', 'metal in eye'],
    ['metal got in his eye', 'metal in eye'],
    ['the propane hose is on fire', 'propane'],
    ['magnesium fire', 'metal fire'],
    ['smell gas', 'gas leak'],
    ['fever after brass', 'fumes'],
    ['my sleeve caught', 'clothing fire'],
  ])('"%s" is %s', (what, name) => expect(topicOf(what)?.name).toBe(name));

  it('takes whole words: cobalt is not CO', () => expect(topicOf('cobalt')).toBeUndefined());

  it('answers everything at once where nothing was said', async () => {
    const { headline, table, notes = [], sources } = await answer();
    expect(headline).toContain('112, 911 or 999');
    expect(table?.rows.map(([name]) => name)).toEqual(firstAid.map(({ name }) => name));
    expect(notes.length).toBeGreaterThanOrEqual(4);
    for (const id of sources) sourceOf(id);
  });

  it('never answers with an error, whatever is typed', async () => {
    await fc.assert(
      fc.asyncProperty(fc.string(), async (what) => {
        expect((await answer(what)).headline).toContain('112, 911 or 999');
      }),
    );
  });
});
