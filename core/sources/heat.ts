import type { Source } from './source.ts';

export const heatSources = [] as const satisfies readonly Source[];
