import { describe, expect, it } from 'vitest';
import { AskError } from '../ask-error.ts';
import { isFact } from '../hazard/facts.ts';
import { sourceOf } from '../sources/sources.ts';
import { findMaterial, findPour, materials, nameKey, pours, vessels } from './catalogue.ts';
import { findVessel } from './find-vessel.ts';
import { materialSchema } from './material.ts';
import { pourSchema } from './pour.ts';
import { brimful_m3, vesselSchema } from './vessel.ts';

function citedSources(value: unknown): string[] {
  if (typeof value !== 'object' || value === null) return [];
  const own = 'source' in value && typeof value.source === 'string' ? [value.source] : [];
  return [...own, ...Object.values(value).flatMap(citedSources)];
}

describe('materials', () => {
  it('are enough to choose from', () => {
    expect(materials.length).toBeGreaterThanOrEqual(40);
    expect(vessels.length).toBeGreaterThanOrEqual(15);
  });

  it.each(materials.map((material) => [material.id, material] as const))('%s keeps the schema', (_, material) => {
    expect(materialSchema.safeParse(material).error).toBeUndefined();
    for (const hazard of material.hazards) expect(isFact(hazard), hazard).toBe(true);
    for (const curve of [material.conductivity_W_mK, material.heat_capacity_J_kgK]) {
      if (!curve) continue;
      curve.T_K.forEach((T, i) => {
        if (i > 0) expect(T).toBeGreaterThan(curve.T_K[i - 1]!);
        expect(curve.low[i]).toBeLessThanOrEqual(curve.typical[i]!);
        expect(curve.typical[i]).toBeLessThanOrEqual(curve.high[i]!);
      });
    }
  });

  it.each(vessels.map((vessel) => [vessel.id, vessel] as const))('%s holds what is said', (_, vessel) => {
    expect(vesselSchema.safeParse(vessel).error).toBeUndefined();
    for (const hazard of vessel.hazards) expect(isFact(hazard), hazard).toBe(true);
    const ratio = brimful_m3(vessel) / vessel.stated_volume_m3.typical;
    expect(Math.abs(ratio - 1)).toBeLessThanOrEqual(vessel.volume_tolerance);
  });

  it.each(pours.map((pour) => [pour.id, pour] as const))(
    '%s is poured above its liquidus and below its face',
    (_, pour) => {
      expect(pourSchema.safeParse(pour).error).toBeUndefined();
      for (const hazard of pour.hazards) expect(isFact(hazard), hazard).toBe(true);
      expect(pour.pour_K.typical).toBeGreaterThan(pour.liquidus_K.typical);
      expect(pour.hot_face_K.typical).toBeGreaterThanOrEqual(pour.pour_K.typical + 100);
    },
  );

  it('cites only sources that exist', () => {
    for (const id of new Set([materials, vessels, pours].flatMap(citedSources))) expect(sourceOf(id).id).toBe(id);
  });

  it.each([
    ['materials', materials],
    ['vessels', vessels],
    ['pours', pours],
  ] as const)('%s: no name means two things', (_, list) => {
    const owner = new Map<string, string>();
    for (const { id, name, aliases } of list)
      for (const text of [id, name, ...aliases]) {
        expect(owner.get(nameKey(text)) ?? id, text).toBe(id);
        owner.set(nameKey(text), id);
      }
    expect(new Set(list.map(({ id }) => id)).size).toBe(list.length);
  });

  it('gives every ingredient of a mix a loose density', () => {
    for (const { id, kind, properties } of materials)
      if (['clay', 'aggregate', 'binder'].includes(kind)) expect(properties.loose_density_kg_m3, id).toBeDefined();
  });

  it('gives every layer of a wall density, conductivity, heat capacity and limit', () => {
    for (const m of materials)
      if (['lining', 'castable', 'brick', 'insulation'].includes(m.kind)) {
        expect(m.properties.density_kg_m3, m.id).toBeDefined();
        expect(m.conductivity_W_mK, m.id).toBeDefined();
        expect(m.heat_capacity_J_kgK, m.id).toBeDefined();
      }
  });
});

describe('finding', () => {
  it.each([
    ['Fire Clay', 'fireclay'],
    ['fire-clays', 'fireclay'],
    ['Ceramic Fiber Blanket', 'fibre-blanket'],
    ['galvanized steel', 'galvanised-steel'],
    ['insulating firebricks', 'insulating-brick-23'],
    ['plaster of Paris', 'gypsum-plaster'],
    ['Perlite.', 'perlite'],
  ])('%s is %s', (text, id) => {
    expect(findMaterial(text).id).toBe(id);
  });

  it('knows vessels and metals by everyday names', () => {
    expect(findVessel('55 gallon drum').id).toBe('drum-55-gal-open');
    expect(findVessel('5-gallon buckets').id).toBe('pail-5-gal');
    expect(findPour('Aluminum').id).toBe('aluminium');
    expect(findPour('cast iron').id).toBe('grey-iron');
  });

  it('takes the words of a name in any order when only one thing has them all', () => {
    expect(findVessel('20 lb tank').id).toBe('propane-cylinder-20-lb');
    expect(findVessel('galvanized trash can, 31 gallon').id).toBe('galvanised-can-31-gal');
    expect(() => findVessel('55 gal')).toThrow(AskError);
    expect(() => findMaterial('clay')).toThrow(AskError);
  });

  it.each(['', ' ', '__proto__', 'constructor', '-'.repeat(5000), 'x'.repeat(5000)])(
    'refuses "%.20s" with a way on',
    (text) => {
      expect(() => findMaterial(text)).toThrow(AskError);
    },
  );

  it('offers the nearest name to a slip', () => {
    expect(() => findMaterial('vermiculit')).toThrow(AskError);
    try {
      findMaterial('vermiculit');
    } catch (error) {
      expect((error as AskError).code).toBe('unknown-name');
      expect((error as AskError).example).toBe('vermiculite');
    }
  });
});
