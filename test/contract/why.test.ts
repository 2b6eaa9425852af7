import { evaluate, type MathType, type Unit } from 'mathjs';
import { beforeAll, describe, expect, it } from 'vitest';
import { answerAsk, answerLine } from '../../commands/answer.ts';
import type { Card } from '../../commands/card.ts';
import { parseLine } from '../../commands/grammar.ts';
import { inProcessMemory } from '../../commands/memory.ts';
import { commands } from '../../commands/registry.ts';
import { sourceOf } from '../../core/sources/sources.ts';
import { equationsOf } from '../../core/working/equation.ts';
import { offOf } from '../../core/working/put-in.ts';

/** The file of the working, read as a teacher would who has nothing else. */
const versions = { program: 'Teemer 1.2.3', runtime: 'Node.js v24.0.0' };

interface Explained {
  readonly line: string;
  readonly card: Card;
  readonly why: Card;
  readonly text: string;
}

async function explained(line: string): Promise<Explained | undefined> {
  const memory = inProcessMemory();
  const context = { asker: 'ann', place: 'shed', now: new Date('2026-11-25T12:00:00Z'), memory, versions };
  const reply = await answerLine(line, context);
  if (reply.kind !== 'card' || (await memory.lastAsk(context)) === undefined) return undefined;
  const why = await answerAsk(parseLine('why', commands, context), context);
  if (why.kind !== 'card' || !why.card.attachment) throw new Error(`no working of ${line}`);
  return { line, card: reply.card, why: why.card, text: why.card.attachment.text };
}

/** One example of every command that calculates, and a few whose steps are their own. */
const lines = [
  ...commands
    .filter(({ passing, name }) => !passing && !/^(?:build|price|units)/.test(name))
    .map(({ examples }) => examples[0]!.line),
  'fuel briquettes then lump amount=10 lb prices=briquettes 16 lb $12; lump 20 lb $22',
  'size can 15 in / 17 in x 22 in wall=1 1/2 in taper=yes',
  'mix 30 L ratio=3 sand 1 fireclay damp=12%',
  'burner jet=0.8 mm pressure=15 psi tube=1 in',
  'touch 140 F surface=painted time=5 s',
];
let all: readonly Explained[] = [];
beforeAll(async () => {
  all = (await Promise.all(lines.map(explained))).flatMap((one) => one ?? []);
}, 60_000);

const unescaped = (text: string): string => text.replace(/\\(?=[\p{P}\p{S}])/gu, '');

