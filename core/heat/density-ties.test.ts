import { expect, it } from 'vitest';
import { sampleDoubt } from '../doubt/sample.ts';
import { findMaterial } from '../materials/catalogue.ts';
import { exactly } from '../materials/spread.ts';
import { densityTie } from './data/density-ties.ts';
import { wallModel } from './wall-question.ts';

const wall = (id: string) =>
  wallModel({
    layers: [{ material: findMaterial(id), thickness_m: 0.05 }],
    bore_m: 0.25,
    height_m: 0.3,
    hot_K: exactly(1173),
    ramp_s: 1800,
    hold_s: 1800,
    lid_off_s: 0,
    lid: [],
    floor: [],
    vent_radius_m: 0.04,
    shell_m: 0.001,
    emissivity: exactly(0.8),
    wind_m_s: exactly(0),
    air_K: exactly(293),
  });

it('ties bodies upwards, wools downwards, and leaves loose fill and steel apart', () => {
  for (const id of ['clay-sand-lining', 'dense-castable', 'insulating-brick-23', 'fireclay-brick', 'vermiculite-board'])
    expect(densityTie(findMaterial(id))!.rank, id).toBeGreaterThan(0);
  for (const id of ['fibre-blanket', 'fibre-board', 'mineral-wool'])
    expect(densityTie(findMaterial(id))!.rank, id).toBeLessThan(0);
  for (const id of ['vermiculite', 'perlite', 'mild-steel']) expect(densityTie(findMaterial(id)), id).toBeUndefined();
});

it('names inputs that the wall has, and widens what a dense conductor soaks up', () => {
  const { inputs, together } = wall('clay-sand-lining');
  expect(together).toHaveLength(1);
  for (const { input, goesWith } of together) {
    expect(Object.keys(inputs)).toContain(input);
    expect(Object.keys(inputs)).toContain(goesWith);
  }
  const [{ input, goesWith }] = together as [(typeof together)[number]];
  const soaked = (tied: typeof together) => {
    const { ranges } = sampleDoubt({
      inputs: { [input]: inputs[input]!, [goesWith]: inputs[goesWith]! },
      together: tied,
      model: (x) => ({ root: Math.sqrt((2 + x[input]!) * x[goesWith]!) }),
    });
    return ranges.root!.high - ranges.root!.low;
  };
  expect(soaked(together)).toBeGreaterThan(soaked([]));
});
