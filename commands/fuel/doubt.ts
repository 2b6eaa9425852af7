import { AskError } from '../../core/ask-error.ts';
import { dryAshFreeSpread_J_kg } from '../../core/fire/fuel/fuel-spread.ts';
import type { Draw } from '../../core/heat/wall-question.ts';
import { answerBalance } from '../../core/melt/balance.ts';
import { neighbourOf, solveMelts, solveNear } from '../../core/melt/balance-melt.ts';
import { balanceModel, doubts } from '../../core/melt/balance-question.ts';
import { ashRoom_kg, type FirstMelt, type PricedFire, stageMelt } from '../../core/melt/fuel-staging.ts';
import type { SiUnit } from '../../core/quantity/figure.ts';
import type { Doubted } from '../command.ts';
import type { FuelOptions } from './options.ts';
import type { AskedFuel } from './question.ts';

/** As fine as the samples of `fuel` itself. */
const fineness = { cells: 5, tolerance_dK: 3 } as const;
const nearAccuracy = 0.01;
const sampleAccuracy = 0.3;

/** What is drawn of one fuel or one pot is its own: two fuels do not share their bags. */
export function fuelDoubt(
  asked: AskedFuel,
  { material = 'clay-graphite', ashes }: Pick<FuelOptions, 'material' | 'ashes'>,
): Doubted {
  const { fuel, melts: count, question } = asked;
  const { model, melts, ends } = answerBalance(question, { ranged: false });
  const cheap = cheapOf(asked, ends);
  const ash_limit_kg = ashes?.si ?? ashRoom_kg(question.wall.bore_m);
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
    inputs: { ...Object.fromEntries(names.map(({ own, shared }) => [shared, model.inputs[own]!])), ...cheap?.inputs },
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
        ...(cheap && price !== undefined
          ? stagedCost({ furnace, melts: { first } }, cheap.priced(draw, shared), price, ash_limit_kg)
          : {}),
        ...(price === undefined ? {} : { 'fuel.cost': first.fuel_kg * price, 'fuel.total_cost': mass_kg * price }),
      };
    },
  };
}

/** The fuel that is burned first, with doubts of its own; nothing where the two could not be weighed by price. */
function cheapOf({ cheap, fuel, priceOf, question }: AskedFuel, ends: number) {
  const [price, other] = [cheap && priceOf(cheap), priceOf(fuel)];
  if (!cheap || !price || price.currency !== other?.currency) return undefined;
  const names = { ash: `ash of ${cheap.name}`, dry: `heating value of ${cheap.name}`, price: `price of ${cheap.name}` };
  const firing = {
    ...question.firing,
    fuel: cheap,
    ash: cheap.ash,
    moisture: cheap.moisture.typical,
    dry_J_kg: dryAshFreeSpread_J_kg(cheap),
  };
  const { fire } = balanceModel({ ...question, firing }, ends);
  return {
    inputs: { [names.ash]: cheap.ash, [names.dry]: firing.dry_J_kg, [names.price]: price.per_kg },
    priced: (draw: Draw, shared: Draw): PricedFire => ({
      fire: fire({ ...draw, [doubts.ash]: shared[names.ash]!, [doubts.dry]: shared[names.dry]! }),
      price_USD_kg: shared[names.price]!,
    }),
  };
}

/** The cheapest split of this very draw. */
function stagedCost(balance: FirstMelt, cheap: PricedFire, price_USD_kg: number, ash_limit_kg: number) {
  try {
    const better = { fire: balance.furnace.fire, price_USD_kg };
    return { 'fuel.staged_cost': stageMelt(balance, { cheap, better, ash_limit_kg }).staging.cost_USD };
  } catch (error) {
    if (error instanceof AskError) return {};
    throw error;
  }
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
