import { describe, expect, it } from 'vitest';
import { airDrying } from '../../core/dry/air-drying.ts';
import { exchanges } from '../../core/dry/data/weather.ts';
import { evaporating } from '../../core/dry/evaporation.ts';
import { sheet } from '../../core/dry/sheet.ts';
import { boiling_K, steamPressure_Pa } from '../../core/dry/steam.ts';
import { dryingHeat_J } from '../../core/dry/water.ts';
import { librariesOf, stored } from '../reference/stored.ts';
import { outside } from './outside.ts';

type Inputs = Readonly<Record<string, number | string>>;
const reference = stored<Inputs>('dry');
const casesOf = (start: string) => reference.cases.filter(({ id }) => id.startsWith(start));
const source = librariesOf(reference);

function hold(ours: (inputs: Record<string, number>) => number, unit: string, quantity: string) {
  return ({ id, inputs, expected, tolerance, why }: (typeof reference.cases)[number]) =>
    outside({
      subject: id,
      quantity,
      ours: ours(inputs as Record<string, number>),
      theirs: expected,
      unit,
      source,
      tolerance,
      reason: why,
    });
}

describe('steam over water', () => {
  const standard = 'IAPWS R7-97(2012), tables 35 and 36, from memory';
  const reason = 'the standard prints nine digits';

  it.each([
    [300, 0.353658941e4],
    [500, 0.263889776e7],
    [600, 0.123443146e8],
  ])('at %d K is what the standard gives to check a program by', (water_K, theirs) =>
    outside({
      subject: `saturation pressure at ${water_K} K`,
      quantity: 'pressure',
      ours: steamPressure_Pa({ water_K }),
      theirs,
      unit: 'Pa',
      source: standard,
      tolerance: 5e-9 * theirs,
      reason,
    }),
  );

  it.each([
    [1e5, 0.372755919e3],
    [1e6, 0.453035632e3],
    [1e7, 0.584149488e3],
  ])('boils at the temperature the standard gives for %d Pa', (pressure_Pa, theirs) =>
    outside({
      subject: `saturation temperature at ${pressure_Pa / 1e6} MPa`,
      quantity: 'temperature',
      ours: boiling_K({ pressure_Pa }),
      theirs,
      unit: 'K',
      source: standard,
      tolerance: 5e-9 * theirs,
      reason,
    }),
  );

  it.each(casesOf('steam pressure'))(
    '$id',
    hold(({ water_K }) => steamPressure_Pa({ water_K: water_K! }), 'Pa', 'pressure'),
  );
});

describe('a wet face that does not radiate, beside a wet bulb', () => {
  it.each(casesOf('wet bulb'))(
    '$id',
    hold(
      ({ air_K, humidity }) =>
        evaporating({ air_K: air_K!, humidity: humidity!, exchange_W_m2K: 20, sun_W_m2: 0, radiates: false }).face_K,
      'K',
      'temperature',
    ),
  );
});

describe('a drying sheet', () => {
  it.each(casesOf('sheet'))(
    '$id',
    hold(({ biot, fourier }) => sheet({ biot: biot! }).left(fourier!), '1', 'share left'),
  );

  it.each([
    [0.01, 0.0998],
    [0.1, 0.3111],
    [1, 0.8603],
    [10, 1.4289],
    [100, 1.5552],
  ])('has the tabled first root for Bi %d', (biot, theirs) =>
    outside({
      subject: `β tan β = ${biot}`,
      quantity: 'first root',
      ours: sheet({ biot }).first_root,
      theirs,
      unit: '1',
      source: 'Carslaw and Jaeger, Conduction of Heat in Solids, appendix IV, table I, from memory',
      tolerance: 5e-5,
      reason: 'the table prints four decimals',
    }),
  );

  it('is half dry when the textbook says, its face dry at once', () =>
    outside({
      subject: 'sheet of thickness L, both faces held dry',
      quantity: 'D·t/L² at half dry',
      ours: sheet({ biot: 1e6 }).whenLeft(0.5) / 4,
      theirs: 0.049,
      unit: '1',
      source: 'Crank 1975, equation 10.15 (half time 0.049 L²/D), from memory',
      tolerance: 5e-4,
      reason: 'the book prints two digits',
    }));
});

describe('a lining in air, the whole way', () => {
  it.each(casesOf('air-dry'))(
    '$id',
    hold(
      (inputs) => {
        const air = { air_K: 293.15, humidity: 0.5, exchange_W_m2K: 10, sun_W_m2: 0 };
        return (
          airDrying({
            ...air,
            thickness_m: inputs.thickness_m!,
            open_sides: inputs.open_sides as 1 | 2,
            dry_kg_m2: inputs.dry_kg_m2!,
            free_kg_m2: inputs.free_kg_m2!,
            diffusivity_m2_s: inputs.diffusivity_m2_s!,
            activation_J_mol: 0,
            access: inputs.loss_of_a_face_kg_m2s! / evaporating(air).water_kg_m2s,
            covered_s: 0,
            until: { left: 0.01, loss_per_day: 0.005 },
          }).time_s / 86_400
        );
      },
      'd',
      'time until air-dry',
    ),
  );
});

describe('the air at a face', () => {
  it.each(casesOf('exchange'))('$id', (one) => {
    const word = exchanges[one.inputs.wind as keyof typeof exchanges];
    hold(() => word.typical, 'W/(m² K)', 'exchange by convection')(one);
    expect(one.expected).toBeGreaterThan(word.low);
    expect(one.expected).toBeLessThan(word.high);
  });
});

describe('the heat to boil water off', () => {
  const steam = stored<{ start_K: number }>('steam');
  it.each(steam.cases.filter(({ id }) => id.startsWith('water: heat from')))('$id', ({ id, inputs, expected }) =>
    outside({
      subject: id,
      quantity: 'heat of one kilogram',
      ours: dryingHeat_J({ water_kg: 1, start_K: inputs.start_K }),
      theirs: expected,
      unit: 'J/kg',
      source: librariesOf(steam),
      tolerance: 0.002 * expected,
      reason: '0.2 %: one mean heat capacity of water, and 100 °C for 99.974 °C',
    }),
  );
});
