import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { datumSchema } from '../materials/material.ts';
import { sourceOf } from '../sources/sources.ts';
import { contactTemperature_K, effusivity, skin } from './contact.ts';
import { findFinish, finishes } from './finish.ts';
import {
  bandOf,
  burnThreshold_K,
  contactAllowed_s,
  findTouched,
  LONGEST_s,
  touchBands,
  touchSurfaces,
} from './touch.ts';
import { findWind, winds } from './wind.ts';

const celsius = (T_C: number) => T_C + 273.15;
const anySurface = fc.constantFrom(...touchSurfaces.map(({ id }) => id));
const anyEnd = fc.constantFrom('low' as const, 'typical' as const, 'high' as const);
const anyTime_s = fc.double({ min: 0.5, max: LONGEST_s, noNaN: true });

describe('data', () => {
  const data = [
    ...finishes.map(({ id, emissivity }) => [id, emissivity] as const),
    ...winds.map(({ id, speed_m_s }) => [id, speed_m_s] as const),
    ...touchSurfaces.flatMap(({ id, thresholds }) =>
      thresholds.map(({ time_s, T_K }) => [`${id} ${time_s} s`, T_K] as const),
    ),
  ];
  it.each(data)('%s has a source, a standing and its ends in order', (_id, datum) => {
    expect(datumSchema.safeParse(datum).success).toBe(true);
    expect(sourceOf(datum.source).id).toBe(datum.source);
  });

  it.each(touchSurfaces.map((one) => [one.name, one.thresholds] as const))(
    'thresholds of %s fall as the touch gets longer, at every end',
    (_name, thresholds) => {
      for (let i = 1; i < thresholds.length; i++) {
        expect(thresholds[i]!.time_s).toBeGreaterThan(thresholds[i - 1]!.time_s);
        for (const end of ['low', 'typical', 'high'] as const) {
          expect(thresholds[i]!.T_K[end]).toBeLessThan(thresholds[i - 1]!.T_K[end]);
        }
      }
    },
  );

  it('names nothing twice among finishes, nor among winds', () => {
    for (const list of [finishes, winds]) {
      const names = list.flatMap(({ id, name, aliases }) => [...new Set([id, name, ...aliases])]);
      expect(names.length).toBe(new Set(names).size);
    }
  });

  it('is found by the words people use', () => {
    expect(findFinish('Galvanized').id).toBe('bright-galvanised');
    expect(findFinish('painted').id).toBe('painted');
    expect(findWind('light breeze').speed_m_s.typical).toBe(3);
    expect(findTouched('wood').surface).toBe('wood');
    expect(findTouched('painted').emissivity_source).toBe('emissivity-charts');
    expect(() => findFinish('paintd')).toThrow('no finish is called "paintd"');
  });
});

describe('how long a hand may stay', () => {
  it('is shorter the hotter the surface', () =>
    fc.assert(
      fc.property(anySurface, anyEnd, fc.double({ min: 290, max: 420, noNaN: true }), (surface, end, T_K) => {
        expect(contactAllowed_s(T_K + 1, surface, end)).toBeLessThanOrEqual(contactAllowed_s(T_K, surface, end));
      }),
    ));

  it('is the threshold read the other way', () =>
    fc.assert(
      fc.property(anySurface, anyEnd, anyTime_s, (surface, end, time_s) => {
        const T_K = burnThreshold_K(time_s, surface, end);
        const allowed_s = contactAllowed_s(T_K + 1e-9, surface, end);
        // At the half-second threshold itself nothing is allowed any more.
        if (time_s > 0.500001) expect(allowed_s / time_s).toBeCloseTo(1, 4);
      }),
    ));

  it('is shortest at the adverse end, and on bare metal', () =>
    fc.assert(
      fc.property(anySurface, fc.double({ min: 290, max: 420, noNaN: true }), (surface, T_K) => {
        const adverse = contactAllowed_s(T_K, surface);
        expect(adverse).toBeLessThanOrEqual(contactAllowed_s(T_K, surface, 'typical'));
        expect(contactAllowed_s(T_K, 'metal')).toBeLessThanOrEqual(adverse);
      }),
    ));

  it('ends at both ends: a day below 43 °C, nothing above the half-second threshold or for a number that is none', () => {
    expect(contactAllowed_s(celsius(42.9), 'metal')).toBe(LONGEST_s);
    expect(contactAllowed_s(celsius(64), 'metal')).toBe(0);
    expect(contactAllowed_s(Number.NaN, 'wood')).toBe(0);
  });
});

describe('bands', () => {
  it('of bare metal', () => {
    const ids = [42, 46, 51.5, 63, 66, 300].map((T_C) => bandOf(celsius(T_C), 'metal').id);
    expect(ids).toEqual(['hold', 'warm', 'seconds', 'recoil', 'burns', 'burns']);
    expect(bandOf(Number.NaN, 'metal').id).toBe('burns');
  });

  it('never call bare or painted metal kinder than the levels for a chart say', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 290, max: 500, noNaN: true }),
        fc.constantFrom('metal' as const, 'painted-metal' as const),
        (T_K, surface) => {
          const byLevel = touchBands.findLastIndex(({ above_K }) => T_K >= above_K);
          const bySurface = touchBands.findIndex(({ id }) => id === bandOf(T_K, surface).id);
          // One degree at 50 °C, where the level is round and the threshold is 51; thick paint gains a little at 60 and 70.
          const edge = [323.15, 333.15, 343.15].some(
            (level) => T_K >= level && T_K < level + (surface === 'metal' ? 2.1 : 4.1),
          );
          if (!edge) expect(bySurface).toBeGreaterThanOrEqual(byLevel);
        },
      ),
    ));
});

describe('contact of thick bodies', () => {
  const steel = effusivity({ conductivity_W_mK: 50, density_kg_m3: 7850, heat_capacity_J_kgK: 490 });

  it('meets between the two, nearer to the one that gives heat faster', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 250, max: 600, noNaN: true }),
        fc.double({ min: 50, max: 2e4, noNaN: true }),
        (T_K, e) => {
          const met = contactTemperature_K({ T_K, effusivity: e }, skin);
          expect(met).toBeGreaterThanOrEqual(Math.min(T_K, skin.T_K) - 1e-9);
          expect(met).toBeLessThanOrEqual(Math.max(T_K, skin.T_K) + 1e-9);
        },
      ),
    ));

  it('puts skin near the temperature of steel, and far from that of wood', () => {
    expect(steel).toBeCloseTo(13_870, -2);
    expect(contactTemperature_K({ T_K: 353, effusivity: steel }, skin)).toBeGreaterThan(348);
    expect(contactTemperature_K({ T_K: 353, effusivity: 400 }, skin)).toBeLessThan(320);
  });
});
