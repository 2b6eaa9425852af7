import type { Temporal } from 'temporal-polyfill';

/** Dates in zones. Loaded at the first question about a time: most are about none. */
export const temporal = async (): Promise<typeof Temporal> => (await import('temporal-polyfill')).Temporal;
