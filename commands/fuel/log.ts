import { AskError } from '../../core/ask-error.ts';
import { type Calibration, momentsOf, type Reading } from '../../core/build/log-calibrate.ts';
import { modelErrors, readingErrors } from '../../core/build/log-data.ts';
import type { Draw } from '../../core/heat/wall-question.ts';
import type { Spread } from '../../core/materials/spread.ts';
import { answerBalance } from '../../core/melt/balance.ts';
import { neighbourOf, solveMelts, solveNear } from '../../core/melt/balance-melt.ts';
import { type BalanceModel, balanceModel } from '../../core/melt/balance-question.ts';
import type { AnswerContext } from '../command.ts';
import { burnIn, type LoggedBurn } from '../log/entry.ts';
import { dayOf } from '../log/family.ts';
import { bucketReadings, calibration } from '../log/measured.ts';
import type { FuelOptions } from './options.ts';
import { type AskedFuel, askedFuel } from './question.ts';

/** As fine as the samples of `fuel` itself; its time is found more exactly, for slopes are taken of it. */
const fineness = { cells: 5, tolerance_dK: 3 } as const;
const accuracy = 0.01;
/** The newest ones: each takes as long as the answer itself. */
const mostMelts = 4;

/** A melt's fuel by what earlier burns of this very fuel took in the same furnace, and by buckets of its wall. */
export function byBurns(asked: AskedFuel, options: FuelOptions, context: AnswerContext): Calibration | undefined {
  const { measured } = context;
  if (!measured) return undefined;
  const model = balanceModel(asked.question, 0.4);
  const { layers, densities, together } = model.wall;
  const sampled = Object.fromEntries(
    layers.flatMap(({ material }, index) =>
      densities[index]! in model.inputs ? [[material.id, densities[index]!]] : [],
    ),
  );
  const burns = measured.entries.flatMap((entry) => {
    const burn = burnIn(entry);
    return burn?.melted && burn.fuel.id === asked.fuel.id ? [{ name: `burn of ${dayOf(entry)}`, burn }] : [];
  });
  const models = new Map<string, Reading['predicted'] | undefined>();
  for (const { burn } of burns.toReversed()) {
    const alike = meltOf(burn);
    if (!models.has(alike) && models.size < mostMelts) models.set(alike, fuelOf(burn, model, options, context));
  }
  const readings = burns.flatMap(({ name, burn }): readonly Reading[] => {
    const predicted = models.get(meltOf(burn));
    const { fuel_kg } = burn;
    return predicted
      ? [
          {
            name,
            value: fuel_kg,
            unit: 'kg',
            error: (Math.hypot(readingErrors.fuel.value, readingErrors.firing_fuel.value) / 2) * fuel_kg,
            model: { name: 'fuel', error: (modelErrors.fuel.value / 2) * fuel_kg },
            predicted,
            logarithm: true,
          },
        ]
      : [];
  });
  return calibration(
    model.inputs,
    [...bucketReadings(measured, { how: 'rammed', inputs: sampled }), ...readings],
    together,
  );
}

/** Burns that one model tells. */
const meltOf = ({ melted, melts }: LoggedBurn): string =>
  JSON.stringify([melted?.metal.id, melted?.mass_kg, melted?.pour_K, melts]);

/** What that burn would have taken by the model, as its inputs are drawn; nothing where this furnace never melts it. */
function fuelOf(
  { melted, melts }: LoggedBurn,
  model: BalanceModel,
  options: FuelOptions,
  context: AnswerContext,
): Reading['predicted'] | undefined {
  if (!melted) return undefined;
  const { heat: _, pour: __, melts: ___, metal: ____, ...same } = options;
  const quantity = (dimension: 'mass' | 'temperature', si: number) => ({ dimension, si, text: '', system: undefined });
  try {
    const { question, melts: filled } = askedFuel(
      {
        ...same,
        metal: melted.metal.id,
        amount: quantity('mass', melted.mass_kg / melts),
        ...(melted.pour_K === undefined ? {} : { pour: quantity('temperature', melted.pour_K) }),
      },
      context,
    );
    const { model: logged, melts: found } = answerBalance(question, { ranged: false });
    const near = neighbourOf(solveMelts(logged.furnace(logged.typical, fineness), found.programme, accuracy));
    return (draw) => {
      const furnace = logged.furnace(alike(draw, model.inputs, logged.inputs), fineness);
      const { first, again } = solveNear(furnace, near, accuracy);
      return first.fuel_kg + (melts * filled - 1) * again.fuel_kg;
    };
  } catch (error) {
    if (error instanceof AskError) return undefined;
    throw error;
  }
}

/** The same place in each spread: another charge takes other heat, and is as uncertain in its own way. */
function alike(draw: Draw, from: Readonly<Record<string, Spread>>, to: Readonly<Record<string, Spread>>): Draw {
  return Object.fromEntries(
    Object.entries(to).map(([name, spread]) => {
      const own = from[name];
      const value = draw[name];
      if (!own || value === undefined) return [name, momentsOf(spread).mean];
      const [a, b] = [momentsOf(own), momentsOf(spread)];
      return [name, a.deviation > 0 ? b.mean + (b.deviation / a.deviation) * (value - a.mean) : b.mean];
    }),
  );
}
