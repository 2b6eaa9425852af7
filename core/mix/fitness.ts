import { AskError } from '../ask-error.ts';
import { findFinish } from '../heat/finish.ts';
import { lossFunction } from '../heat/outside.ts';
import { steadyWall } from '../heat/steady.ts';
import { findMaterial, findPour } from '../materials/catalogue.ts';
import type { Material } from '../materials/material.ts';
import type { End } from '../materials/spread.ts';
import type { Step, WithSteps } from '../step.ts';
import type { Part } from './recipe.ts';

export type Role = 'hot face' | 'backup' | 'outer layer';

const celsius = (kelvin: number): string => `${Math.round(kelvin - 273.15)} °C`;

/** Hot faces run above the metal that they heat: the least that is needed to pour at the low end. */
export interface Fitness extends WithSteps {
  /** Adverse end of the weakest part's service limit. */
  readonly limit_K: number;
  readonly weakest: Material;
  readonly needed_K?: number;
  readonly margin_K?: number;
}

/** What a hot face lacks, by the low end of its limit; none where it has more than is needed. */
export const shortBy_dK = ({ limit_K, needed_K }: { limit_K: number; needed_K: number }): number =>
  Math.max(0, needed_K - limit_K);

/**
 * Is a mix fit for its place? Judged by the low end of the weakest ingredient's service limit against the hottest
 * face that the metal asks for. Throws AskError `unfit` with the temperature and the margin that say so.
 */
export function judgeFitness({ parts, role, metal }: { parts: readonly Part[]; role: Role; metal?: string }): Fitness {
  const materials = parts.map(({ material }) => findMaterial(material));
  refuseGypsum(materials);
  refusePureClay(parts, role);
  const weakest = weakestOf(materials);
  const limit_K = weakest.properties.service_limit_K?.low ?? Number.POSITIVE_INFINITY;
  if (role === 'backup') refusePortlandBehindFace(materials, metal ?? 'aluminium');
  if (role !== 'hot face') return { limit_K, weakest, steps: () => [limitStep(weakest, limit_K)] };
  const never = materials.find(({ hotFace }) => hotFace?.fit === 'backup only' || hotFace?.fit === 'never');
  if (never) throw unfitFace(never);
  if (metal === undefined) return { limit_K, weakest, steps: () => [limitStep(weakest, limit_K)] };
  const pour = findPour(metal);
  const needed_K = pour.hot_face_K.typical;
  if (shortBy_dK({ limit_K, needed_K }) > 0) throw tooCool(weakest, limit_K, pour.name, needed_K);
  const margin_K = limit_K - needed_K;
  return {
    limit_K,
    weakest,
    needed_K,
    margin_K,
    steps: () => [
      limitStep(weakest, limit_K),
      {
        formula: `service limit over the hot face that ${pour.name} needs: margin = limit − needed`,
        inputs: { limit_K, needed_K },
        gives: { margin_dK: margin_K },
        source: pour.hot_face_K.source,
      },
    ],
  };
}

const limitStep = ({ name, properties }: Material, limit_K: number): Step => ({
  formula: `${name}: the weakest part's service limit, adverse end, from the catalogue`,
  inputs: {},
  gives: { limit_K },
  source: properties.service_limit_K?.source ?? 'from-memory',
});

/**
 * How hot it gets behind 40 mm of rammed lining before 60 mm of bound perlite in a 10 in bore, K, once the wall is
 * heated through: the adverse end, a lining that conducts well before a backing that conducts badly. An hour's melt
 * stays some 60 K below the typical end of it, a held one does not. Steady, k(T), still outside (core/heat).
 */
