import { describe, expect, it } from 'vitest';
import { isFact } from '../hazard/facts.ts';
import { findPour, pours } from '../materials/catalogue.ts';
import { sourceOf } from '../sources/sources.ts';
import { elementLoss, zincLoss } from './data/element-loss.ts';
import { fumeLimits } from './data/fume-limits.ts';
import { pots } from './data/pots.ts';
import { scrapForms } from './data/scrap-forms.ts';
import { findForm, meltLoss } from './melt-loss.ts';

const form = (id: string) => findForm(id);
const cases = pours.flatMap((alloy) => scrapForms.map((scrap) => [`${alloy.id}, ${scrap.id}`, alloy, scrap] as const));

describe.each(cases)('loss of %s', (_, alloy, scrap) => {
  it('is part of the charge, in order, and what is left adds up', () => {
    const { lost, elements } = meltLoss({ alloy, form: scrap, cover: undefined });
    expect(lost.low).toBeGreaterThan(0);
    expect(lost.typical).toBeGreaterThanOrEqual(lost.low);
    expect(lost.high).toBeGreaterThanOrEqual(lost.typical);
    expect(lost.high).toBeLessThan(0.6);
    expect(elements.reduce((sum, { share_after }) => sum + share_after, 0)).toBeCloseTo(1, 12);
  });
});

describe('loss', () => {
  it('is less under a cover, for brass, and does not ask about it for aluminium', () => {
    const of = (id: string, cover: boolean) =>
      meltLoss({ alloy: findPour(id), form: form('heavy'), cover }).lost.typical;
    expect(of('brass', true)).toBeLessThan(of('brass', false));
    expect(of('aluminium', true)).toBe(of('aluminium', false));
  });

  it('grows with the surface of the scrap', () => {
    for (const id of ['aluminium', 'brass', 'zinc-alloy', 'bronze']) {
      const of = (scrap: string) => meltLoss({ alloy: findPour(id), form: form(scrap), cover: true }).lost.typical;
      expect(of('heavy')).toBeLessThan(of('castings'));
      expect(of('castings')).toBeLessThan(of('sheet'));
      expect(of('sheet')).toBeLessThan(of('swarf'));
    }
  });

  it('takes zinc out of brass faster than copper', () => {
    const { elements } = meltLoss({ alloy: findPour('brass'), form: form('heavy'), cover: undefined });
    const of = (name: string) => elements.find(({ element }) => element === name)!;
    expect(of('Zn').share_after).toBeLessThan(of('Zn').share);
    expect(of('Cu').share_after).toBeGreaterThan(of('Cu').share);
  });

  it('says the nearest form where one is mistyped', () => {
    expect(() => findForm('swraf')).toThrow(/no form/);
  });
});

describe('data', () => {
  it('cite sources and facts that exist', () => {
    const data = [
      ...Object.values(elementLoss),
      ...Object.values(zincLoss),
      ...scrapForms.flatMap(({ aluminium_loss, surface, bulk }) => [aluminium_loss, surface, bulk]),
      ...pots.flatMap(({ density_kg_m3, heat_capacity_J_kgK }) => [density_kg_m3, heat_capacity_J_kgK]),
      ...fumeLimits,
    ];
    for (const { source } of data) expect(sourceOf(source).id).toBe(source);
    for (const { hazards } of scrapForms) for (const hazard of hazards) expect(isFact(hazard)).toBe(true);
  });

  it('name no form of scrap by two words', () => {
    const words = scrapForms.flatMap((one) => [...new Set([one.id, one.name, ...one.words])]);
    expect(new Set(words).size).toBe(words.length);
  });
});
