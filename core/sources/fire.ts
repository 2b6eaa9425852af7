import type { Source } from './source.ts';

export const fireSources = [] as const satisfies readonly Source[];
