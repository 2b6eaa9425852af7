import type { Spread } from '../../core/materials/spread.ts';
import { bagOf } from '../../core/mix/price.ts';
import type { Figure, UnitSystem } from '../../core/quantity/figure.ts';
import { formatBoth, formatSi } from '../../core/quantity/format.ts';
import type { Forms } from '../../core/shape/forms/forms.ts';
import { floorTop_m, liningRadius_m } from '../../core/shape/profile.ts';
import { oneLift_kg, peopleFor, sizingRules } from '../../core/shape/rules.ts';
import { degrees } from '../../core/shape/tuyere.ts';
import { hotGas_m3_s, ventDiameter_m, ventVelocity_m_s } from '../../core/shape/vent.ts';
import type { Weighed, Weights } from '../../core/shape/weights.ts';
import { type SizeFigure, sizeFigures } from './names.ts';
import type { SizeParts } from './parts.ts';

type More = Partial<Pick<Figure, 'note' | 'shown' | 'range' | 'rangeBasis'>>;

function figure(id: SizeFigure, value: number, unit: Figure['unit'], more: More = {}): Figure {
  return { id, label: sizeFigures[id], value, unit, rangeBasis: 'none', ...more };
}

const ranged = (low: number, high: number, rangeBasis: 'sampled' | 'judged' = 'judged'): More =>
  high > low ? { range: { low, high }, rangeBasis } : {};

const litres = 1e-3;
const largeBag_m3 = 4 * 0.028316846592;
const smallBag_m3 = 100 * litres;

/** In the order of the work. */
export function figuresOf(parts: SizeParts): readonly Figure[] {
  return [
    ...under('what goes where', [...placing(parts), ...lidFigures(parts)]),
    ...under('air and fire', [...tuyereFigures(parts), ...ventFigures(parts)]),
    ...under('buy', [...toBuy(parts), ...(parts.forms ? meshFigures(parts.forms, parts.units) : [])]),
    ...under('weigh', weighing(parts.weighed, parts.units)),
  ];
}

/** What is marked out, bought and lifted: the rest follows from a drawing or comes later. */
const first: ReadonlySet<string> = new Set<SizeFigure>([
  'size.bore',
  'size.height',
  'size.wall',
  'size.insulation_top',
  'size.plinth',
  'size.tuyere',
  'size.invert',
  'size.vent',
  'size.mix_volume',
  'size.insulation_loose',
  'size.whole',
  'size.lift',
]);

const under = (group: string, figures: readonly Figure[]): readonly Figure[] =>
  figures.map((each) => ({ ...each, group, ...(first.has(each.id) ? { first: true } : {}) }));

function placing({ sized, units }: SizeParts): readonly Figure[] {
  const { furnace, fit, crucible } = sized;
  const { bore, vessel, underfloor_m, plinth } = furnace;
  const tapered = Math.abs(bore.top_radius_m - bore.bottom_radius_m) > 1e-6;
  const foot_m = 2 * liningRadius_m(furnace, underfloor_m);
  const tolerance = vessel.tolerance ?? 0;
  const insulated = (value_m: number, radius_m: number) =>
    ranged(value_m - tolerance * radius_m, value_m + tolerance * radius_m);
  const straight = { note: 'same at the top' };
  return [
    figure('size.crucible', 2 * furnace.crucible.outside_radius_m, 'm'),
    figure('size.crucible_height', furnace.crucible.height_m, 'm'),
    figure('size.working', crucible.shape.working_m3, 'm3', { shown: 'liquid', note: 'four fifths full' }),
    figure('size.bore', 2 * bore.bottom_radius_m, 'm', tapered ? {} : straight),
    ...(tapered ? [figure('size.bore_top', 2 * bore.top_radius_m, 'm')] : []),
    figure('size.height', bore.height_m, 'm'),
    figure('size.tongs', fit.tongs_m, 'm', {
      note: `each side; usual tongs want ${formatSi(sizingRules.tongs_m.typical, 'm', units).replace(/ \(.*/, '')}`,
    }),
    figure('size.wall', furnace.wall_m, 'm'),
    figure('size.lining_bottom', foot_m, 'm', tapered ? {} : straight),
    ...(tapered ? [figure('size.lining_top', 2 * (bore.top_radius_m + furnace.wall_m), 'm')] : []),
    figure(
      'size.insulation_bottom',
      fit.insulation.bottom_m,
      'm',
      insulated(fit.insulation.bottom_m, vessel.bottom_radius_m),
    ),
    figure('size.insulation_top', fit.insulation.top_m, 'm', insulated(fit.insulation.top_m, vessel.top_radius_m)),
    figure('size.floor', furnace.floor_m, 'm'),
    figure('size.underfloor', underfloor_m, 'm'),
    ...(plinth.height_m > 0
      ? [
          figure('size.plinth', plinth.height_m, 'm', {
            note: `high, ${formatBoth(2 * plinth.radius_m, 'm', units)} across`,
          }),
        ]
      : []),
    ...(furnace.bed_m > 0 ? [figure('size.bed', furnace.bed_m, 'm')] : []),
    figure('size.headroom', fit.headroom_m, 'm', {
      ...ranged(fit.headroom_m - tolerance * vessel.height_m, fit.headroom_m + tolerance * vessel.height_m),
      ...(fit.headroom_m < 0 ? { note: 'stands out' } : {}),
    }),
  ];
}

