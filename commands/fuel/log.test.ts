import { describe, expect, it } from 'vitest';
import { modelErrors, readingErrors } from '../../core/build/log-data.ts';
import { sampleDoubt } from '../../core/doubt/sample.ts';
import type { Draw } from '../../core/heat/wall-question.ts';
import { answerBalance } from '../../core/melt/balance.ts';
import { neighbourOf, solveMelts, solveNear } from '../../core/melt/balance-melt.ts';
import type { AnswerContext } from '../command.ts';
import type { LogEntry } from '../memory-weeks.ts';
import { readOptions } from '../read-options.ts';
import { commands } from '../registry.ts';
import { fuel } from './fuel.ts';
import { byBurns } from './log.ts';
import type { FuelOptions } from './options.ts';
import { askedFuel } from './question.ts';

const optionsOf = (raw: Record<string, string>) => readOptions(fuel, raw, 'metric').values as FuelOptions;
const options = optionsOf({ fuel: 'lump charcoal', amount: '3 kg', metal: 'aluminium' });
const burn = (fuel_kg: number, more: LogEntry['data'] = {}): LogEntry => ({
  id: 'A',
  build: 'pot',
  kind: 'burn',
  at: new Date(0),
  data: { fuel: 'lump-charcoal', fuel_kg, metal: 'aluminium', melted_kg: 3, melts_count: 1, ...more },
});
const context = (...entries: LogEntry[]) =>
  ({ units: 'metric', commands, measured: { build: 'pot', entries } }) as unknown as AnswerContext;
const by = (...entries: LogEntry[]) => byBurns(askedFuel(options, context()), options, context(...entries));
const { question } = askedFuel(options, context());
const { model, melts } = answerBalance(question, { ranged: false });
const typical_kg = melts.first.fuel_kg;

describe('the fuel of a melt by burns of its build', () => {
  it('comes to where weights on its draws put it, and to their spread', () => {
    const read_kg = 1.25 * typical_kg;
    const { draw: moved, readings } = by(burn(read_kg))!;
    expect(readings[0]!.used).toBe(true);
    const draws: Draw[] = [];
    sampleDoubt({
      inputs: model.inputs,
      together: model.wall.together,
      samples: 400,
      model: (one) => {
        if (draws.length < 400) draws.push({ ...one });
        return { none: 0 };
      },
    });
    const fineness = { cells: 5, tolerance_dK: 3 };
    const near = neighbourOf(solveMelts(model.furnace(model.typical, fineness), melts.programme, 0.01));
    const logFuel = (draw: Draw) => Math.log(solveNear(model.furnace(draw, fineness), near, 0.05).first.fuel_kg);
    const error = Math.hypot(readingErrors.fuel.value, readingErrors.firing_fuel.value, modelErrors.fuel.value) / 2;
    const before = draws.map(logFuel);
    const weights = before.map((one) => Math.exp(-(((one - Math.log(read_kg)) / error) ** 2) / 2));
    const after = draws.map((draw) => logFuel(moved(draw)));
    const even = draws.map(() => 1);
    const total = (of: readonly number[]) => of.reduce((sum, one) => sum + one, 0);
    const mean = (values: readonly number[], of: readonly number[]) =>
      total(values.map((one, at) => one * of[at]!)) / total(of);
    const spread = (values: readonly number[], of: readonly number[]) =>
      Math.sqrt(
        mean(
          values.map((one) => (one - mean(values, of)) ** 2),
          of,
        ),
      );
    // Weights of 400 draws, and a model that bends: a fifth of the spread before the reading.
    const close = 0.2 * spread(before, even);
    expect(Math.abs(mean(after, even) - mean(before, weights))).toBeLessThan(close);
    expect(Math.abs(spread(after, even) - spread(before, weights))).toBeLessThan(close);
    expect(spread(after, even)).toBeLessThan(0.8 * spread(before, even));
  }, 60_000);

  it('expects of a logged melt what it tells of such a melt itself', () => {
    const { estimate } = by(burn(typical_kg))!.readings[0]!;
    // The middle of its doubts is not its typical draw.
    expect(Math.exp(estimate) / typical_kg).toBeGreaterThan(0.8);
    expect(Math.exp(estimate) / typical_kg).toBeLessThan(1.25);
  });

  it('expects more of more metal, and of more melts in a row', () => {
    const expected = (more: LogEntry['data']) => by(burn(typical_kg, more))!.readings[0]!.estimate;
    const plain = expected({});
    expect(expected({ melted_kg: 6 })).toBeGreaterThan(plain);
    expect(expected({ melted_kg: 6, melts_count: 2 })).toBeGreaterThan(plain);
  });

  it('leaves out what burned another fuel, melted nothing, or never melts in this furnace', () => {
    expect(by(burn(2, { fuel: 'propane' }))).toBeUndefined();
    expect(by({ ...burn(2), data: { fuel: 'lump-charcoal', fuel_kg: 2 } })).toBeUndefined();
    const cool = optionsOf({ fuel: 'lump charcoal', amount: '3 kg', metal: 'aluminium', hot: '850 °C' });
    const bronze = context(burn(2, { metal: 'bronze' }));
    expect(byBurns(askedFuel(cool, bronze), cool, bronze)).toBeUndefined();
    expect(by()).toBeUndefined();
  });

  it('moves no price: nothing was read of it', () => {
    const { draw, spreads } = by(burn(1.3 * typical_kg))!;
    const price = 'its price';
    expect(model.inputs[price]).toBeDefined();
    expect(spreads[price]!.typical).toBeCloseTo(model.inputs[price]!.typical, 9);
    expect(draw(model.typical)[price]).toBeCloseTo(model.typical[price]!, 9);
  });
});
