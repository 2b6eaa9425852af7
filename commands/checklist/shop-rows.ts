import { AskError } from '../../core/ask-error.ts';
import { gear } from '../../core/build/data/gear.ts';
import { parts } from '../../core/build/data/parts.ts';
import { type BuildNumbers, bricksUnder, partRows, type Shop, type ShopRow, times } from '../../core/build/shop.ts';
import { findMaterial } from '../../core/materials/catalogue.ts';
import type { Material } from '../../core/materials/material.ts';
import { exactly, type Spread } from '../../core/materials/spread.ts';
import { type Estimate, estimateMix } from '../../core/mix/estimate.ts';
import { bagsFor } from '../../core/mix/price.ts';
import type { Card } from '../card.ts';
import type { AnswerContext } from '../command.ts';
import { type Sold, shortName, soldAs } from '../mix/cost.ts';
import { type KnownPrice, pricesFor } from '../prices.ts';
import { insulationOf } from './kind.ts';
import { readLining } from './lining.ts';
import type { Opened } from './opened.ts';

/** What a build takes: the numbers are those of `size` and `mix`, asked as anybody would. */
export interface ShopList {
  readonly build: readonly ShopRow[];
  readonly gear: readonly ShopRow[];
  /** Prices of the asker or the place that were used. */
  readonly used: readonly KnownPrice[];
  /** What `size` says of the build, where that is what it is. */
  readonly says?: string;
}

export async function shopList(open: Opened, context: AnswerContext): Promise<ShopList> {
  const { question, kind } = open;
  const prices = await pricesFor(context);
  const sized = question.command.startsWith('size') ? await cardOf(question, context) : undefined;
  const estimate = liningOf(open, sized, context);
  const lining = estimate ? liningRows(estimate, prices) : [];
  const fill = sized && kind.traits.fill === 'loose' ? fillRows(insulationOf(question), sized, prices) : [];
  const used = [...lining, ...fill].flatMap(({ sold }) => sold?.known ?? []);
  return {
    build: [
      ...[...lining, ...fill].map(({ row }) => row),
      ...partRows(parts, kind.traits, sized ? numbersOf(sized) : {}),
    ],
    gear: partRows(gear, kind.traits, {}),
    used,
    ...(sized ? { says: sized.headline } : {}),
  };
}

async function cardOf(question: Opened['question'], { ask }: AnswerContext): Promise<Card> {
  const reply = await ask(question);
  if (reply.kind === 'error') throw new AskError(reply.error);
  return reply.card;
}

/** The mix that fills this lining: as `mix for=` the size works it out, or the mix that the build is. */
function liningOf({ list, question, chosen }: Opened, sized: Card | undefined, context: AnswerContext) {
  const { amount, recipe = 'clay-sand', metal } = sized?.handsOver ?? {};
  const asked =
    question.command === 'mix'
      ? question.options
      : amount === undefined
        ? undefined
        : { amount, recipe, ...(metal === undefined ? {} : { metal }) };
  if (!asked) return undefined;
  const { ratio: _, ...fixed } = asked as Record<string, string>;
  const options = chosen.recipe === undefined ? asked : { ...fixed, recipe: chosen.recipe };
  return estimateMix(readLining(options, context, `checklist start ${list.name}`).estimate);
}

interface Bought {
  readonly row: ShopRow;
  readonly sold: Sold | undefined;
}

function liningRows({ typical, ranges }: Estimate, prices: ReadonlyMap<string, KnownPrice>): readonly Bought[] {
  return typical.ingredients.map((one, index) => {
    const mass = ranges[`mass${index}`];
    const loose = ranges[`loose${index}`];
    const at = (end: 'low' | 'high') => ({
      mass_kg: mass?.[end] ?? one.weighed_kg,
      loose_volume_m3: loose?.[end] ?? one.loose_volume_m3,
    });
    const usual = { mass_kg: one.weighed_kg, loose_volume_m3: one.loose_volume_m3 };
    return bagged(one.material, prices, { low: at('low'), typical: usual, high: at('high') }, 'kg');
  });
}

type Need = { readonly mass_kg: number; readonly loose_volume_m3: number };

/** Whole bags of a material, at the asker's price or a common one. */
function bagged(
  material: string,
  prices: ReadonlyMap<string, KnownPrice>,
  need: Readonly<Record<keyof Spread, Need>>,
  counted: 'kg' | 'm3',
): Bought {
  const sold = soldAs(material, prices);
  const by = (count: (one: Need) => number): Spread => ({
    low: count(need.low),
    typical: count(need.typical),
    high: count(need.high),
  });
  const bags = sold && by((one) => bagsFor(sold, one));
  const row: ShopRow = {
    id: material,
    name: shortName(material),
    quantity: by((one) => (counted === 'kg' ? one.mass_kg : one.loose_volume_m3)),
    counted,
    cost: sold && bags && times(bags, sold.price),
    currency: sold?.currency ?? 'USD',
    shops: shopsOf(findMaterial(material).kind, material),
    ...(bags ? { bags } : {}),
    ...(sold?.known ? { note: 'at a price that was set here' } : {}),
  };
  return { row, sold };
}

function fillRows(insulation: string, { figures }: Card, prices: ReadonlyMap<string, KnownPrice>): readonly Bought[] {
  const loose = spreadOf(figures, 'size.insulation_loose');
  const mass = spreadOf(figures, 'size.insulation_mass');
  if (!loose || !mass) return [];
  const at = (end: keyof Spread): Need => ({ mass_kg: mass[end], loose_volume_m3: loose[end] });
  return [bagged(insulation, prices, { low: at('low'), typical: at('typical'), high: at('high') }, 'm3')];
}

function spreadOf(figures: Card['figures'], id: string): Spread | undefined {
  const found = figures.find((one) => one.id === id);
  return (
    found && { low: found.range?.low ?? found.value, typical: found.value, high: found.range?.high ?? found.value }
  );
}

function numbersOf({ figures }: Card): BuildNumbers {
  const of = (id: string) => spreadOf(figures, id);
  const [mesh_m, wire_m, blanket_m3] = ['size.mesh', 'size.wire', 'size.insulation_volume'].map(of);
  const [along, round, across, thick] = [
    'size.sleeve',
    'size.sleeve_round',
    'size.lining_bottom',
    'size.underfloor',
  ].map(of);
  return {
    ...(mesh_m ? { mesh_m } : {}),
    ...(wire_m ? { wire_m } : {}),
    ...(blanket_m3 ? { blanket_m3 } : {}),
    ...(along && round ? { sleeve_m2: exactly(along.typical * round.typical) } : {}),
    ...(across && thick ? { bricks_count: bricksUnder({ across_m: across.typical, thick_m: thick.typical }) } : {}),
  };
}

function shopsOf(kind: Material['kind'], material: string): readonly Shop[] {
  if (kind === 'clay' || material === 'grog') return ['pottery supplier'];
  if (kind === 'castable' || material === 'aluminate-cement') return ['refractory supplier'];
  if (material === 'perlite' || material === 'vermiculite') return ['garden centre', 'building supplier'];
  return ['building supplier'];
}
