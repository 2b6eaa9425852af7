import { datum, MEMORY } from '../../materials/data/make.ts';
import type { Wind } from '../wind.ts';

/** At the height of a furnace, not of a weather mast. */
export const windData = [
  {
    id: 'indoors',
    name: 'indoors',
    aliases: ['still', 'none', 'no wind', 'inside', 'sheltered'],
    speed_m_s: datum(0, 0, 0.2, MEMORY, 'Draughts of a shed.'),
  },
  {
    id: 'calm',
    name: 'calm',
    aliases: ['outdoors calm', 'light air'],
    speed_m_s: datum(0, 0.3, 1, MEMORY, 'Smoke drifts.'),
  },
  {
    id: 'breezy',
    name: 'breezy',
    aliases: ['breeze', 'light breeze', 'outdoors'],
    speed_m_s: datum(1.5, 3, 5, MEMORY, 'Leaves move.'),
  },
  {
    id: 'windy',
    name: 'windy',
    aliases: ['wind', 'strong wind'],
    speed_m_s: datum(4, 6, 10, MEMORY, 'Small branches move; no weather for a fire.'),
  },
] as const satisfies readonly Wind[];
