import { AskError } from '../ask-error.ts';
import type { Step, WithSteps } from '../step.ts';
import { airAt } from './air.ts';
import {
  crossedCylinderNusselt,
  downNusselt,
  plateAlongNusselt,
  upLaminarNusselt,
  upTurbulentNusselt,
  verticalPlateNusselt,
} from './outside-film.ts';

/** W/(m² K⁴), CODATA 2018. */
export const STEFAN_BOLTZMANN = 5.670374419e-8;
/** m/s², standard. */
const GRAVITY = 9.80665;

/** A surface of the furnace and the place it stands in. */
export interface Outside {
  readonly face: 'vertical' | 'up' | 'down';
  /** Height of a vertical face; area over perimeter of a horizontal one (a quarter of a disk's diameter). */
  readonly length_m: number;
  readonly air_K: number;
  /** What it sees; the air's temperature where not given. */
  readonly surroundings_K?: number;
  readonly emissivity: number;
  /** 0 is still. */
  readonly wind_m_s: number;
  /** For wind across a cylinder; without it wind goes along a plate. */
  readonly diameter_m?: number;
  readonly pressure_Pa?: number;
  /** Sun taken up, W per m² of this surface. */
  readonly sun_W_m2?: number;
}

/**
 * Still air at one film temperature: `a`, `b` of
 * vertical h = (a + b ΔT^⅙)², up h = max(a ΔT^¼, b ΔT^⅓), down h = a ΔT^¼, all W/(m² K).
 * `wind` is the forced film alone.
 */
interface Film {
  readonly a: number;
  readonly b: number;
  readonly wind: number;
}

type Mode = 'vertical' | 'up' | 'down';

function filmAt({ length_m, wind_m_s, diameter_m, face, pressure_Pa }: Outside, film_K: number, mode: Mode): Film {
  const { kinematic_viscosity_m2_s: nu, conductivity_W_mK: k, prandtl } = airAt(film_K, pressure_Pa);
  const overLength = k / length_m;
  const rayleigh_per_K = (GRAVITY * length_m ** 3 * prandtl) / (nu ** 2 * film_K);
  const wind = windFilm();
  switch (mode) {
    case 'vertical': {
      const a = Math.sqrt(overLength * verticalPlateNusselt({ rayleigh: 0, prandtl }));
      return { a, b: Math.sqrt(overLength * verticalPlateNusselt({ rayleigh: rayleigh_per_K, prandtl })) - a, wind };
    }
    case 'up':
      return {
        a: overLength * upLaminarNusselt(rayleigh_per_K),
        b: overLength * upTurbulentNusselt(rayleigh_per_K),
        wind,
      };
    case 'down':
      return { a: overLength * downNusselt(rayleigh_per_K), b: 0, wind };
  }

  function windFilm(): number {
    if (wind_m_s === 0) return 0;
    // A disk is four times its area over perimeter across: that is the way the wind goes.
    const along_m = diameter_m ?? (face === 'vertical' ? length_m : 4 * length_m);
    const reynolds = (wind_m_s * along_m) / nu;
    const nusselt =
      face === 'vertical' && diameter_m !== undefined
        ? crossedCylinderNusselt({ reynolds, prandtl })
        : plateAlongNusselt({ reynolds, prandtl });
    return (nusselt * k) / along_m;
  }
}

/** A face colder than the air is the hot one turned over. */
const modeOf = (face: Outside['face'], rise_dK: number): Mode =>
  face === 'vertical' || rise_dK >= 0 ? face : face === 'up' ? 'down' : 'up';

/** The two branches of `up` meet where they are equal (Ra 4.7e6, not 1e7), so that the flux has no jump. */
function stillFilm(mode: Mode, a: number, b: number, size_dK: number): number {
  if (mode === 'vertical') return (a + b * Math.sqrt(Math.cbrt(size_dK))) ** 2;
  const quarter = a * Math.sqrt(Math.sqrt(size_dK));
  return mode === 'down' ? quarter : Math.max(quarter, b * Math.cbrt(size_dK));
}

/** Free and forced films as the cube root of their cubes' sum (from memory: common in handbooks). */
const blended = (still: number, wind: number): number => (wind === 0 ? still : Math.cbrt(still ** 3 + wind ** 3));

const radiation_W_m2 = ({ emissivity, surroundings_K, air_K }: Outside, surface_K: number): number =>
  emissivity * STEFAN_BOLTZMANN * (surface_K ** 4 - (surroundings_K ?? air_K) ** 4);

/** Convection film at a surface temperature, W/(m² K). */
function convectionFilm(outside: Outside, surface_K: number): number {
  const rise_dK = surface_K - outside.air_K;
  const mode = modeOf(outside.face, rise_dK);
  const { a, b, wind } = filmAt(outside, (surface_K + outside.air_K) / 2, mode);
  return blended(stillFilm(mode, a, b, Math.abs(rise_dK)), wind);
}

/**
 * Heat a surface gives to air, wind and surroundings less the sun on it, W/m² of it: natural convection (Churchill–Chu
 * or McAdams) blended with wind (Churchill–Bernstein or a plate), plus grey radiation. Rises with the surface
 * temperature, negative below ambient. Correlations hold to ±20 % or so: from memory. Air as `airAt`.
 */
export function lossFlux_W_m2(outside: Outside, surface_K: number): number {
  checkOutside(outside);
  return (
    convectionFilm(outside, surface_K) * (surface_K - outside.air_K) +
    radiation_W_m2(outside, surface_K) -
    (outside.sun_W_m2 ?? 0)
  );
}