describe('the file of why', () => {
  it('is there for all that calculates', () => {
    expect(all.length).toBeGreaterThanOrEqual(15);
    expect(new Set(all.map(({ card }) => card.command.split(' ')[0])).size).toBeGreaterThanOrEqual(11);
  });

  it('holds the question, every formula, every source and every caution', () => {
    for (const { line, card, text } of all) {
      const plain = unescaped(text);
      expect(plain, line).toContain(card.headline);
      for (const { formula } of card.working) expect(text, line).toContain(`\n\`${formula}\`\n`);
      for (const id of new Set([...card.sources, ...card.working.map(({ source }) => source)]))
        expect(plain, line).toContain(`. ${sourceOf(id).title} (`);
      for (const { text: caution, reason, standing } of card.cautions)
        expect(plain, line).toContain(`${caution} ${reason} (${standing})`);
      for (const { text: assumed } of card.assumed) expect(plain, line).toContain(assumed);
      for (const { label } of card.figures) expect(plain, line).toContain(label);
    }
  });

  it('says with what it was worked out', () => {
    for (const { text } of all) {
      expect(text).toContain('- Program: Teemer 1.2.3\n- Run by: Node.js v24.0.0\n');
      expect(text).toMatch(/- Data of the catalogue, by its hash: [0-9a-f]{16}\n- Worked out on: 2026-11-25\n/);
    }
  });

  it('has headings that go down one level at a time, none twice, none with nothing below it', () => {
    for (const { line, text } of all) {
      const rows = text.trimEnd().split('\n');
      const heads = rows.flatMap((row, at) => {
        const level = /^(#+) \S/.exec(row)?.[1]?.length;
        return level === undefined ? [] : [{ level, row, at }];
      });
      expect(heads[0], line).toMatchObject({ level: 1, at: 0 });
      expect(
        heads.filter(({ level }) => level === 1),
        line,
      ).toHaveLength(1);
      for (const [index, { level, at }] of heads.entries()) {
        const next = heads[index + 1];
        expect((next?.level ?? 1) - level, line).toBeLessThanOrEqual(1);
        expect(rows.slice(at + 1, next?.at).some((row) => row.trim() !== '') || (next?.level ?? 0) > level, line).toBe(
          true,
        );
        expect(rows[at + 1], line).toBe('');
        expect(at === 0 || rows[at - 1] === '', line).toBe(true);
      }
      const second = heads.filter(({ level }) => level === 2).map(({ row }) => row);
      expect(new Set(second).size, line).toBe(second.length);
      expect(second, line).toEqual(
        expect.arrayContaining(['## The answer', '## What was assumed', '## The working', '## To repeat it']),
      );
    }
  });

  it('has tables with as many cells in every row', () => {
    for (const { line, text } of all)
      for (const block of text.split('\n\n').filter((one) => one.startsWith('|')))
        expect(
          new Set(
            block
              .trim()
              .split('\n')
              .map((row) => row.split(/(?<!\\)\|/).length),
          ).size,
          line,
        ).toBe(1);
  });

  it('numbers its sources as the steps name them', () => {
    for (const { line, card, text } of all)
      for (const [at, { source }] of card.working.entries()) {
        const body = text.split(`\n### Step ${at + 1}: `)[1] ?? '';
        const number = /- source: \[(\d+)\]/.exec(body)?.[1];
        expect(unescaped(text), line).toContain(`\n${number}. ${sourceOf(source).title} (`);
      }
  });
});

describe('the arithmetic in it', () => {
  it('is that of the program to the last digit, a balance that a solver closes to a thousandth', () => {
    for (const { line, card } of all)
      for (const step of card.working)
        for (const equation of equationsOf(step))
          expect(offOf(equation, step), `${line}: ${step.formula}`).toBeLessThan(step.closes ? 1e-3 : 1e-9);
  });

  it('comes to what is printed when it is reckoned again, units and all', () => {
    let count = 0;
    for (const { line, text } of all)
      for (const [, printed = ''] of text.matchAll(/^- put in: `(.+)`$/gmu)) {
        const at = printed.lastIndexOf(' = ');
        const [left = '', right = ''] = [printed.slice(printed.indexOf(' = ') + 3, at), printed.slice(at + 3)];
        const bare = noUnits.some((name) => printed.startsWith(`${name} = `));
        const [found, given] = [left, right].map((each) => numberIn(evaluate(typed(each, bare))));
        expect(found!.unit, `${line}: ${printed}`).toBe(given!.unit);
        // Five digits go in; where two of nearly one size are subtracted, fewer come out.
        expect(Math.abs(found!.value - given!.value), `${line}: ${printed}`).toBeLessThanOrEqual(
          1e-3 * Math.abs(given!.value),
        );
        count += 1;
      }
    expect(count).toBeGreaterThanOrEqual(60);
  });

  it('closes the heat of a wall and of every melt', () => {
    const closed = all.filter(({ card }) => card.working.some(({ closes }) => closes));
    expect(closed.map(({ card }) => card.command)).toEqual(expect.arrayContaining(['wall', 'fuel', 'settle', 'claim']));
    for (const { text } of closed) {
      expect(text).toContain('\n## Whether the energy adds up\n');
      for (const [, share = ''] of text.matchAll(/^\| left between the two \|.*\| (\S+) % \|$/gm))
        expect(Math.abs(Number(share))).toBeLessThan(0.1);
    }
  });
});

describe('the card of why', () => {
  it('keeps to the steps that lead to what was shown, in their order', () => {
    for (const { line, card, why } of all) {
      expect(why.working.length, line).toBe(Math.min(6, card.working.length));
      const places = why.working.map((step) =>
        card.working.findIndex(
          ({ formula, gives }) => formula === step.formula && JSON.stringify(gives) === JSON.stringify(step.gives),
        ),
      );
      expect(places, line).toEqual(places.toSorted((a, b) => a - b));
      expect(why.attachment, line).toMatchObject({ name: `why-${card.command.replaceAll(' ', '-')}.md`, apart: true });
      expect(why.cautions, line).toEqual(card.cautions);
    }
  });

  it('has the step of the first figure where one gives it', () => {
    const gives = (of: Card, value: number) => of.working.some((step) => Object.values(step.gives).includes(value));
    let count = 0;
    for (const { line, card, why } of all) {
      const first = card.figures.find(({ value }) => gives(card, value));
      if (!first) continue;
      expect(gives(why, first.value), line).toBe(true);
      count += 1;
    }
    expect(count).toBeGreaterThanOrEqual(8);
  });
});

/** What has no unit of its own in the table of units: heat for a cubic metre, and a gradient for a second. */
const noUnits = ['firing rate', 'gradient'];

const units = [
  'W/(m² K⁴)',
  'W/(m² K)',
  'W/(m K)',
  'J/(kg K)',
  'kg/m³',
  'm³/s',
  'kg/s',
  'm/s',
  'W/m²',
  'J/kg',
  'm²',
  'm³',
  'kg',
  'Pa',
  'W',
  'J',
  'K',
  's',
  'm',
  'USD',
];
const number = String.raw`[\d,]+(?:\.\d+)?(?: × 10[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+)?`;
const measured = new RegExp(
  `(${number}) (${units.map((unit) => unit.replace(/[()]/g, '\\$&')).join('|')})(?![\\p{L}/])`,
  'gu',
);
const superscripts = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** As a program for units reads it. */
const typed = (text: string, bare: boolean): string =>
  text
    .replace(measured, bare ? '$1' : '($1 $2)')
    .replaceAll(',', '')
    .replace(/tan\((.+?)\)/g, 'tan($1 deg)')
    .replace(
      /[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+/g,
      (power) => `^(${[...power].map((one) => (one === '⁻' ? '-' : superscripts.indexOf(one))).join('')})`,
    )
    .replaceAll('×', '*')
    .replaceAll('÷', '/')
    .replaceAll('−', '-')
    .replaceAll('√', 'sqrt')
    .replaceAll('π', 'pi')
    .replaceAll('USD', '');

function numberIn(value: MathType): { readonly value: number; readonly unit: string } {
  if (typeof value === 'number') return { value, unit: '' };
  const { value: si, dimensions } = value as Unit & { value: number; dimensions: readonly number[] };
  return { value: si, unit: dimensions.some((one) => one !== 0) ? dimensions.join() : '' };
}
