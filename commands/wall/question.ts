import { AskError } from '../../core/ask-error.ts';
import { type Finish, findFinish } from '../../core/heat/finish.ts';
import type { AskedLayer } from '../../core/heat/wall-layers.ts';
import { shortName, type WallQuestion } from '../../core/heat/wall-question.ts';
import { findWind } from '../../core/heat/wind.ts';
import { findPour } from '../../core/materials/catalogue.ts';
import { exactly, type Spread } from '../../core/materials/spread.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { formatSi } from '../../core/quantity/format.ts';
import { readQuantity } from '../../core/quantity/parse.ts';
import type { Assumption } from '../card.ts';
import { about } from '../options.ts';
import { layerText, readLayers, type TypedLayer } from './layers.ts';
import type { WallOptions } from './options.ts';

export interface AskedWall {
  readonly question: WallQuestion;
  readonly layers: readonly TypedLayer[];
  readonly finish: Finish;
  readonly after: string;
  readonly assumed: readonly Assumption[];
  /** Its size was said: a real vessel, which may taper. */
  readonly vessel: boolean;
}

const inch = 0.0254;
const usual = {
  bore_m: 10 * inch,
  height_m: 12 * inch,
  hot_K: 1273.15,
  ramp_s: 40 * 60,
  hold_s: 3600,
  shell_m: 0.001,
  lid_m: 2 * inch,
  vent_m: 3 * inch,
  air_K: 293.15,
} as const;
/** A hot face is not known better than this: no thermometer stands in it (judged). */
const boreSpread_dK = 50;
const airSpread_dK = 8;
/** Nor by when: it is hot when it looks so, and no fire climbs in a straight line (judged). */
const boreHurry = 0.3;

/** The question with every default filled in, each default said. */
export function askedWall(options: WallOptions, units: UnitSystem): AskedWall {
  const assumed: Assumption[] = [];
  const assume = <T>(value: T | undefined, otherwise: T, text: string, override: string): T => {
    if (value !== undefined) return value;
    assumed.push({ text, override });
    return otherwise;
  };
  const show = (value: number, unit: 'm' | 'K') => formatSi(value, unit, units).replace(/ \(.*\)$/, '');
  const { layers } = options.layers;
  for (const { thickness, material } of layers)
    if (thickness.assumedUnit !== undefined) {
      const meant = `${thickness.text} ${thickness.assumedUnit}`;
      assumed.push({ text: `${thickness.text} of ${shortName(material.name)} means ${meant}` });
    }
  const bore_m = assume(options.bore?.si, usual.bore_m, `a bore of ${show(usual.bore_m, 'm')}`, 'bore=8 in');
  const height_m = assume(
    options.height?.si,
    usual.height_m,
    `${show(usual.height_m, 'm')} of it heated`,
    'height=14 in',
  );
  const hot_K = hotFace(options, assume, show);
  const ramp_s = assume(options.ramp?.si, usual.ramp_s, 'up to heat in 40 min, in a straight line', 'ramp=1 h');
  const hold_s = assume(options.hold?.si, usual.hold_s, 'held there for 1 h', 'hold=2 h');
  const lid_off_s = about('after', () =>
    lidOff_s(assume(options.after, 'lid on', 'lid on, vent and tuyere stopped once the fire is out', 'after=lid off')),
  );
  const finish = about('finish', () =>
    findFinish(bare(assume(options.finish, 'painted', 'a painted shell', 'finish=galvanised'))),
  );
  const wind = findWind(assume(options.wind, 'calm', 'outdoors, calm', 'wind=breezy'));
  const air_K = options.air
    ? exactly(options.air.si)
    : around(
        assume(undefined, usual.air_K, `air at ${show(usual.air_K, 'K')}, give or take`, 'air=30 °C'),
        airSpread_dK,
      );
  const shell_m = assume(
    options.shell?.si,
    usual.shell_m,
    `a steel shell of ${show(usual.shell_m, 'm')}`,
    'shell=2 mm',
  );
  const hot = layers[0]!;
  const lid = about('lid', () => (options.lid === undefined ? undefined : readLayers(options.lid, units).map(plain)));
  const floor = about('floor', () =>
    options.floor === undefined ? undefined : readLayers(options.floor, units).map(plain),
  );
  const vent_m = assume(options.vent?.si, usual.vent_m, `a vent of ${show(usual.vent_m, 'm')}`, 'vent=2 in');
  const damp = options.damp?.si;
  const wet = layers.map((layer, index) =>
    index === 0 && damp !== undefined ? { ...plain(layer), water: damp } : plain(layer),
  );
  if (damp === undefined) assumed.push({ text: 'the lining air-dry', override: 'damp=6%' });
  return {
    layers,
    finish,
    after: options.after ?? 'lid on',
    assumed,
    vessel: options.bore !== undefined && options.height !== undefined,
    question: {
      layers: wet,
      bore_m,
      height_m,
      hot_K: around(hot_K, boreSpread_dK),
      ramp_s,
      ramp_doubt: boreHurry,
      hold_s,
      lid_off_s,
      lid: assume(
        lid,
        [{ material: hot.material, thickness_m: usual.lid_m }],
        `a lid of ${show(usual.lid_m, 'm')} ${shortName(hot.material.name)}`,
        'lid=2 in castable; 1 in fibre blanket',
      ),
      floor: assume(floor, layers.map(plain), 'a floor like the wall', `floor=${layers.map(layerText).join('; ')}`),
      vent_radius_m: vent_m / 2,
      shell_m,
      emissivity: finish.emissivity,
      wind_m_s: wind.speed_m_s,
      air_K,
    },
  };
}

/** Of a shell, bare means bare steel. */
const bare = (finish: string): string => (/^\s*bare\s*$/i.test(finish) ? 'bare steel' : finish);

const plain = ({ material, thickness_m }: TypedLayer): AskedLayer => ({ material, thickness_m });

const around = (typical: number, spread: number): Spread => ({
  low: typical - spread,
  typical,
  high: typical + spread,
});

function hotFace(
  { hot, metal }: WallOptions,
  assume: <T>(value: T | undefined, otherwise: T, text: string, override: string) => T,
  show: (value: number, unit: 'K') => string,
): number {
  if (hot) return hot.si;
  if (metal === undefined)
    return assume(undefined, usual.hot_K, `a hot face of ${show(usual.hot_K, 'K')}`, 'hot=1100 °C');
  const pour = about('metal', () => findPour(metal));
  const needed = pour.hot_face_K.typical;
  return assume(undefined, needed, `a hot face of ${show(needed, 'K')} for ${pour.name}`, 'hot=1100 °C');
}

/** `lid on`, `lid off`, `lid off 30 min`: how long it stays off. */
function lidOff_s(text: string): number {
  const words = text.toLowerCase().trim().replace(/\s+/g, ' ');
  if (/^(lid )?on( at once)?$/.test(words)) return 0;
  if (/^(lid )?off$/.test(words)) return Number.POSITIVE_INFINITY;
  const off = /^(?:lid )?off (?:for )?(\d.*)$/.exec(words)?.[1];
  if (off !== undefined)
    return readQuantity(off.replace(/,? ?then (lid )?on$/, ''), {
      dimensions: ['time'],
      label: 'time with the lid off',
      plainUnit: { metric: 'min', US: 'min' },
      min: 0,
      max: 172_800,
    }).si;
  throw new AskError({
    code: 'unknown-name',
    what: `after the fire the lid can't be "${text.slice(0, 40)}"`,
    expected: 'lid on, lid off, or lid off for a time and then on: lid off 30 min',
    example: 'lid on',
  });
}