const lidFigures = ({ sized: { furnace } }: SizeParts): readonly Figure[] => [
  figure('size.lid', 2 * furnace.lid.radius_m, 'm'),
  figure('size.lid_thickness', furnace.lid.thickness_m, 'm'),
];

function ventFigures({ sized, rate }: SizeParts): readonly Figure[] {
  const { vent, question, rate_W } = sized;
  const at = (power_W: number, velocity_m_s: number) =>
    ventDiameter_m({
      flow_m3_s: hotGas_m3_s({ rate_W: power_W, flue_K: question.flue_K, fuel: question.fuel }),
      velocity_m_s,
    });
  const typed = question.vent_m !== undefined;
  const { low, high } = ventVelocity_m_s;
  return [
    figure(
      'size.vent',
      vent.diameter_m,
      'm',
      typed ? {} : { ...ranged(at(rate.low, high), at(rate.high, low)), note: 'cut small, widen later' },
    ),
    figure('size.rate', rate_W, 'W', ranged(rate.low, rate.high)),
    figure('size.velocity', vent.velocity_m_s, 'm/s', {
      note: vent.verdict === 'right' ? 'right: 3 to 8 m/s' : `too ${vent.verdict}: 3 to 8 m/s is right`,
    }),
    figure('size.vent_handbook', vent.handbook_m, 'm', { note: 'from memory' }),
  ];
}

function tuyereFigures({ sized, sleeve }: SizeParts): readonly Figure[] {
  const { furnace, tuyere } = sized;
  const { shape } = tuyere;
  const rise_m = shape.through_all_m * Math.tan(shape.tilt_rad);
  return [
    figure('size.tuyere', 2 * shape.bore_radius_m, 'm'),
    figure('size.invert', shape.invert_m, 'm', { note: tuyere.raised ? 'raised, for the spill' : 'above the floor' }),
    figure('size.tilt', degrees(shape.tilt_rad), 'count', { note: 'degrees, outward' }),
    figure('size.spill', tuyere.spill_depth_m, 'm', { note: 'a brimful, over the floor' }),
    figure('size.invert_outside', tuyere.outside_invert_m, 'm', {
      note: tuyere.holds ? 'above it: spill stays in' : 'the spill runs out',
    }),
    figure('size.tuyere_height', floorTop_m(furnace) + shape.invert_m + shape.bore_radius_m + rise_m, 'm', {
      note: "hole's middle, from below",
    }),
    figure('size.offset', shape.offset_m, 'm', {
      note: `tangent, ${Math.round(degrees(tuyere.to_radius_rad))}° to radius`,
    }),
    figure('size.sleeve', sleeve.sheet.length_m, 'm', { note: 'keeps loose fill out' }),
    figure('size.sleeve_round', sleeve.sheet.width_m, 'm'),
    figure('size.tabs', sleeve.tabs_count, 'count', { note: 'at each end' }),
  ];
}

