import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { runProgram } from './run-program.ts';

/** One question from a shell: what is printed where, and the exit code. */
const ask = (...typed: string[]) => runProgram('bot/ask.ts', typed);

describe('one question from the command line', () => {
  test('a card: text on standard output, 0', async () => {
    const { out, err, code } = await ask('mix 30 L');
    expect({ err, code }).toEqual({ err: '', code: 0 });
    expect(out).toContain('What can hurt');
  });

  test('a card as data, in SI units', async () => {
    const { out, code } = await ask('--json', 'mix 30 L');
    const card = JSON.parse(out);
    expect(code).toBe(0);
    expect(card.command).toBe('mix');
    expect(card.figures.find(({ id }: { id: string }) => id === 'mix.volume')).toMatchObject({
      unit: 'm3',
      value: 0.03,
    });
    expect(card.cautions.at(-1).id).toBe('local-rules');
  });

  test('a mistake: on standard error, 2', async () => {
    const { out, err, code } = await ask('mix 3 volts');
    expect({ out, code }).toEqual({ out: '', code: 2 });
    expect(err).toContain('Try');
    expect(err).toContain('Silica');
  });

  test('a mistake as data keeps its cautions, 2', async () => {
    const { out, code } = await ask('--json', 'mix 3 volts');
    const { error, cautions } = JSON.parse(out);
    expect(code).toBe(2);
    expect(error.code).toBe('unknown-unit');
    expect(cautions.at(-1).id).toBe('local-rules');
  });

  test('the committed picture is the one the program draws', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'picture-'));
    try {
      const file = join(folder, 'mix.svg');
      const { err, code } = await ask('--svg', file, 'mix 1.1 cu ft');
      expect({ err, code }).toEqual({ err: '', code: 0 });
      const drawn = readFileSync(file, 'utf8');
      expect(drawn).toMatch(/^<svg [\s\S]*Silica/);
      expect(drawn).toBe(readFileSync(new URL('pictures/mix.svg', import.meta.url), 'utf8'));
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  test('the same as PNG, light or dark', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'picture-'));
    try {
      const files = ['light.png', 'dark.png'].map((name) => join(folder, name));
      for (const [at, file] of files.entries()) {
        const { out, err, code } = await ask(...(at === 1 ? ['--dark'] : []), '--png', file, 'mix 30 L');
        expect({ out, err, code }).toEqual({ out: '', err: '', code: 0 });
      }
      const [light, dark] = files.map((file) => readFileSync(file));
      for (const png of [light!, dark!]) expect(png.subarray(0, 4).toString('latin1')).toBe('\u0089PNG');
      expect(light!.equals(dark!)).toBe(false);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  test.each([
    ['--png', join(tmpdir(), 'no such folder', 'mix.png'), "can't be written (ENOENT)"],
    ['--sheets', join(tmpdir(), 'never made'), 'has no full-size pattern'],
  ])('%s where nothing can be written says why, 2', async (flag, place, why) => {
    const { out, err, code } = await ask(flag, place, 'mix 30 L');
    expect({ out, code }).toEqual({ out: '', code: 2 });
    expect(err).toContain(why);
  });

  test.each([[['--jsn', 'mix 30 L']], [['--json']], [[]]])('%j is refused with how to ask', async (typed) => {
    const { out, err, code } = await ask(...typed);
    expect({ out, code }).toEqual({ out: '', code: 2 });
    expect(err).toContain('npm run -s ask');
  });

  test('settings that cannot be used are all named', async () => {
    const env = { TEEMER_WIDTH: '2', TEEMER_LOG: 'loud' };
    const { err, code } = await runProgram('bot/ask.ts', ['help'], '', env);
    expect(code).toBe(2);
    expect(err).toMatch(/TEEMER_LOG.*TEEMER_WIDTH|TEEMER_WIDTH.*TEEMER_LOG/s);
  });
});
