import { describe, expect, it } from 'vitest';
import { temperatureAt } from '../../core/heat/transient/crossings.ts';
import { runWall } from '../../core/heat/transient/run-wall.ts';
import { type WallQuestion, wallModel } from '../../core/heat/wall-question.ts';
import { findMaterial } from '../../core/materials/catalogue.ts';
import { celsius } from '../../core/materials/data/make.ts';
import { exactly } from '../../core/materials/spread.ts';
import { outside } from './outside.ts';

/**
 * Trade facts, both "common practice, no source": on its first burn, raised slowly with scrap wood, the bore of a damp
 * clay and sand lining (1.5 in) in loose vermiculite (2 in) came to about 2000 °F while the shell barely felt warm to
 * a hand; and the vessel's own steel lid stays off for about a day after a melt. The pot is 14 in outside and 17 in
 * deep, in a weathered galvanised can.
 */
const practice = 'common practice, no source';
const inch = 0.0254;
const hour = 3600;
const bore_K = celsius((2000 - 32) / 1.8);
const room_K = celsius(20);

/** The words carry no number: from the air's 20 °C to the 44 °C where skin begins to hurt. */
const barelyWarm = { middle: 32, half: 12, reason: 'barely warm: no cooler than the air, no warmer than 44 °C' };

interface Water {
  readonly lining: number;
  readonly fill: number;
}
const dry: Water = { lining: 0, fill: 0 };
/** Rammed at 9 % and not dried; its fill as bought. */
const rammed: Water = { lining: 0.09, fill: 0.05 };
/** The fill has drawn water or stood in the weather: vermiculite holds one to three times its own mass. */
const soaked: Water = { lining: 0.09, fill: 1 };

function pot({ lining, fill }: Water, more: Partial<WallQuestion> = {}) {
  const layer = (id: string, thickness_m: number, water: number) => ({
    material: findMaterial(id),
    thickness_m,
    water,
  });
  const layers = [layer('clay-sand-unfired', 1.5 * inch, lining), layer('vermiculite', 2 * inch, fill)];
  return wallModel({
    layers,
    bore_m: 11 * inch,
    height_m: 17 * inch,
    hot_K: exactly(bore_K),
    ramp_s: hour,
    hold_s: hour,
    lid_off_s: 0,
    lid: [layer('clay-sand-lining', 2 * inch, 0)],
    floor: layers,
    vent_radius_m: 1.5 * inch,
    shell_m: 0.0006,
    emissivity: exactly(0.7),
    wind_m_s: exactly(0.3),
    air_K: exactly(room_K),
    ...more,
  });
}

/** The shell when the bore comes to 2000 °F along a history of (h, °C), and after so many hours at it. */
function shell_C(water: Water, history: readonly (readonly [number, number])[], held_h = 0): number {
  const model = pot(water);
  const points = [[0, room_K] as const, ...history.map(([at_h, degrees]) => [at_h * hour, celsius(degrees)] as const)];
  const reached_s = points.at(-1)![0] + 0.5 * hour;
  const { until_shell_below_K: _, ...input } = model.input(model.typical, { cells: 20, tolerance_dK: 0.3 });
  const run = runWall({
    ...input,
    phases: [
      {
        until_s: reached_s + held_h * hour,
        drive: { kind: 'temperature', points: [...points, [reached_s, bore_K]] },
      },
    ],
  });
  return temperatureAt(run, 'shell', reached_s + held_h * hour) - 273.15;
}

/** Low on scrap wood for two hours, then brought up in half an hour. */
const lowWood = [
  [0.5, 150],
  [2, 150],
] as const;
/** A real fire all along: 400 °C for two hours, then the same. */
const fullWood = [
  [0.5, 400],
  [2, 400],
] as const;
/** A straight line over four hours. */
const straight = [[3.5, 960]] as const;

describe('the first burn of a damp lining in vermiculite', () => {
  it('leaves the shell barely warm when the fire was low until the last half hour', () => {
    outside({
      subject: 'first burn, bore at 2000 °F',
      quantity: 'shell, low wood fire, lining at 9 % and fill at 5 % water',
      ours: shell_C(rammed, lowWood),
      theirs: barelyWarm.middle,
      unit: '°C',
      source: practice,
      tolerance: barelyWarm.half,
      reason: barelyWarm.reason,
    });
  });

  it('is warmer than that without the water, which shows that water holds part of it back', () => {
    expect(shell_C(dry, lowWood)).toBeGreaterThan(44);
    expect(shell_C(soaked, lowWood)).toBeLessThan(shell_C(rammed, lowWood));
  });

  it('does not hold for a fire that heats the wall all along, unless the fill is wet through', () => {
    expect(shell_C(dry, fullWood)).toBeGreaterThan(70);
    expect(shell_C(rammed, fullWood)).toBeGreaterThan(60);
    expect(shell_C(soaked, fullWood)).toBeLessThan(44);
  });

  it('does not hold for 2000 °F raised in a straight line over four hours: the shell is past 90 °C, wet or not', () => {
    for (const water of [dry, rammed, soaked]) expect(shell_C(water, straight)).toBeGreaterThan(90);
    expect(shell_C(dry, straight)).toBeGreaterThan(150);
  });

  it('is time lag and no insulation: held for another hour the same shell burns a hand, held long it passes 170 °C', () => {
    expect(shell_C(rammed, lowWood, 1)).toBeGreaterThan(150);
    expect(shell_C(soaked, lowWood, 1)).toBeGreaterThan(44);
    for (const water of [dry, rammed, soaked]) expect(shell_C(water, lowWood, 8)).toBeGreaterThan(170);
  });
});

describe("the vessel's own steel lid stays off for about a day after a melt", () => {
  const boreAfter_C = (lid_off_s: number, hours: number): number => {
    const model = pot({ lining: 0.015, fill: 0.03 }, { hot_K: exactly(celsius(1000)), lid_off_s });
    const { until_shell_below_K: _, ...input } = model.input(model.typical, { cells: 20, tolerance_dK: 0.3 });
    return temperatureAt(runWall(input), 'face', model.fire_out_s + hours * hour) - 273.15;
  };

  it('agrees: closed by its refractory lid the bore is above 200 °C after a third of a day, cool after a day', () => {
    expect(boreAfter_C(0, 8)).toBeGreaterThan(180);
    expect(boreAfter_C(0, 12)).toBeGreaterThan(100);
    outside({
      subject: 'vessel after a melt',
      quantity: 'bore a day later, closed',
      ours: boreAfter_C(0, 24),
      theirs: barelyWarm.middle,
      unit: '°C',
      source: practice,
      tolerance: barelyWarm.half,
      reason: barelyWarm.reason,
    });
  });

  it('is on the safe side with the bore left open: 12 hours do then', () => {
    expect(boreAfter_C(Number.POSITIVE_INFINITY, 6)).toBeGreaterThan(100);
    expect(boreAfter_C(Number.POSITIVE_INFINITY, 12)).toBeLessThan(60);
  });
});
