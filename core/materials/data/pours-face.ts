import { degrees, MEMORY } from './make.ts';

/** Hot face round a pot, from the usual pouring temperature in °C. */
export const faceFor = (pour_C: number) =>
  degrees(
    pour_C + 100,
    pour_C + 150,
    pour_C + 250,
    MEMORY,
    'Pour plus 100–200 K, judged; near a tuyere or flame 100–300 K more.',
  );
