import type { Migration } from '../migrate.ts';
import { memory } from './0001-memory.ts';
import { delivery } from './0002-delivery.ts';
import { weeks } from './0003-weeks.ts';

/** In order; the number of a schema is how many of them it has been through. Never edited once released, only added to. */
export const migrations: readonly Migration[] = [memory, delivery, weeks];
