import type { Source } from './source.ts';

export const practiceSources = [] as const satisfies readonly Source[];
