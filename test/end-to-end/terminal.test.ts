import { describe, expect, test } from 'vitest';
import { runProgram } from './run-program.ts';

/** The program as it is started by hand, with a made-up evening of questions piped in. */
const talk = (...lines: string[]) => runProgram('bot/main.ts', [], `${lines.join('\n')}\n`);

describe('a talk at the terminal', () => {
  test('asks, explains, asks again with a change', async () => {
    const { out, err, code } = await talk('mix 1.1 cu ft', 'why', 'again ratio=3 sand 1 clay');
    expect(code).toBe(0);
    expect(err).toBe('');
    expect(out).not.toContain('teemer>');
    const [mix = '', why = '', again = ''] = out.split(/\n\n(?=How mix came|Own ratio)/);
    expect(mix).toMatch(/lb.*clay.*sand.*gal/s);
    expect(mix).toContain('What can hurt');
    expect(mix).toContain('Silica');
    expect(mix).toContain('Local fire and gas rules');
    expect(mix).toContain('bags');
    expect(mix).toMatch(/I assumed.*\(damp=10%\)/s);
    expect(mix).toContain('Biggest doubt');
    expect(why).toMatch(/\d {2}dry mass = volume × dry density/);
    expect(why).toMatch(/dry mass = 0\.031\d* m³ × 1850 kg\/m³ .*\n\s+gives dry mass/);
    expect(why).toMatch(/The file: \S.*why-mix\.md/);
    expect(why).toContain('Silica');
    expect(again).toContain('1.1 cu ft');
    expect(again).toContain('3 sand 1 clay');
  });

  test('compares two materials and says what an emergency needs first', async () => {
    const { out, code } = await talk('stuff vermiculite vs perlite', 'emergency burn');
    expect(code).toBe(0);
    expect(out).toMatch(/expanded vermiculite.*expanded perlite/);
    expect(out).toMatch(/service limit.*°C.*°C/);
    expect(out).toContain('asbestos');
    expect(out).toMatch(/cool running water for 20 minutes/);
    expect(out).toContain('112');
  });

  test('a number asks the follow-up that bears it', async () => {
    const { out } = await talk('help', '1', '99');
    expect(out).toContain('> mix 1.1 cu ft');
    expect(out).toContain('sand');
    expect(out).toMatch(/numbered questions go from 1 to/);
  });

  test('five mistakes are told with a line that works, and the talk goes on', async () => {
    const mistakes = [
      'miks 30 L',
      'mix 3 volts',
      'mix 30 L ratoi=3 sand 1 clay',
      'stuff unobtainium',
      'mix 30'.padEnd(2000, '0'),
    ];
    const { out, err, code } = await talk(...mistakes, 'mix 30 L');
    expect(code).toBe(0);
    expect(err).toBe('');
    expect(out.match(/^Expected {2}/gm)).toHaveLength(5);
    expect(out.match(/^Try {2}/gm)).toHaveLength(5);
    expect(out).toContain('ratio=3 sand 1 clay');
    expect(out).toMatch(/mix 30 L\n/);
    expect(out).toContain('fills 30 L');
  });

  test('nothing before: why and again say what to do', async () => {
    const { out, code } = await talk('why', 'again damp=10%');
    expect(code).toBe(0);
    expect(out.match(/no earlier/g)).toHaveLength(2);
  });

  test('exit ends it', async () => {
    const { out, code } = await talk('exit', 'mix 30 L');
    expect(code).toBe(0);
    expect(out).toBe('');
  });

  test('what was typed cannot steer the terminal', async () => {
    const { out } = await talk('stuff \u001b[31mred\u0007');
    expect(out).not.toContain('\u001b');
    expect(out).not.toContain('\u0007');
  });
});
