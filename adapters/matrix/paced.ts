import { Limited } from './later.ts';

const usual_s = 2;

/** What a homeserver limits, it limits for the whole account. */
export interface Pace {
  /** Whoever is told to wait stands in line, and the first there asks again when all who were told may. */
  <Value>(ask: () => Promise<Value>): Promise<Value>;
  /** Whether there is a line. */
  isHeldBack(): boolean;
}

/** `ask` throws `Limited` for what the homeserver takes later only. */
export function createPace(): Pace {
  let line: Promise<unknown> | undefined;
  let free_ms = 0;

  function heed(error: unknown): void {
    if (!(error instanceof Limited)) throw error;
    free_ms = Math.max(free_ms, performance.now() + (error.wait_s ?? usual_s) * 1000);
  }

  async function patiently<Value>(ask: () => Promise<Value>): Promise<Value> {
    for (;;) {
      for (let wait_ms = free_ms - performance.now(); wait_ms > 0; wait_ms = free_ms - performance.now()) {
        await new Promise((resolve) => setTimeout(resolve, Math.ceil(wait_ms)));
      }
      try {
        return await ask();
      } catch (error) {
        heed(error);
      }
    }
  }

  function inLine<Value>(ask: () => Promise<Value>): Promise<Value> {
    const mine = (line ?? Promise.resolve()).then(() => patiently(ask));
    const over = mine
      .catch(() => {})
      .then(() => {
        if (line === over) line = undefined;
      });
    line = over;
    return mine;
  }

  const paced = async <Value>(ask: () => Promise<Value>): Promise<Value> => {
    if (line) return inLine(ask);
    try {
      return await ask();
    } catch (error) {
      heed(error);
      return inLine(ask);
    }
  };
  return Object.assign(paced, { isHeldBack: () => line !== undefined });
}
