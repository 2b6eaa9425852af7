import { Counter, collectDefaultMetrics, Histogram, Registry } from 'prom-client';

interface Told {
  readonly kind: string;
  readonly command: string;
  readonly outcome: string;
  readonly took_s: number;
}

/** What the program counts, without a word of what anybody asked. */
export function createMetrics() {
  const registry = new Registry();
  collectDefaultMetrics({ register: registry });
  const asked = new Counter({
    name: 'teemer_interactions_total',
    help: 'Interactions by platform, kind, command and how they ended',
    labelNames: ['platform', 'kind', 'command', 'outcome'],
    registers: [registry],
  });
  const took = new Histogram({
    name: 'teemer_interaction_seconds',
    help: 'Time from an interaction to its last answer',
    labelNames: ['platform', 'kind'],
    buckets: [0.005, 0.02, 0.05, 0.1, 0.25, 0.5, 1, 1.5, 3, 10, 30],
    registers: [registry],
  });
  return {
    registry,
    tell(platform: string, { kind, command, outcome, took_s }: Told): void {
      asked.inc({ platform, kind, command, outcome });
      took.observe({ platform, kind }, took_s);
    },
  };
}

export type Metrics = ReturnType<typeof createMetrics>;
