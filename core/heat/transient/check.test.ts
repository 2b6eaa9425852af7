import { describe, expect, it } from 'vitest';
import { fill, furnace, lining, steel } from '../../../test/bench/wall-samples.ts';
import { AskError } from '../../ask-error.ts';
import type { WallInput } from '../wall-run.ts';
import { closedBore } from './drives.ts';
import { runWall } from './run-wall.ts';

const programme = (...points: [number, number][]): Partial<WallInput> => ({
  phases: [{ until_s: 600, drive: { kind: 'temperature', points } }],
});

describe('what cannot be is refused with the number that says so', () => {
  it.each<[string, Partial<WallInput>, RegExp]>([
    ['no thickness', { layers: [lining(), fill({ thickness_m: 0 })] }, /layer 2 is 0 m thick/],
    ['less than none', { layers: [lining({ thickness_m: -0.02 })] }, /layer 1 is -0.02 m thick/],
    ['no number', { layers: [lining({ thickness_m: Number.NaN })] }, /NaN m thick/],
    ['no layers', { layers: [] }, /0 layers/],
    ['no weight', { layers: [lining({ density_kg_m3: 0 })] }, /0 kg\/m³/],
    ['water below none', { layers: [lining({ water: -0.1 })] }, /-0.1 of its dry mass/],
    ['no bore', { inner_radius_m: 0 }, /radius of 0 m/],
    ['steel of no thickness', { shell: { ...steel, thickness_m: 0 } }, /shell 0 m thick/],
    ['a start below absolute zero', { start_K: -3 }, /starts at -3 K/],
    ['a face at absolute zero', programme([0, 300], [60, 0]), /at 0 K/],
    ['a face that is no number', programme([0, Number.NaN]), /NaN K/],
    ['a programme that runs back', programme([60, 300], [0, 400]), /at 0 s after one at 60 s/],
    ['an empty programme', programme(), /0 points/],
    ['no phases', { phases: [] }, /0 phases/],
    [
      'phases that do not rise',
      { phases: [60, 60].map((until_s) => ({ until_s, drive: closedBore() })) },
      /ends at 60 s, the one before it at 60 s/,
    ],
  ])('%s', (_, change, what) => {
    expect(() => runWall(furnace(change))).toThrow(AskError);
    expect(() => runWall(furnace(change))).toThrow(what);
  });

  it('a table of a material that is wrong is a fault of the program', () => {
    const broken = lining({ conductivity: { T_K: [300, 300], k_W_mK: [1, 2] } });
    expect(() => runWall(furnace({ layers: [broken] }))).toThrow(/conductivity of layer 1/);
    expect(() => runWall(furnace({ layers: [broken] }))).not.toThrow(AskError);
  });

  it('a heat flux that is no number does not run on for ever', () => {
    const broken = furnace({ phases: [{ until_s: 60, drive: { kind: 'flux', into_W_m2: () => Number.NaN } }] });
    expect(() => runWall(broken)).toThrow(/got stuck at 0 s/);
  });

  it('a face colder than the wall is answered: it cools', () => {
    const run = runWall(furnace({ start_K: 400, ...programme([0, 300]) }));
    expect(run.in_J_m2.at(-1)!).toBeLessThan(0);
    expect(run.face_K.at(-1)!).toBe(300);
  });
});
