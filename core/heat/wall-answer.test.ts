import { beforeAll, describe, expect, it } from 'vitest';
import { findMaterial } from '../materials/catalogue.ts';
import { celsius } from '../materials/data/make.ts';
import { exactly } from '../materials/spread.ts';
import { answerWall, type WallAnswer } from './wall-answer.ts';
import type { AskedLayer } from './wall-layers.ts';
import type { WallQuestion } from './wall-question.ts';

const layer = (id: string, thickness_m: number, water?: number): AskedLayer => ({
  material: findMaterial(id),
  thickness_m,
  ...(water === undefined ? {} : { water }),
});
const layers = [layer('clay-sand-lining', 0.04, 0), layer('vermiculite', 0.06, 0)];
const plain: WallQuestion = {
  layers,
  bore_m: 0.25,
  height_m: 0.3,
  hot_K: { low: celsius(800), typical: celsius(850), high: celsius(900) },
  ramp_s: 2400,
  hold_s: 3600,
  lid_off_s: 0,
  lid: [layer('clay-sand-lining', 0.05)],
  floor: layers,
  vent_radius_m: 0.04,
  shell_m: 0.001,
  emissivity: { low: 0.8, typical: 0.9, high: 0.96 },
  wind_m_s: { low: 0, typical: 0.3, high: 1 },
  air_K: { low: celsius(12), typical: celsius(20), high: celsius(28) },
};
const typical = (more: Partial<WallQuestion> = {}) => answerWall({ ...plain, ...more }, { ranged: false });

describe('one firing of a wall (physics)', () => {
  it('puts into the wall what it stores and what it loses', () => {
    const { firing, run } = typical();
    expect(firing.stored_J + firing.passed_J).toBeCloseTo(firing.in_J, 3);
    expect(run.imbalance).toBeLessThan(1e-3);
    expect(firing.peak_power_W).toBeGreaterThan(firing.ramp_power_W);
  });

  it('gets a cooler and later shell behind more backing, and costs more heat up to the shell', () => {
    const thin = typical();
    const thick = typical({ layers: [layers[0]!, layer('vermiculite', 0.06 + 0.0254, 0)] });
    expect(thick.firing.shell_peak_K).toBeLessThan(thin.firing.shell_peak_K - 5);
    expect(thick.firing.shell_peak_after_s).toBeGreaterThan(thin.firing.shell_peak_after_s);
    expect(thin.another_inch.shell_peak_K).toBeCloseTo(thick.firing.shell_peak_K, 6);
  });

  it('cools sooner with the lid off, in between when it is put on later, and never peaks hotter for it', () => {
    const cool = [0, 1800, Number.POSITIVE_INFINITY].map((lid_off_s) => typical({ lid_off_s }).firing);
    const times = cool.map(({ cool_s }) => cool_s[0]!);
    expect(times[1]).toBeLessThan(times[0]!);
    expect(times[2]).toBeLessThan(times[1]!);
    expect(cool[2]!.shell_peak_K).toBeLessThanOrEqual(cool[0]!.shell_peak_K + 0.3);
  });

  it('falls through 70, 60, 50, 43 °C in that order', () => {
    const { cool_s } = typical().firing;
    expect(cool_s).toEqual(cool_s.toSorted((a, b) => b - a));
    expect(cool_s.at(-1)).toBeGreaterThan(0);
  });

  it('takes more heat and shows a cooler shell when the fire goes out, when it has to be dried first', () => {
    const dry = typical().firing;
    const damp = typical({ layers: [layer('clay-sand-lining', 0.04, 0.08), layers[1]!] }).firing;
    const water_kg = 0.08 * 1850 * Math.PI * (0.165 ** 2 - 0.125 ** 2) * 0.3;
    expect(damp.in_J - dry.in_J).toBeGreaterThan(0.7 * water_kg * 2.59e6);
    expect(damp.in_J - dry.in_J).toBeLessThan(1.1 * water_kg * 2.59e6);
    expect(damp.shell_at_out_K).toBeLessThan(dry.shell_at_out_K);
  });

  it('gives both bounds of what the steam of a damp lining does to the shell, and none for a dry one', () => {
    expect(typical().drying).toBeUndefined();
    const { drying, model } = typical({ layers: [layer('clay-sand-lining', 0.04, 0.08), layers[1]!] });
    expect(drying?.dried).toBe(true);
    expect(drying!.dry_s).toBeLessThan(model.fire_out_s);
    expect(drying!.condensing_K).toBeGreaterThan(drying!.shell_K + 30);
    expect(drying!.condensing_K).toBeLessThanOrEqual(celsius(100));
  });

  it('comes to what the steady paths say of the side when it is held long', () => {
    const { firing, paths } = typical({ hold_s: 40 * 3600 });
    const side_W = paths.paths.find(({ path }) => path === 'side')?.loss_W ?? 0;
    // The steady wall holds k at the ends of its table, the transient one carries it on: nothing here is beyond it.
    expect(firing.shell_loss_W / side_W).toBeGreaterThan(0.99);
    expect(firing.shell_loss_W / side_W).toBeLessThan(1.01);
    expect(firing.shell_peak_after_s).toBe(0);
  });

  it('stores less than a fifth in a fibre wall of what a rammed one stores', () => {
    const fibre = typical({ layers: [layer('fibre-blanket', 0.05)] }).firing;
    expect(fibre.stored_J / typical().firing.stored_J).toBeLessThan(1 / 5);
  });
});

