import { describe, expect, it } from 'vitest';
import { findMaterial, materials } from '../materials/catalogue.ts';
import { at } from '../materials/curve.ts';
import { celsius } from '../materials/data/make.ts';
import { looseFillAt } from './granular.ts';
import { layerModel } from './wall-layers.ts';
import { layerHeats, outsideModel } from './wall-limits.ts';
import type { WallLayer } from './wall-run.ts';

const model = (id: string, water?: number) =>
  layerModel({ material: findMaterial(id), thickness_m: 0.05, ...(water === undefined ? {} : { water }) });

const drawn = (id: string, conductivity: number): WallLayer =>
  model(id).draw({ conductivity, density_kg_m3: 1000, water: 0 });

/** Linear between rows, as the solver reads it. */
function kAt({ conductivity: { T_K, k_W_mK } }: WallLayer, wanted_K: number): number {
  const above = Math.max(
    1,
    T_K.findIndex((one) => one >= wanted_K),
  );
  const share = (wanted_K - T_K[above - 1]!) / (T_K[above]! - T_K[above - 1]!);
  return k_W_mK[above - 1]! + share * (k_W_mK[above]! - k_W_mK[above - 1]!);
}

describe('a layer from the catalogue', () => {
  it('conducts as the catalogue says at its low, typical and high end, and in between in between', () => {
    const curve = findMaterial('vermiculite').conductivity_W_mK!;
    for (const T_K of [celsius(20), celsius(250), celsius(700), celsius(1000)]) {
      expect(kAt(drawn('vermiculite', -1), T_K)).toBeCloseTo(at(curve, T_K, 'low').value, 9);
      expect(kAt(drawn('vermiculite', 0), T_K)).toBeCloseTo(at(curve, T_K).value, 9);
      expect(kAt(drawn('vermiculite', 1), T_K)).toBeCloseTo(at(curve, T_K, 'high').value, 9);
      const half = kAt(drawn('vermiculite', 0.5), T_K);
      expect(half).toBeGreaterThan(at(curve, T_K).value);
      expect(half).toBeLessThan(at(curve, T_K, 'high').value);
    }
  });

  it('is carried on beyond its table, loose fill by what its grains radiate, and says from where', () => {
    const { conductivity_W_mK: curve } = findMaterial('perlite');
    expect(model('perlite').known_to_K).toBe(celsius(800));
    // A straight line in between the rows that are carried on: within 2 % of the curve.
    expect(kAt(drawn('perlite', 0), celsius(1025))).toBeCloseTo(looseFillAt(curve!, celsius(1025)).value, 2);
    const brick = findMaterial('fireclay-brick').conductivity_W_mK!;
    expect(kAt(drawn('fireclay-brick', 0), celsius(1300))).toBeCloseTo(at(brick, celsius(1300)).value, 6);
  });

  it('stands as dense as loose fill settles, and holds the water of the catalogue or what was said', () => {
    const { properties } = findMaterial('vermiculite');
    expect(model('vermiculite').density_kg_m3.typical).toBeCloseTo(100 / (1 - properties.settling!.typical), 6);
    expect(model('clay-sand-lining').density_kg_m3.typical).toBe(1850);
    expect(model('vermiculite').water.typical).toBe(0.03);
    expect(model('vermiculite', 0.2).water).toEqual({ low: 0.2, typical: 0.2, high: 0.2 });
    expect(model('fibre-blanket').water.high).toBe(0);
  });

  it('is rising in temperature and positive for every material that can be a layer', () => {
    const layers = materials.filter(
      ({ conductivity_W_mK: k, heat_capacity_J_kgK: c, properties }) => k && c && properties.density_kg_m3,
    );
    expect(layers.length).toBeGreaterThan(15);
    for (const { id } of layers)
      for (const end of [-1, 1]) {
        const { conductivity } = drawn(id, end);
        expect(conductivity.T_K.every((one, row) => row === 0 || one > conductivity.T_K[row - 1]!)).toBe(true);
        expect(conductivity.k_W_mK.every((one) => one > 0)).toBe(true);
      }
  });

  it('is refused without a thickness, and without data', () => {
    expect(() => layerModel({ material: findMaterial('perlite'), thickness_m: 0 })).toThrow('0 mm');
    expect(() => layerModel({ material: findMaterial('gypsum-plaster'), thickness_m: 0.05 })).toThrow(
      'no conductivity',
    );
  });
});

describe('limits', () => {
  const layers = [model('dense-castable'), model('perlite')];

  it('are judged by the low end against the hottest that it may get', () => {
    const [face, fill] = layerHeats(
      layers,
      [celsius(1000), celsius(640)],
      [undefined, { low: 850, high: celsius(660) }],
    );
    expect(face?.exceeds).toBe(false);
    expect(fill?.exceeds).toBe(true);
    expect(layerHeats(layers, [celsius(1000), celsius(640)], [])[1]?.exceeds).toBe(false);
  });

  it('end the model past their high end, or past what is known', () => {
    expect(outsideModel(layers, [celsius(1000), celsius(700)])).toEqual([]);
    expect(outsideModel(layers, [celsius(1000), celsius(850)])[0]?.why).toBe('unknown');
    expect(outsideModel(layers, [celsius(1000), celsius(900)])[0]?.why).toBe('gone');
    expect(outsideModel(layers, [celsius(1700), celsius(500)])[0]?.material.id).toBe('dense-castable');
  });
});
