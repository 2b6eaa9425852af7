import { AskError } from '../../core/ask-error.ts';
import type { SiUnit } from '../../core/quantity/figure.ts';
import type { Doubted } from '../command.ts';
import { type FlameInputs, type FlameQuestion, flameOf, heatLeft } from './question.ts';

export function flameDoubt(question: FlameQuestion): Doubted {
  const { fuel, spreads } = question;
  const names: Readonly<Record<keyof FlameInputs, string>> = {
    excess_air: 'the excess air',
    flue_K: "the flue's temperature",
    dry_J_kg: `heating value of ${fuel.name}`,
    ash: `ash of ${fuel.name}`,
    moisture: `water in ${fuel.name}`,
  };
  const keys = Object.keys(names) as (keyof FlameInputs)[];
  return {
    inputs: Object.fromEntries(keys.map((key) => [names[key], spreads[key]])),
    units: Object.fromEntries(keys.map((key) => [names[key], units[key]])),
    samples: 300,
    model: (draw) => {
      const inputs = Object.fromEntries(keys.map((key) => [key, draw[names[key]]!])) as unknown as FlameInputs;
      try {
        const { temperature_K, air_per_fuel } = flameOf(question, inputs);
        const { share_of_lower, share_of_higher, flue } = heatLeft(question, inputs);
        return {
          'flame.temperature': temperature_K,
          'flame.left': share_of_lower,
          'flame.left_higher': share_of_higher,
          'flame.oxygen': flue.dry.O2,
          'flame.carbon_monoxide': flue.dry.CO,
          'flame.air': air_per_fuel,
        };
      } catch (error) {
        if (error instanceof AskError) return {};
        throw error;
      }
    },
  };
}

const units: Readonly<Record<keyof FlameInputs, SiUnit>> = {
  excess_air: '1',
  flue_K: 'K',
  dry_J_kg: 'J/kg',
  ash: '1',
  moisture: '1',
};
