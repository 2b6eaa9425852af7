import { describe, expect, it } from 'vitest';
import type { AskError } from '../ask-error.ts';
import { runWall } from '../heat/transient/run-wall.ts';
import { firingOf } from '../heat/wall-firing.ts';
import { type WallQuestion, wallModel } from '../heat/wall-question.ts';
import { findMaterial, findPour } from '../materials/catalogue.ts';
import { exactly } from '../materials/spread.ts';
import { judgeFitness } from './fitness.ts';
import { fittingMaterials, unfitLayers } from './lining-fitness.ts';
import { recipes } from './recipes.ts';

const question = (metal: string, face = 'clay-sand-lining', behind = 'vermiculite'): WallQuestion => {
  const layers = [
    { material: findMaterial(face), thickness_m: 0.04 },
    { material: findMaterial(behind), thickness_m: 0.05 },
  ];
  return {
    layers,
    bore_m: 0.25,
    height_m: 0.3,
    hot_K: exactly(findPour(metal).hot_face_K.typical),
    ramp_s: 2400,
    ramp_doubt: 0.3,
    hold_s: 3600,
    lid_off_s: 0,
    lid: layers,
    floor: layers,
    vent_radius_m: 0.04,
    shell_m: 0.001,
    emissivity: exactly(0.9),
    wind_m_s: exactly(0),
    air_K: exactly(293.15),
  };
};

describe('a lining against its metal', () => {
  it.each(['bronze', 'copper', 'cast iron', 'brass'])(
    'speaks of clay and sand, and of the fill behind, for %s',
    (metal) => {
      const found = unfitLayers(question(metal));
      expect(found.map(({ why }) => why)).toEqual(['face', 'behind']);
      for (const { gets_K, limit_K } of found) expect(gets_K).toBeGreaterThan(limit_K);
    },
  );

  it.each(['aluminium', 'zinc', 'tin'])('says nothing for %s', (metal) => {
    expect(unfitLayers(question(metal))).toEqual([]);
  });

  it('says of a face what a mix of it says', () => {
    const short = (work: () => unknown): boolean => {
      try {
        work();
        return false;
      } catch (error) {
        return /K short/.test((error as AskError).what);
      }
    };
    const mixed = ['clay-sand', 'fireclay-sand', 'fireclay-grog', 'castable', 'insulating-castable'];
    for (const { lining, parts } of recipes.filter(({ id }) => mixed.includes(id)))
      for (const metal of ['zinc', 'aluminium', 'brass', 'bronze', 'copper', 'cast iron'])
        expect(
          unfitLayers(question(metal, lining)).some(({ why }) => why === 'face'),
          `${lining} ${metal}`,
        ).toBe(short(() => judgeFitness({ parts, role: 'hot face', metal })));
  });

  it('is told of a face that is none', () => {
    expect(unfitLayers(question('zinc', 'vermiculite')).map(({ why }) => why)).toEqual(['no face']);
  });

  it('offers a wall that stands, and nothing where none does', () => {
    for (const metal of ['brass', 'bronze', 'copper']) {
      const asked = question(metal);
      const offered = fittingMaterials(asked)!;
      const layers = asked.layers.map((layer, at) => ({ ...layer, material: offered[at]! }));
      const model = wallModel({ ...asked, layers });
      const { interface_peaks_K } = firingOf(
        model,
        model.typical,
        runWall(model.input(model.typical, { cells: 20, tolerance_dK: 0.3 })),
      );
      [asked.hot_K.typical, interface_peaks_K[0]!].forEach((gets_K, at) => {
        expect(gets_K).toBeLessThan(offered[at]!.properties.service_limit_K!.low + 2);
      });
    }
    expect(fittingMaterials(question('cast iron'))).toBeUndefined();
  });
});
