import { describe, expect, it } from 'vitest';
import { findFuel } from '../fire/fuel/fuel.ts';
import { asFired } from '../fire/fuel/fuel-as-fired.ts';
import { dryAshFreeSpread_J_kg } from '../fire/fuel/fuel-spread.ts';
import { breakEvenRatio } from '../fire/fuel/staging.ts';
import { findMaterial } from '../materials/catalogue.ts';
import { exactly } from '../materials/spread.ts';
import { answerBalance } from './balance.ts';
import { type Fire, fireOf, ratioForCo } from './balance-fire.ts';
import { ashRoom_kg, stageMelt, tradeSwitch_K } from './fuel-staging.ts';

const lump = findFuel('lump charcoal');
const briquettes = findFuel('briquettes');
const co = 0.35;
const layer = (name: string, thickness_m: number) => ({ material: findMaterial(name), thickness_m, water: 0 });

const balance = answerBalance(
  {
    wall: {
      layers: [layer('dense-castable', 0.03), layer('fibre-blanket', 0.05)],
      bore_m: 0.25,
      height_m: 0.3,
      hot_K: exactly(1273.15),
      ramp_s: 1,
      hold_s: 0,
      lid_off_s: 180,
      lid: [layer('dense-castable', 0.05)],
      floor: [layer('dense-castable', 0.05)],
      vent_radius_m: 0.035,
      shell_m: 0.001,
      emissivity: exactly(0.9),
      wind_m_s: exactly(0.3),
      air_K: exactly(293.15),
    },
    firing: {
      fuel: lump,
      ash: exactly(lump.ash.typical),
      moisture: lump.moisture.typical,
      dry_J_kg: exactly(dryAshFreeSpread_J_kg(lump).typical),
      air: { co_share: exactly(co) },
      drop_dK: exactly(50),
      rate: { power_W: exactly(20_000) },
    },
    charge: {
      metal_J: exactly(5.6e6),
      crucible_J: exactly(1.6e6),
      crucible_m2: 0.11,
      film_W_m2K: exactly(180),
      start_K: 293.15,
      pour_K: 973.15,
    },
    tuyere_radius_m: 0.019,
    pause_s: 600,
  },
  { ranged: false },
);
const fuel = asFired({ fuel: briquettes });
const cheapFire: Fire = fireOf({ fuel, ratio: ratioForCo(fuel, co), air_K: 293.15, hottest_K: 1273 });
const staged = (cheapPrice: number, ash_limit_kg = 5, better: Fire = balance.fire) =>
  stageMelt(balance, {
    cheap: { fire: cheapFire, price_USD_kg: cheapPrice },
    better: { fire: better, price_USD_kg: 2.5 },
    ash_limit_kg,
  });

describe('a melt with two fuels (physics)', () => {
  it('burns, with the better fuel alone, what the balance burns', () => {
    const { cost_better_USD, staging } = staged(100);
    expect(staging.better_kg / balance.melts.first.fuel_kg).toBeCloseTo(1, 9);
    expect(cost_better_USD / (2.5 * balance.melts.first.fuel_kg)).toBeCloseTo(1, 9);
    expect(staging.cheap_kg).toBe(0);
  });

  it('is never dearer than either fuel alone, nor than the change at 1250 °F', () => {
    for (const price of [0.5, 1, 1.5, 1.8, 2, 2.5]) {
      const { staging, cost_cheap_USD, cost_better_USD, cost_trade_USD } = staged(price);
      expect(staging.cost_USD).toBeLessThanOrEqual(Math.min(cost_cheap_USD, cost_better_USD, cost_trade_USD) + 1e-9);
    }
  });

  it('gives up the cheap fuel where ash is short, and says where it changes', () => {
    const free = staged(1);
    expect(free.staging.better_kg).toBe(0);
    expect(free.switch_K).toBeUndefined();
    const short = staged(1, 0.5 * free.staging.ash_kg);
    expect(short.staging.ash_kg).toBeCloseTo(0.5 * free.staging.ash_kg, 9);
    expect(short.staging.cost_USD).toBeGreaterThan(free.staging.cost_USD);
    expect(short.switch_K).toBeDefined();
  });

  it('has a break-even that hardly moves from cold to full heat', () => {
    const ratios = staged(1).stages.map(breakEvenRatio);
    expect(Math.max(...ratios) - Math.min(...ratios)).toBeLessThan(0.02);
  });

  it('cuts the climb at the trade’s switch, and holds more ash the wider the bore', () => {
    expect(tradeSwitch_K * 1.8 - 459.67).toBeCloseTo(1250, 0);
    expect(ashRoom_kg(0.3)).toBeGreaterThan(ashRoom_kg(0.2));
  });
});
