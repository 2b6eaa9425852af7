import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { Later, Limited } from './later.ts';
import { createPace } from './paced.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** So many at once, then one every so often; it says how long that is. */
function homeserver({ burst, every_s }: { burst: number; every_s: number }) {
  let free = burst;
  let next_ms = 0;
  const taken: { what: string; at_s: number }[] = [];
  let refused = 0;
  const began = Date.now();
  return {
    taken,
    refused: () => refused,
    take: async (what: string) => {
      await new Promise((resolve) => setTimeout(resolve, 10));
      if (free > 0) free -= 1;
      else if (Date.now() < next_ms) {
        refused += 1;
        throw new Limited('too much at once', (next_ms - Date.now()) / 1000);
      }
      next_ms = Date.now() + every_s * 1000;
      taken.push({ what, at_s: (Date.now() - began) / 1000 });
    },
  };
}

describe('a homeserver that takes so much and no more', () => {
  test('gets all of it in order, and is asked again once for each it takes', async () => {
    const { taken, refused, take } = homeserver({ burst: 3, every_s: 5 });
    const paced = createPace();
    const names = Array.from({ length: 12 }, (_, at) => String(at));
    for (const name of names.slice(0, 8)) void paced(() => take(name));
    await vi.advanceTimersByTimeAsync(1000);
    expect(paced.isHeldBack()).toBe(true);
    for (const name of names.slice(8)) void paced(() => take(name));
    await vi.advanceTimersByTimeAsync(100_000);
    expect(taken.map(({ what }) => what)).toEqual(names);
    expect(taken.at(-1)!.at_s).toBeCloseTo(9 * 5, 0);
    // Five that were under way when it became too much; then each of the nine but the first once, when the one before it was through.
    expect(refused()).toBe(5 + 8);
    expect(paced.isHeldBack()).toBe(false);
  });

  test('what fails otherwise holds up nobody', async () => {
    const { take, taken } = homeserver({ burst: 1, every_s: 5 });
    const paced = createPace();
    void paced(() => take('1'));
    void paced(() => take('2'));
    await vi.advanceTimersByTimeAsync(100);
    const away = expect(paced(() => Promise.reject(new Later('away')))).rejects.toThrow('away');
    void paced(() => take('3'));
    await vi.advanceTimersByTimeAsync(30_000);
    await away;
    expect(taken.map(({ what }) => what)).toEqual(['1', '2', '3']);
  });
});
