import type { WallQuestion } from '../../core/heat/wall-question.ts';
import { shortName } from '../../core/heat/wall-question.ts';
import type { Material } from '../../core/materials/material.ts';
import { fittingMaterials, newFace_m, type Unfit, unfitLayers } from '../../core/mix/lining-fitness.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { formatSi } from '../../core/quantity/format.ts';
import { capital } from '../sentence.ts';
import { layerText, type TypedLayer, type TypedStack } from './layers.ts';
import { askedWall } from './question.ts';

/** How `wall` heats a furnace that nothing more is said of. */
const hourAtHeat = { ramp_s: 2400, hold_s: 3600 } as const;

/** What a furnace is judged by, whichever command was asked. */
export interface LinedFurnace {
  readonly layers: TypedStack;
  readonly hot_K: number;
  readonly bore_m?: number | undefined;
  readonly height_m?: number | undefined;
}

/** A lining that does not stand its metal, with another that does. */
export interface UnfitLining {
  readonly unfit: readonly Unfit[];
  /** Hot side first; nothing where no lining of the catalogue stands it. */
  readonly fitting: readonly Material[] | undefined;
}

/** Whether a lining stands a furnace held hot for an hour, as `wall` holds it; nothing where it does. */
export function unfitLining(furnace: LinedFurnace, units: UnitSystem): UnfitLining | undefined {
  const quantity = (dimension: 'length' | 'temperature', si: number) => ({
    dimension,
    si,
    text: '',
    system: undefined,
  });
  const { layers, hot_K, bore_m, height_m } = furnace;
  const { question } = askedWall(
    {
      layers,
      hot: quantity('temperature', hot_K),
      ...(bore_m === undefined ? {} : { bore: quantity('length', bore_m) }),
      ...(height_m === undefined ? {} : { height: quantity('length', height_m) }),
    },
    units,
  );
  return unfitIn(question);
}

/** The same of a wall whose firing is not that of `wall`'s defaults. */
export function unfitIn(asked: WallQuestion): UnfitLining | undefined {
  const question = { ...asked, ...hourAtHeat };
  const unfit = unfitLayers(question);
  return unfit.length === 0 ? undefined : { unfit, fitting: fittingMaterials(question) };
}

/** In sentences: what gives way, by how much, and what to ask for instead. */
export function unfitSays(
  lining: UnfitLining | undefined,
  { metal, change, units }: { metal: string; change: string | undefined; units: UnitSystem },
): readonly string[] {
  if (!lining) return [];
  const show = (kelvin: number) => formatSi(kelvin, 'K', units);
  return [
    ...lining.unfit.map((one) => layerSays(one, metal, show)),
    change === undefined ? 'Nothing that is rammed or cast here stands that.' : `Ask for ${change} instead.`,
  ];
}

function layerSays({ material, why, gets_K, limit_K }: Unfit, metal: string, show: (kelvin: number) => string): string {
  const name = capital(shortName(material.name));
  if (why === 'no face') return `${name} is no hot face for ${metal}: put a lining before it.`;
  return why === 'face'
    ? `${name} holds to ${show(limit_K)} at the low end; ${metal} needs a face of about ${show(gets_K)}: ${Math.round(gets_K - limit_K)} K short.`
    : `${name} behind it gets to ${show(gets_K)} in an hour at heat, and stands about ${show(limit_K)}.`;
}

/** The layers as typed, of other materials; with a face before them where there was one layer only. */
export function refilledText(layers: readonly TypedLayer[], fitting: readonly Material[]): string {
  const more = Math.max(0, fitting.length - layers.length);
  return [
    ...fitting.slice(0, more).map(({ id }) => `${newFace_m * 1000} mm ${id}`),
    ...layers.map((layer, at) => layerText({ ...layer, material: fitting[at + more] ?? layer.material })),
  ].join('; ');
}