const FIRST_K = 200;
const STEP_K = 20;
const ROWS = 52;

/**
 * `lossFlux_W_m2` with everything that hangs on the air's temperature worked out beforehand: for inner loops.
 * Agrees with it to 0.1 % of the convection, film temperatures from 200 to 1220 K.
 */
export function lossFunction(outside: Outside): (surface_K: number) => number {
  checkOutside(outside);
  const { face, air_K, emissivity } = outside;
  const hot = tabulated(outside, face);
  const cold = face === 'vertical' ? hot : tabulated(outside, modeOf(face, -1));
  const radiating = emissivity * STEFAN_BOLTZMANN;
  const offset = radiating * (outside.surroundings_K ?? air_K) ** 4 + (outside.sun_W_m2 ?? 0);
  return (surface_K) => {
    const rise_dK = surface_K - air_K;
    const { mode, a, b, wind } = rise_dK >= 0 ? hot : cold;
    const place = Math.min(Math.max(((surface_K + air_K) / 2 - FIRST_K) / STEP_K, 0), ROWS - 1.000001);
    const row = Math.floor(place);
    const share = place - row;
    const still = stillFilm(
      mode,
      a[row]! + share * (a[row + 1]! - a[row]!),
      b[row]! + share * (b[row + 1]! - b[row]!),
      Math.abs(rise_dK),
    );
    const squared = surface_K * surface_K;
    return (
      blended(still, wind[row]! + share * (wind[row + 1]! - wind[row]!)) * rise_dK +
      radiating * squared * squared -
      offset
    );
  };
}

function tabulated(outside: Outside, mode: Mode) {
  const a = new Float64Array(ROWS);
  const b = new Float64Array(ROWS);
  const wind = new Float64Array(ROWS);
  for (let row = 0; row < ROWS; row++) {
    const film = filmAt(outside, FIRST_K + STEP_K * row, mode);
    a[row] = film.a;
    b[row] = film.b;
    wind[row] = film.wind;
  }
  return { mode, a, b, wind };
}

export interface LossParts extends WithSteps {
  readonly convection_W_m2: number;
  readonly radiation_W_m2: number;
  /** Both over the rise above the air; their limit where there is no rise. Sun is in neither. */
  readonly film_W_m2K: number;
}

/** What `lossFlux_W_m2` adds up, for people: convection and radiation apart, and both as one film. */
export function lossParts(outside: Outside, surface_K: number): LossParts {
  checkOutside(outside);
  const rise_dK = surface_K - outside.air_K;
  const convection_film = convectionFilm(outside, surface_K);
  const convection_W_m2 = convection_film * rise_dK;
  const radiated_W_m2 = radiation_W_m2(outside, surface_K);
  const radiation_film = 4 * outside.emissivity * STEFAN_BOLTZMANN * outside.air_K ** 3;
  const film_W_m2K =
    Math.abs(rise_dK) > 1e-6
      ? (convection_W_m2 + radiated_W_m2) / rise_dK
      : convection_film + (outside.surroundings_K === undefined ? radiation_film : 0);
  const steps = (): readonly Step[] => [
    {
      formula:
        outside.face === 'vertical'
          ? 'Nu = (0.825 + 0.387 Ra^⅙ / (1 + (0.492/Pr)^(9/16))^(8/27))², wind blended in by cubes'
          : 'Nu = 0.54 Ra^¼ or 0.15 Ra^⅓ facing up, 0.27 Ra^¼ facing down, wind blended in by cubes',
      inputs: {
        surface_K,
        air_K: outside.air_K,
        length_m: outside.length_m,
        wind_m_s: outside.wind_m_s,
      },
      gives: { convection_film_W_m2K: convection_film, convection_W_m2 },
      source: 'ht-library',
    },
    {
      formula: 'radiation = emissivity × σ × (surface⁴ − surroundings⁴)',
      inputs: {
        emissivity: outside.emissivity,
        surface_K,
        surroundings_K: outside.surroundings_K ?? outside.air_K,
      },
      gives: { radiation_W_m2: radiated_W_m2 },
      source: 'codata-2018',
    },
  ];
  return Object.freeze({ convection_W_m2, radiation_W_m2: radiated_W_m2, film_W_m2K, steps });
}

function checkOutside({
  length_m,
  air_K,
  emissivity,
  wind_m_s,
  pressure_Pa,
  diameter_m,
  surroundings_K,
}: Outside): void {
  const wrong =
    !(length_m > 0) || (diameter_m !== undefined && !(diameter_m > 0))
      ? { what: `the surface is ${diameter_m ?? length_m} m in size`, expected: 'a size above 0', example: '0.4 m' }
      : !(air_K > 0) || (surroundings_K !== undefined && !(surroundings_K > 0))
        ? { what: `the air is at ${air_K} K`, expected: 'above 0 K', example: '20 °C' }
        : !(emissivity >= 0 && emissivity <= 1)
          ? { what: `the emissivity is ${emissivity}`, expected: '0 to 1', example: '0.9' }
          : !(wind_m_s >= 0 && Number.isFinite(wind_m_s))
            ? { what: `the wind is ${wind_m_s} m/s`, expected: '0 or more', example: '3' }
            : pressure_Pa !== undefined && !(pressure_Pa > 0)
              ? { what: `the air pressure is ${pressure_Pa} Pa`, expected: 'above 0 Pa', example: '101325' }
              : undefined;
  if (wrong) throw new AskError({ code: 'out-of-range', ...wrong });
}