function behindFace_K(hot_K: number): number {
  const layer = (id: string, thickness_m: number, end: End) => {
    const { conductivity_W_mK: conductivity } = findMaterial(id);
    return conductivity ? [{ thickness_m, conductivity, end }] : [];
  };
  const { faces_K } = steadyWall({
    geometry: 'cylinder',
    inner_radius_m: 0.127,
    layers: [...layer('clay-sand-lining', 0.04, 'high'), ...layer('perlite-cement-backup', 0.06, 'low')],
    hot_K,
    outward_W_m2: lossFunction({
      face: 'vertical',
      length_m: 0.3,
      air_K: 293.15,
      emissivity: findFinish('painted').emissivity.typical,
      wind_m_s: 0,
    }),
  });
  return faces_K[1] ?? hot_K;
}

function refusePortlandBehindFace(materials: readonly Material[], metal: string): void {
  const cement = materials.find(({ id }) => id === 'portland-cement' || id === 'masonry-cement');
  const limit_K = cement?.properties.service_limit_K?.low;
  if (!cement || limit_K === undefined) return;
  const pour = findPour(metal);
  const behind_K = behindFace_K(pour.hot_face_K.low);
  if (behind_K <= limit_K) return;
  throw new AskError({
    code: 'unfit',
    what: `behind a hot face for ${pour.name} it can get to ${celsius(behind_K)} once the wall is heated through; ${cement.name} loses its bond from ${celsius(limit_K)}: ${Math.round(behind_K - limit_K)} K too hot`,
    expected:
      'clay or aluminate cement as the binder there; Portland only in an outer layer that stays below its limit',
    example: 'mix 30 L recipe=perlite-aluminate',
    option: 'recipe',
  });
}

function weakestOf(materials: readonly Material[]): Material {
  const limit = ({ properties }: Material) => properties.service_limit_K?.low ?? Number.POSITIVE_INFINITY;
  const [weakest] = materials.toSorted((a, b) => limit(a) - limit(b));
  if (weakest) return weakest;
  throw new AskError({
    code: 'missing',
    what: 'a mix needs ingredients',
    expected: 'at least one part',
    example: 'mix 30 L ratio=2 sand 1 clay',
  });
}

function refuseGypsum(materials: readonly Material[]): void {
  const gypsum = materials.find(({ id }) => id === 'gypsum-plaster');
  if (!gypsum) return;
  throw new AskError({
    code: 'unfit',
    what: 'gypsum plaster gives up its water from about 100 °C and crumbles; any melt is at least 300 °C above that',
    expected: 'clay, castable or aluminate cement as the binder, hot face and backup alike',
    example: 'mix 30 L recipe=clay-sand',
    option: 'ratio',
  });
}

function refusePureClay(parts: readonly Part[], role: Role): void {
  if (role !== 'hot face' || parts.some(({ slot }) => slot !== 'clay')) return;
  throw new AskError({
    code: 'unfit',
    what: 'clay alone shrinks 4 to 10 % as it dries: a ring 1 m round opens 40 to 100 mm of cracks; 1.5 % is the most a lining takes',
    expected: 'at least as much sand or grog as clay; two to one is usual',
    example: 'mix 30 L ratio=2 sand 1 clay',
    option: 'ratio',
  });
}

function unfitFace({ name, hotFace, properties }: Material): AskError {
  const limit = properties.service_limit_K?.low;
  return new AskError({
    code: 'unfit',
    what: `${name} is no hot face${limit === undefined ? '' : `: its limit is ${celsius(limit)}, and even an aluminium furnace's face runs at 800 °C or more`}. ${hotFace?.why ?? ''}`.trim(),
    expected: 'it may stand behind a hot face where it stays below its limit: as=backup',
    example: 'mix 30 L recipe=perlite-clay as=backup',
    option: 'as',
  });
}

function tooCool({ name }: Material, limit_K: number, metal: string, needed_K: number): AskError {
  return new AskError({
    code: 'unfit',
    what: `${name} holds to ${celsius(limit_K)} at the low end; ${metal} needs a face of about ${celsius(needed_K)}: ${Math.round(needed_K - limit_K)} K short`,
    expected: `a mix whose limit is above ${celsius(needed_K)}`,
    example: 'mix 30 L recipe=castable metal=bronze',
    option: 'metal',
  });
}
