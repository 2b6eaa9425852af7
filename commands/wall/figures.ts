import type { Range } from '../../core/doubt/sample.ts';
import { infraredReading_K } from '../../core/heat/infrared.ts';
import { depthOf } from '../../core/heat/transient/isotherms.ts';
import type { Output, WallAnswer } from '../../core/heat/wall-answer.ts';
import { touchLevels_K } from '../../core/heat/wall-firing.ts';
import { type ComparedFuel, fuelFor_kg } from '../../core/heat/wall-fuel.ts';
import { longest_s, shortName } from '../../core/heat/wall-question.ts';
import type { Figure, UnitSystem } from '../../core/quantity/figure.ts';
import { formatSi } from '../../core/quantity/format.ts';

export const wallFigures = {
  'wall.shell_peak': 'hottest that the shell gets',
  'wall.shell_peak_after': 'when, counted from the fire going out',
  'wall.touch43': 'shell below 43 °C, a hand may rest on it',
  'wall.touch50': 'shell below 50 °C, warm',
  'wall.touch60': 'shell below 60 °C, hand off within seconds',
  'wall.touch70': 'shell below 70 °C, above it burns on contact',
  'wall.interface1': 'behind the first layer, at its hottest; wall.interface2 behind the second, and so on',
  'wall.interface2': 'behind the second layer',
  'wall.interface3': 'behind the third layer',
  'wall.heat_in': 'heat into the side wall until the fire is out',
  'wall.stored': 'of that, stored in the wall when the fire is out',
  'wall.charcoal': 'charcoal whose whole heat is what the wall took',
  'wall.propane': 'propane whose whole heat is what the wall took',
  'wall.loss': 'leaving the shell when the fire goes out',
  'wall.total_loss': 'by every path but the gas, once it has been held long',
  'wall.ramp_power': 'what the side wall takes on the way up, on average',
  'wall.depth900': 'how deep the wall passed 900 °C, where clay has sintered; the other depths by why',
  'wall.inch_shell': 'shell with another inch of the last layer',
  'wall.shell_drying': 'shell as a damp lining gets dry; its high end where all the steam condenses on it',
  'wall.infrared': 'what an infrared thermometer set to 0.95 reads of a shiny shell at its hottest',
} as const;

export type WallFigureId = keyof typeof wallFigures;

/** A figure with its sampled range, where there is one. */
function sampled(id: WallFigureId, value: number, unit: Figure['unit'], range?: Range): Figure {
  const label = wallFigures[id].split(';')[0] ?? id;
  return range && range.high > range.low
    ? { id, label, value, unit, range: { low: range.low, high: range.high }, rangeBasis: 'sampled' }
    : { id, label, value, unit, rangeBasis: 'none' };
}

/** Clay has sintered, from memory. */
const sintered_C = 900;

/** Nobody waits by the minute: what has no range is told in tenths of an hour, rounded up. */
const tenth_s = 360;

const minutes = (time_s: number): number => 60 * Math.round(time_s / 60);

export function shellFigures({ firing, ranges }: WallAnswer): readonly Figure[] {
  return [
    { ...sampled('wall.shell_peak', firing.shell_peak_K, 'K', ranges.shell_peak), label: 'shell at its hottest' },
    {
      ...sampled('wall.shell_peak_after', minutes(firing.shell_peak_after_s), 's', ranges.peak_after),
      label: 'which is after fire out',
      shown: 'minutes',
    },
  ];
}

/** From the coolest level up; the adverse end is what to go by. */
export function touchFigures({ firing, ranges }: WallAnswer, units: UnitSystem): readonly Figure[] {
  return touchLevels_K.map((level_K, index) => {
    const id = `wall.touch${Math.round(level_K - 273.15)}` as WallFigureId;
    const range = ranges[`cool${index}` as Output];
    const typical_s = firing.cool_s[index]!;
    const latest = range?.high ?? typical_s;
    return {
      ...sampled(id, range ? typical_s : tenth_s * Math.ceil(typical_s / tenth_s), 's', range),
      label: `shell below ${formatSi(level_K, 'K', units)}, after it`,
      shown: 'hours',
      ...(latest >= longest_s - 1 ? { note: 'or longer' } : {}),
    };
  });
}