/** What is cut from a roll is never short: up to whole inches, or centimetres. */
const bought = (length_m: number, units: UnitSystem): number => {
  const step_m = length_m > 2 ? (units === 'US' ? 0.3048 : 0.1) : units === 'US' ? 0.0254 : 0.01;
  return Math.ceil(length_m / step_m - 1e-6) * step_m;
};

const meshFigures = ({ mesh, wire_length_m, clips_count }: Forms, units: UnitSystem): readonly Figure[] => [
  figure('size.mesh', bought(mesh.length_m, units), 'm', {
    note: `rounded up; ${formatBoth(mesh.width_m, 'm', units)} wide, ${Math.round(mesh.waste * 100)} % waste`,
  }),
  figure('size.wire', bought(wire_length_m, units), 'm', { note: 'rounded up' }),
  figure('size.clips', clips_count, 'count'),
];

const spreadOf = ({ typical, ranges }: Weighed, key: keyof Weights): Spread => ({
  low: ranges[key]?.low ?? typical[key],
  typical: typical[key],
  high: ranges[key]?.high ?? typical[key],
});

function toBuy({ weighed, materials, units }: SizeParts): readonly Figure[] {
  const { volumes, loose } = weighed;
  const bulk = { shown: 'bulk' } as const;
  const inBulk = (volume_m3: number) => formatSi(volume_m3, 'm3', units, 'bulk');
  const stands = spreadOf(weighed, 'insulation_m3');
  const buy = spreadOf(weighed, 'loose_m3');
  const bag = bagOf(materials.insulation.id);
  const price = bag?.volume_m3 === undefined ? {} : { note: `$${bag.price_USD.low} to $${bag.price_USD.high} a bag` };
  const bags = (id: SizeFigure, bag_m3: number, more: More = {}) =>
    figure(id, Math.ceil(buy.typical / bag_m3), 'count', {
      ...ranged(Math.ceil(buy.low / bag_m3), Math.ceil(buy.high / bag_m3), 'sampled'),
      ...more,
    });
  return [
    figure('size.mix_volume', volumes.wall_m3 + volumes.floor_m3 + volumes.lid_m3, 'm3', {
      ...bulk,
      note: `wall ${inBulk(volumes.wall_m3)}, floor ${inBulk(volumes.floor_m3)}, lid ${inBulk(volumes.lid_m3)}`,
    }),
    figure('size.insulation_volume', stands.typical, 'm3', { ...bulk, ...ranged(stands.low, stands.high, 'sampled') }),
    ...(loose
      ? [
          figure('size.insulation_loose', buy.typical, 'm3', {
            ...bulk,
            ...ranged(buy.low, buy.high, 'sampled'),
            note: 'loose; tamping takes 10 to 30 %',
          }),
          bags('size.bags_large', largeBag_m3, price),
          bags('size.bags_small', smallBag_m3),
        ]
      : []),
  ];
}

function weighing(weighed: Weighed, units: UnitSystem): readonly Figure[] {
  const weight = (id: SizeFigure, key: keyof Weights, more: More = {}) => {
    const { low, typical, high } = spreadOf(weighed, key);
    return figure(id, typical, 'kg', { ...ranged(low, high, 'sampled'), ...more });
  };
  const people = (key: keyof Weights) => peopleFor({ lift_kg: spreadOf(weighed, key).high });
  return [
    weight('size.pot_wet', 'pot_wet_kg', { note: 'wall and floor' }),
    weight('size.pot_dry', 'pot_dry_kg'),
    weight('size.lid_wet', 'lid_wet_kg'),
    weight('size.lid_dry', 'lid_dry_kg', { note: `${people('lid_dry_kg')} to lift it` }),
    weight('size.insulation_mass', 'insulation_kg'),
    weight('size.whole', 'whole_kg', { note: `dry, no crucible; ${people('whole_kg')} to carry` }),
    weight('size.lift', 'pot_dry_kg', { note: 'the dried pot, into the can' }),
    figure('size.people', people('pot_dry_kg'), 'count', {
      note: `at most ${formatBoth(oneLift_kg, 'kg', units)} each`,
    }),
  ];
}