describe('its range', () => {
  let ranged: WallAnswer;
  beforeAll(() => {
    ranged = answerWall(plain);
  });

  it('holds the typical answer, and names what moves the shell most', () => {
    const { ranges, firing, doubts } = ranged;
    expect(ranges.shell_peak!.low).toBeLessThan(firing.shell_peak_K);
    expect(ranges.shell_peak!.high).toBeGreaterThan(firing.shell_peak_K);
    expect(ranges.in!.low).toBeLessThan(firing.in_J);
    expect(ranges.in!.high).toBeGreaterThan(firing.in_J);
    expect(doubts[0]?.input).toContain('vermiculite conducts');
    const shares = doubts.map(({ share }) => share);
    expect(shares).toEqual(shares.toSorted((a, b) => b - a));
    // Independent inputs share out the variance; twenty slices of 500 samples add a few hundredths of noise each.
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeGreaterThan(0.9);
  });

  it('is the same every time', () => {
    expect(answerWall(plain).ranges).toEqual(ranged.ranges);
  });

  it('draws bands round the curves, over the same times', () => {
    const { shell, interfaces, bore, time_s } = ranged.curves;
    for (const { T_K, low_K, high_K } of [bore, shell, ...interfaces]) {
      expect(T_K).toHaveLength(time_s.length);
      const outside = T_K.filter((one, at) => one < low_K![at]! - 2 || one > high_K![at]! + 2);
      expect(outside).toHaveLength(0);
    }
    const hottest = Math.max(...shell.high_K!);
    expect(Math.abs(hottest - ranged.ranges.shell_peak!.high)).toBeLessThan(5);
  });

  it('narrows to nothing but the materials when all else is known', () => {
    const known = answerWall({
      ...plain,
      hot_K: exactly(celsius(850)),
      emissivity: exactly(0.9),
      wind_m_s: exactly(0),
      air_K: exactly(celsius(20)),
    });
    const width = ({ ranges }: WallAnswer) => ranges.shell_peak!.high - ranges.shell_peak!.low;
    expect(width(known)).toBeLessThan(width(ranged));
  });

  it('is wider where the bore may have been hot sooner or later than said', () => {
    // After an hour's hold the heat hardly tells when it began: of a short firing it does.
    const brief = { ...plain, hold_s: 600 };
    const history = answerWall({ ...brief, ramp_doubt: 0.5 });
    const width = ({ ranges }: WallAnswer) => ranges.in!.high - ranges.in!.low;
    expect(width(history)).toBeGreaterThan(width(answerWall(brief)));
    expect(history.doubts.map(({ input }) => input)).toContain('how soon the bore is hot');
    expect(history.ranges.shell_peak!.high).toBeGreaterThan(history.firing.shell_peak_K);
  });

  it('is left out where a material is past its limit, and where its conductivity is not known', () => {
    const perlite = answerWall({
      ...plain,
      layers: [layer('dense-castable', 0.025), layer('perlite', 0.06)],
      hot_K: exactly(celsius(1000)),
    });
    expect(perlite.outside_model[0]?.why).toBe('gone');
    expect(perlite.ranges).toEqual({});
    expect(perlite.curves.shell.low_K).toBeUndefined();
    // Mineral wool is known to 600 °C, and its limit ends at 750 °C.
    const wool = answerWall({ ...plain, layers: [layer('mineral-wool', 0.05)], hot_K: exactly(celsius(700)) });
    expect(wool.outside_model[0]?.why).toBe('unknown');
  });

  it('judges limits by their adverse end', () => {
    const [lining, fill] = ranged.layers;
    expect(lining?.exceeds).toBe(false);
    expect(fill?.adverse_K).toBe(ranged.interface_ranges[0]?.high);
    expect(fill?.limit_K).toBe(findMaterial('vermiculite').properties.service_limit_K?.low);
  });
});