export function interfaceFigures(
  { firing, interface_ranges, layers }: WallAnswer,
  units: UnitSystem,
): readonly Figure[] {
  return firing.interface_peaks_K.map((peak_K, index) => {
    const limit_K = layers[index + 1]?.limit_K;
    return {
      ...sampled(`wall.interface${index + 1}` as WallFigureId, peak_K, 'K', interface_ranges[index]),
      label: `behind ${shortName(layers[index]?.material.name ?? '')}`,
      ...(limit_K === undefined ? {} : { note: `limit ${formatSi(limit_K, 'K', units)}` }),
    };
  });
}

export function heatFigures({ firing, ranges, another_inch, paths }: WallAnswer): readonly Figure[] {
  const fuel = (name: ComparedFuel): Figure => {
    const scale = (heat_J: number) => fuelFor_kg(heat_J, name);
    const range = ranges.in && { low: scale(ranges.in.low), high: scale(ranges.in.high) };
    return { ...sampled(`wall.${name}`, scale(firing.in_J), 'kg', range), label: `as ${name}, its whole heat` };
  };
  const more = 100 * (another_inch.stored_J / firing.stored_J - 1);
  return [
    { ...sampled('wall.heat_in', firing.in_J, 'J', ranges.in), label: 'heat the side wall took' },
    fuel('charcoal'),
    fuel('propane'),
    { ...sampled('wall.stored', firing.stored_J, 'J', ranges.stored), label: 'of it stored at fire out' },
    { ...sampled('wall.loss', firing.shell_loss_W, 'W', ranges.loss), label: 'shell loses at fire out' },
    { ...sampled('wall.total_loss', twoDigits(paths.total_W), 'W'), label: 'all paths, held for long' },
    { ...sampled('wall.ramp_power', twoDigits(firing.ramp_power_W), 'W'), label: 'side wall takes heating up' },
    {
      ...sampled('wall.inch_shell', another_inch.shell_peak_K, 'K'),
      label: 'shell with another inch',
      note: `stores ${Math.abs(more).toFixed(0)} % ${more < 0 ? 'less' : 'more'}`,
    },
  ];
}

/** How deep clay has sintered; where that is nowhere, nothing. */
export function depthFigures({ run }: WallAnswer, units: UnitSystem): readonly Figure[] {
  const depth_m = depthOf(run, sintered_C + 273.15);
  if (depth_m === 0) return [];
  const label = `passed ${formatSi(sintered_C + 273.15, 'K', units)} this deep`;
  return [{ ...sampled('wall.depth900', depth_m, 'm'), label, note: 'clay sinters there' }];
}

/** The shell of a damp lining between both bounds of where its steam goes. */
export function dryingFigures({ drying }: WallAnswer): readonly Figure[] {
  if (!drying) return [];
  const { shell_K, condensing_K } = drying;
  return [
    {
      ...sampled('wall.shell_drying', shell_K, 'K'),
      label: 'shell while the lining dries',
      ...(condensing_K > shell_K + 1
        ? {
            range: { low: shell_K, high: condensing_K },
            rangeBasis: 'judged' as const,
            note: 'by its steam',
          }
        : {}),
    },
  ];
}

/** Below this emissivity a thermometer set to `usualSetting` is far off. */
export const shiny = 0.6;
const usualSetting = 0.95;

/** What an infrared thermometer makes of a shiny shell at its hottest, over what such a finish may be. */
export function infraredFigures({ firing, model }: WallAnswer): readonly Figure[] {
  const { emissivity, air_K } = model.question;
  if (emissivity.typical >= shiny) return [];
  const reads = (end: number) =>
    infraredReading_K({
      surface_K: firing.shell_peak_K,
      set_emissivity: usualSetting,
      emissivity: end,
      surroundings_K: air_K.typical,
    });
  return [
    {
      ...sampled('wall.infrared', reads(emissivity.typical), 'K'),
      label: `infrared at ${usualSetting} reads it as`,
      range: { low: reads(emissivity.low), high: reads(emissivity.high) },
      rangeBasis: 'judged',
    },
  ];
}

const twoDigits = (value: number): number => Number(value.toPrecision(2));
