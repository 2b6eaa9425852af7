import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AskError } from '../ask-error.ts';
import { findFuel } from '../fire/fuel/fuel.ts';
import { findPour } from '../materials/catalogue.ts';
import { type Burn, burned } from './log-burn.ts';

const charcoal = findFuel('lump charcoal');
const aluminium = findPour('aluminium');
const burn = (more: Partial<Burn> = {}): Burn => ({
  fuel: charcoal,
  fuel_kg: 3.2,
  melted: { metal: aluminium, mass_kg: 2 },
  melts: 1,
  ...more,
});

describe('a burn', () => {
  it('closes: heat of the metal over heat of the fuel, whatever the amounts', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 50, noNaN: true }),
        fc.double({ min: 0.05, max: 5, noNaN: true }),
        (fuel_kg, mass_kg) => {
          const found = burned(burn({ fuel_kg, melted: { metal: aluminium, mass_kg } }));
          expect(found.efficiency!.value * found.fuel_J).toBeCloseTo(found.metal_J, 3);
          expect(found.fuel_per_metal! * mass_kg).toBeCloseTo(fuel_kg, 9);
        },
      ),
      { numRuns: 30 },
    );
  });

  it('twice the fuel halves it, twice the metal doubles it, hotter metal makes more of it', () => {
    const { value } = burned(burn()).efficiency!;
    expect(burned(burn({ fuel_kg: 6.4 })).efficiency!.value).toBeCloseTo(value / 2, 12);
    expect(burned(burn({ melted: { metal: aluminium, mass_kg: 4 } })).efficiency!.value).toBeCloseTo(2 * value, 12);
    const at = (pour_K: number) => burned(burn({ melted: { metal: aluminium, mass_kg: 2, pour_K } })).efficiency!.value;
    expect(at(1030)).toBeGreaterThan(at(980));
  });

  it('has a range that holds its value, narrower where the pour was measured', () => {
    const [guessed, measured] = [
      burned(burn()),
      burned(burn({ melted: { metal: aluminium, mass_kg: 2, pour_K: 1000 } })),
    ];
    for (const { efficiency } of [guessed, measured]) {
      expect(efficiency!.range.low).toBeLessThan(efficiency!.value);
      expect(efficiency!.range.high).toBeGreaterThan(efficiency!.value);
    }
    const width = ({ efficiency }: typeof guessed) =>
      (efficiency!.range.high - efficiency!.range.low) / efficiency!.value;
    expect(width(measured)).toBeLessThan(width(guessed));
  });

  it('without metal has a power and no efficiency', () => {
    const { melted: _, ...empty } = burn({ time_s: 3000 });
    const found = burned(empty);
    expect(found.efficiency).toBeUndefined();
    expect(found.fuel_per_metal).toBeUndefined();
    expect(found.power_W! * 3000).toBeCloseTo(found.fuel_J, 6);
  });

  it('that gives the metal more than its fuel held is refused, with the fuel it would have taken', () => {
    try {
      burned(burn({ fuel_kg: 0.05 }));
    } catch (error) {
      expect(error).toBeInstanceOf(AskError);
      const { code, what, example, option } = error as AskError;
      expect({ code, option }).toEqual({ code: 'impossible', option: 'fuel' });
      expect(what).toMatch(/efficiency of 1\d\d %/);
      const fuel_kg = Number(/^([\d.]+) kg lump charcoal$/.exec(example)![1]);
      expect(burned(burn({ fuel_kg })).efficiency!.value).toBeLessThan(0.25);
      return;
    }
    expect.fail('this should be refused');
  });

  it('one melt from cold is held against such melts, several against several', () => {
    expect(burned(burn()).told.high).toBeLessThan(burned(burn({ melts: 3 })).told.high);
  });

  it('tells the numbers that its steps give', () => {
    const found = burned(burn({ time_s: 3000 }));
    const gives = Object.assign({}, ...found.steps().map((step) => step.gives));
    expect(gives).toMatchObject({
      heat_of_the_fuel_J: found.fuel_J,
      heat_of_the_metal_J: found.metal_J,
      efficiency: found.efficiency!.value,
      power_W: found.power_W,
    });
  });
});
