import { findMaterial } from '../../core/materials/catalogue.ts';
import type { Spread } from '../../core/materials/spread.ts';
import { batch } from '../../core/mix/batch.ts';
import { bagsFor } from '../../core/mix/price.ts';
import type { SiUnit } from '../../core/quantity/figure.ts';
import type { Doubted } from '../command.ts';
import type { KnownPrice } from '../prices.ts';
import { shortName, soldAs } from './cost.ts';
import type { MixQuestion } from './question.ts';

/** How densely one mix packs says nothing of another: what is drawn names the lining or the material it is of. */
export function mixDoubt(question: MixQuestion, prices: ReadonlyMap<string, KnownPrice>): Doubted {
  const { estimate, recipe, ownRatio } = question;
  const { amount, parts } = estimate;
  const lining = ownRatio ? 'the own ratio' : shortName(recipe.lining);
  const names = {
    dense: `how densely ${lining} packs`,
    spare: 'the spare kept',
    water: `the water ${lining} takes`,
  };
  const sold = parts.map(({ material }) => soldAs(material, prices));
  const priced = sold.every((one) => one !== undefined && one.currency === sold[0]?.currency) ? sold : [];
  const loose = ({ material }: { material: string }) => `how densely ${shortName(material)} lies loose`;
  const price = ({ material }: { material: string }) => `the price of ${shortName(material)}`;
  const inputs: Record<string, Spread> = {
    [names.dense]: estimate.dry_density_kg_m3,
    [names.spare]: estimate.spare,
    [names.water]: estimate.water,
  };
  const units: Record<string, SiUnit> = { [names.dense]: 'kg/m3', [names.spare]: '1', [names.water]: '1' };
  for (const [index, part] of parts.entries()) {
    inputs[loose(part)] = part.loose_density_kg_m3;
    units[loose(part)] = 'kg/m3';
    const bag = priced[index];
    if (!bag) continue;
    inputs[price(part)] = bag.price;
    units[price(part)] = bag.currency;
  }
  return {
    inputs,
    units,
    samples: 1000,
    model: (draw) => {
      const dry_density_kg_m3 = draw[names.dense]!;
      const spare = draw[names.spare]!;
      const volume_m3 =
        'volume_m3' in amount ? amount.volume_m3 : amount.dry_mass_kg / (dry_density_kg_m3 * (1 + spare));
      const made = batch({
        volume_m3,
        dry_density_kg_m3,
        spare,
        by: estimate.by,
        parts: parts.map((part) => ({ ...part, loose_density_kg_m3: draw[loose(part)]! })),
        water: draw[names.water]!,
        clay_moisture: estimate.clay_moisture,
      });
      const found: Record<string, number> = {
        'mix.volume': volume_m3,
        'mix.dry_mass': made.dry_mass_kg,
        'mix.wet_mass': made.wet_mass_kg,
        // Water in kg fills as many litres.
        'mix.water': made.water_kg / 1000,
      };
      let lost_kg = 0;
      let cost = 0;
      for (const [index, one] of made.ingredients.entries()) {
        const before = made.ingredients.slice(0, index).filter(({ slot }) => slot === one.slot).length;
        const id = `mix.${one.slot}${before === 0 ? '' : before + 1}`;
        found[`${id}_mass`] = one.weighed_kg;
        found[`${id}_volume`] = one.loose_volume_m3;
        lost_kg += one.dry_mass_kg * (findMaterial(one.material).properties.ignition_loss?.typical ?? 0);
        const bag = priced[index];
        if (bag)
          cost +=
            draw[price(parts[index]!)]! *
            bagsFor(bag, { mass_kg: one.weighed_kg, loose_volume_m3: one.loose_volume_m3 });
      }
      found['mix.fired_mass'] = made.dry_mass_kg - lost_kg;
      if (priced.length > 0) found['mix.cost'] = cost;
      return found;
    },
  };
}
