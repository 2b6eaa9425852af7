/** The time that deadlines of interactions are kept by. */
export interface Clock {
  now(): number;
  /** Runs `then` once `ms` have passed; the answer cancels it. */
  after(ms: number, then: () => void): () => void;
}

export const realClock: Clock = {
  now: () => Date.now(),
  after(ms, then) {
    const timer = setTimeout(then, ms);
    timer.unref();
    return () => clearTimeout(timer);
  },
};

export interface ManualClock extends Clock {
  /** Moves the time on and runs what has become due, in its order. */
  advance(ms: number): void;
}

/** A clock that stands still until it is told, so that fifteen minutes take no time. */
export function manualClock(start = Date.now()): ManualClock {
  let time = start;
  const waiting = new Set<{ readonly due: number; readonly then: () => void }>();
  return {
    now: () => time,
    after(ms, then) {
      const entry = { due: time + ms, then };
      waiting.add(entry);
      return () => waiting.delete(entry);
    },
    advance(ms) {
      const end = time + ms;
      for (;;) {
        const [next] = [...waiting].filter((entry) => entry.due <= end).toSorted((a, b) => a.due - b.due);
        if (next === undefined) break;
        waiting.delete(next);
        time = next.due;
        next.then();
      }
      time = end;
    },
  };
}
