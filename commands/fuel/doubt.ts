import { answerBalance } from '../../core/melt/balance.ts';
import { neighbourOf, solveMelts, solveNear } from '../../core/melt/balance-melt.ts';
import { doubts } from '../../core/melt/balance-question.ts';
import type { SiUnit } from '../../core/quantity/figure.ts';
import type { Doubted } from '../command.ts';
import type { FuelOptions } from './options.ts';
import type { AskedFuel } from './question.ts';

/** As fine as the samples of `fuel` itself. */
const fineness = { cells: 5, tolerance_dK: 3 } as const;
const nearAccuracy = 0.01;
const sampleAccuracy = 0.3;

/** What is drawn of one fuel or one pot is its own: two fuels do not share their bags. */
export function fuelDoubt(asked: AskedFuel, { material = 'clay-graphite' }: Pick<FuelOptions, 'material'>): Doubted {
  const { fuel, melts: count, question } = asked;
  const { model, melts } = answerBalance(question, { ranged: false });
  const near = neighbourOf(solveMelts(model.furnace(model.typical, fineness), melts.programme, nearAccuracy));
  const kind = { solid: 'a bed of fuel', gas: 'the gas', liquid: 'the oil' }[fuel.kind];
  const renamed: Readonly<Record<string, string>> = {
    [doubts.ash]: `ash of ${fuel.name}`,
    [doubts.dry]: `heating value of ${fuel.name}`,
    [doubts.price]: `price of ${fuel.name}`,
    [doubts.crucible]: `the heat that a ${material} crucible takes`,
    [doubts.power]: `how hard ${kind} is fired`,
  };
  const names = Object.keys(model.inputs).map((own) => ({ own, shared: renamed[own] ?? own }));
  return {
    inputs: Object.fromEntries(names.map(({ own, shared }) => [shared, model.inputs[own]!])),
    together: model.wall.together,
    units: Object.fromEntries(
      names.flatMap(({ own, shared }) => (units[own] === undefined ? [] : [[shared, units[own]]])),
    ),
    samples: 300,
    model: (shared) => {
      const draw = Object.fromEntries(names.map(({ own, shared: name }) => [own, shared[name]!]));
      const furnace = model.furnace(draw, fineness);
      if (!(furnace.fire.left(furnace.hot_K - furnace.drop_dK) > 0)) return {};
      const { first, again } = solveNear(furnace, near, sampleAccuracy);
      const mass_kg = first.fuel_kg + (count - 1) * again.fuel_kg;
      const price = draw[doubts.price];
      return {
        'fuel.mass': first.fuel_kg,
        'fuel.time': first.time_s,
        'fuel.again_mass': again.fuel_kg,
        'fuel.again_time': again.time_s,
        'fuel.efficiency': first.efficiency,
        'fuel.again_efficiency': again.efficiency,
        'fuel.stored': first.stored_J,
        'fuel.total_mass': mass_kg,
        'fuel.total_time': first.time_s + (count - 1) * (again.time_s + question.pause_s),
        ...(price === undefined ? {} : { 'fuel.cost': first.fuel_kg * price, 'fuel.total_cost': mass_kg * price }),
      };
    },
  };
}

const units: Readonly<Record<string, SiUnit>> = {
  [doubts.drop]: 'dK',
  [doubts.power]: 'W',
  [doubts.co]: '1',
  [doubts.excess]: '1',
  [doubts.ash]: '1',
  [doubts.dry]: 'J/kg',
  [doubts.metal]: 'J',
  [doubts.crucible]: 'J',
};
