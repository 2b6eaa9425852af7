import type { Schedule } from '../schedule.ts';
import { castable } from './schedules-castable.ts';
import { others } from './schedules-other.ts';
import { rammed } from './schedules-rammed.ts';

export const schedules: readonly Schedule[] = Object.freeze([...rammed, ...castable, ...others]);
