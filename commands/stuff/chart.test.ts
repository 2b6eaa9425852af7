import { describe, expect, it } from 'vitest';
import { findMaterial, materials } from '../../core/materials/catalogue.ts';
import { conductivityChart } from './chart.ts';

const chartOf = (...names: string[]) => conductivityChart(names.map(findMaterial), 'metric').chart!;

describe('chart of conductivity', () => {
  it('has one curve and one band for each material, of one name and within it', () => {
    const [panel] = chartOf('vermiculite', 'perlite').panels;
    expect(panel!.series.map(({ name }) => name)).toEqual(panel!.bands!.map(({ name }) => name));
    for (const [i, { points }] of panel!.series.entries()) {
      for (const [row, [T_K, k]] of points.entries()) {
        const [bandT_K, low, high] = panel!.bands![i]!.points[row]!;
        expect(bandT_K).toBe(T_K);
        expect(low).toBeLessThanOrEqual(k);
        expect(high).toBeGreaterThanOrEqual(k);
      }
    }
  });

  it('marks the adverse end of a service limit that lies on the curve', () => {
    expect(chartOf('perlite').panels[0]!.lines).toEqual([{ name: 'limit 650 °C', at: 923.15, axis: 'x' }]);
  });

  it('says in words what it shows, with its numbers', () => {
    expect(chartOf('vermiculite').alt).toMatch(
      /conducts 0\.065 W\/\(m K\) \(0\.060 to 0\.080\) at 20 °C and .* at 1000 °C/,
    );
  });

  it('is there for every material with a tabulated curve, and for no other', () => {
    for (const material of materials) {
      const rows = material.conductivity_W_mK?.T_K.length ?? 0;
      expect(conductivityChart([material], 'US').chart !== undefined, material.id).toBe(rows > 1);
    }
  });
});
