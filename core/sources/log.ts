import type { Source } from './source.ts';

/** What a log is read by. */
export const logSources = [
  {
    id: 'whitaker-hamill-2002',
    title:
      'Whitaker and Hamill, Ensemble data assimilation without perturbed observations, Monthly Weather Review 130 (2002) 1913: the square-root update',
    opened: 'memory',
    note: 'Held against the conjugate normal update and against numerical integration.',
  },
] as const satisfies readonly Source[];
