import { describe, expect, it } from 'vitest';
import type { AskError } from '../ask-error.ts';
import { pours } from '../materials/catalogue.ts';
import { judgeFitness } from './fitness.ts';

const portland = [
  { material: 'perlite', slot: 'light', parts: 5 },
  { material: 'portland-cement', slot: 'binder', parts: 1 },
] as const;

function refusal(metal: string): string {
  try {
    judgeFitness({ parts: portland, role: 'backup', metal });
  } catch (error) {
    return (error as AskError).what;
  }
  return '';
}

describe('Portland behind a hot face', () => {
  it('is refused for every metal of the catalogue, with the temperature that the wall gets there', () => {
    for (const { id, hot_face_K } of pours) {
      const what = refusal(id);
      const [, behind = ''] = /can get to (\d+) °C/.exec(what) ?? [];
      expect(what).toContain('450 °C');
      // Behind 40 of 100 mm that insulate worse it is cooler than the face, by less than a fifth of its rise.
      expect(Number(behind)).toBeLessThan(hot_face_K.low - 273.15);
      expect(Number(behind)).toBeGreaterThan(20 + 0.8 * (hot_face_K.low - 293.15));
    }
  });

  it('stays in an outer layer', () => {
    expect(judgeFitness({ parts: portland, role: 'outer layer' }).limit_K).toBeGreaterThan(700);
  });
});
