import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findTouched } from '../../core/heat/touch.ts';
import { answerLine } from '../answer.ts';
import type { Card } from '../card.ts';
import { inProcessMemory } from '../memory.ts';

const ask = (line: string) =>
  answerLine(line, { asker: 'a', place: 'p', now: new Date('2026-01-01T12:00:00Z'), memory: inProcessMemory() });

async function cardOf(line: string): Promise<Card> {
  const reply = await ask(line);
  if (reply.kind === 'error') throw new Error(`${line}: ${reply.error.what}`);
  return reply.card;
}

async function errorOf(line: string) {
  const reply = await ask(line);
  if (reply.kind === 'card') throw new Error(`${line} was answered: ${reply.card.headline}`);
  return reply;
}

const figure = (card: Card, id: string) => card.figures.find((one) => one.id === `touch.${id}`);

describe('touch', () => {
  it('takes bare metal where nothing is said, and says so', async () => {
    const card = await cardOf('touch 60 °C');
    expect(card.headline).toContain('Bare metal at 60 °C (140 °F): hand off within seconds');
    expect(card.assumed).toContainEqual({ text: 'bare metal', override: 'surface=painted' });
    expect(figure(card, 'stay')?.value).toBe(1);
  });

  it('says plainly that the standard is from memory', async () => {
    const card = await cardOf('touch 60 °C');
    expect(card.notes.join(' ')).toContain('ISO 13732-1 as remembered, not opened');
    expect(card.sources[0]).toBe('iso-13732-1');
    expect(card.table?.rows.map((row) => row.at(-1))).toEqual([
      ...['from memory', 'from memory', 'from memory'],
      ...['published', 'published', 'published'],
    ]);
  });

  it('is kinder to wood than to metal, at the same temperature', async () => {
    const [wood, metal] = [await cardOf('touch 60 °C surface=wood'), await cardOf('touch 60 °C surface=metal')];
    expect(figure(wood, 'stay')!.value).toBeGreaterThan(figure(metal, 'stay')!.value);
    expect(figure(wood, 'skin')!.value).toBeLessThan(figure(metal, 'skin')!.value);
  });

  it.each([
    ['touch 50 °C time=10 s', '10 s is not expected to burn'],
    ['touch 54 °C time=10 s', '10 s may burn'],
    ['touch 60 °C time=10 s', '10 s burns'],
    ['touch 40 °C', 'No burn is expected in a working day'],
    ['touch 90 °C', 'Even half a second may burn'],
  ])('%s: %s', async (line, says) => expect((await cardOf(line)).headline).toContain(says));

  it('corrects a reading on zinc upwards, and judges by the hottest it may be', async () => {
    const card = await cardOf('touch reads=60 °C set=0.95 surface=galvanised');
    const surface = figure(card, 'temperature')!;
    expect(surface.value).toBeGreaterThan(273.15 + 120);
    expect(surface.range!.high).toBeGreaterThan(surface.value);
    expect(card.headline).toContain('burns on contact');
    expect(card.cautions.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['infrared-gun', 'hot-steel', 'zinc-shell-peels', 'local-rules']),
    );
  });

  it('hardly corrects a reading on paint', async () => {
    const surface = figure(await cardOf('touch reads=60 °C surface=painted'), 'temperature')!;
    expect(Math.abs(surface.value - 333.15)).toBeLessThan(4);
  });

  it('warns of zinc by the temperature of a galvanised shell, and not of zinc elsewhere', async () => {
    const ids = async (line: string) => (await cardOf(line)).cautions.map(({ id }) => id);
    expect(await ids('touch 360 °C surface=galvanised')).toContain('zinc-shell-hot');
    expect((await ids('touch 360 °C surface=rusty')).join()).not.toContain('zinc');
  });

  it('speaks the reader’s units', async () => {
    const card = await cardOf('touch 140 F surface=painted');
    expect(card.headline).toContain('Painted steel at 140 °F (60 °C)');
    expect(card.table?.columns[2]).toBe('140 °F');
  });

  it.each([
    ['touch', 'needs the temperature'],
    ['touch 60 °C reads=50 °C', 'both a temperature (60 °C) and a reading (50 °C)'],
    ['touch 60 °C surface=jelly', 'no surface is called "jelly"'],
    ['touch -20 °C', '-20 °C'],
    ['touch 60 °C time=0 s', '0 s'],
    ['touch reads=10 °C surface=galvanised', 'less than what surroundings at 20 °C alone would show'],
    ['touch reads=60 °C set=2', '2'],
  ])('refuses %s: %s', async (line, what) => {
    const { error, cautions } = await errorOf(line);
    expect(error.what).toContain(what);
    expect(cautions.at(-1)?.id).toBe('local-rules');
    expect((await ask(error.example)).kind).toBe('card');
  });

  it('never promises more time than its own table', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 30, max: 130 }),
        fc.constantFrom('metal', 'painted', 'ceramic', 'plastic', 'wood', 'galvanised'),
        async (T_C, surface) => {
          const card = await cardOf(`touch ${T_C} °C surface=${surface}`);
          const stay_s = figure(card, 'stay')!.value;
          const [first] = card.table!.rows;
          if (first![2] !== 'is not expected to burn') expect(stay_s).toBe(0);
          else expect(stay_s).toBeGreaterThan(0);
          expect(findTouched(surface).name.length).toBeGreaterThan(0);
          expect(card.working.every(({ gives }) => Object.values(gives).every(Number.isFinite))).toBe(true);
        },
      ),
      { numRuns: 60 },
    );
  });
});
