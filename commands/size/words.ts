import { findMaterial } from '../../core/materials/catalogue.ts';
import { formatBoth, formatFigure, formatSi } from '../../core/quantity/format.ts';
import { formatTape } from '../../core/quantity/tape.ts';
import type { Change } from '../../core/shape/changes.ts';
import type { Forms } from '../../core/shape/forms/forms.ts';
import { liningRadius_m } from '../../core/shape/profile.ts';
import { type RuleName, sizingRules } from '../../core/shape/rules.ts';
import { degrees } from '../../core/shape/tuyere.ts';
import { ventDiameter_m, ventVelocity_m_s } from '../../core/shape/vent.ts';
import type { Assumption, Table } from '../card.ts';
import { capital } from '../sentence.ts';
import { unfitSays } from '../wall/unfit.ts';
import { type SizeParts, typedLength } from './parts.ts';

/** Fits or not, and the four numbers a builder asks first. */
export function headlineOf(parts: SizeParts): string {
  const { sized, units, asked, materials, changes } = parts;
  const { furnace, fit } = sized;
  const length = (value: number) => formatBoth(value, 'm', units);
  const { vessel, crucible } = furnace;
  const pot = `a crucible ${length(2 * crucible.outside_radius_m)} across and ${length(crucible.height_m)} high`;
  const inside =
    asked === 'can' || parts.vesselSaid !== undefined
      ? `${pot} in ${vessel.name.startsWith('your') ? '' : 'the '}${vessel.name}`
      : vessel.given
        ? `${pot} goes into a ${vessel.name}`
        : `${pot} needs a vessel ${length(2 * vessel.bottom_radius_m)} wide and ${length(vessel.height_m)} high inside; none in the catalogue takes it`;
  const { bottom_m, top_m } = fit.insulation;
  const fill = `of ${shortName(materials.insulation.name)}`;
  const thick =
    Math.abs(top_m - bottom_m) < 5e-4
      ? `${length(bottom_m)} ${fill} all round`
      : `${length(bottom_m)} ${fill} at the bottom, ${length(top_m)} at the rim`;
  const warned = [
    ...unfitSays(parts.unfit, { metal: materials.metal, change: liningChange(parts), units }),
    ...outsideRules(parts),
  ];
  const layers = `bore ${length(2 * furnace.bore.bottom_radius_m)}, wall ${length(furnace.wall_m)}, ${thick}`;
  if (!fit.fits) {
    const [first] = changes;
    return `Does not fit: ${inside}: ${failures(parts)}.${first ? ` Smallest change: ${first.says}, ${changeWords(first, parts)}.` : ' Take a wider and taller vessel, or a smaller crucible.'}`;
  }
  const sure = fit.sure ? 'Fits' : 'Fits, but only just, so measure yours';
  return asked === 'can' || parts.vesselSaid !== undefined
    ? [`${sure}: ${inside}: ${layers}.`, ...warned].join(' ')
    : [`${capital(inside)}: ${layers}.`, ...warned].join(' ');
}

/** Typed sizes that fit and still are no furnace: said where the rest says that it fits. */
function outsideRules({ sized, options, units }: Pick<SizeParts, 'sized' | 'options' | 'units'>): readonly string[] {
  const { vent, furnace, question } = sized;
  const length = (value: number) => formatBoth(value, 'm', units);
  const { tilt_degrees, vent_share } = sizingRules;
  const rises = Math.round(degrees(furnace.tuyere.tilt_rad));
  const bore_m = 2 * furnace.bore.top_radius_m;
  const right = ventDiameter_m({ flow_m3_s: vent.flow_m3_s, velocity_m_s: ventVelocity_m_s.typical });
  const effect = { slow: 'heat leaves through it unused', fast: 'the fire is smothered and comes out of the tuyere' };
  return [
    ...(question.vent_m === undefined || vent.verdict === 'right'
      ? []
      : [
          `But a vent of ${length(vent.diameter_m)} lets this fire's gas out at ${formatBoth(vent.velocity_m_s, 'm/s', units)}, where 3 to 8 m/s is right: ${effect[vent.verdict]}; ${length(right)} would do.`,
        ]),
    ...(question.vent_m === undefined || vent.diameter_m <= vent_share.high * bore_m
      ? []
      : [
          `But that vent leaves ${length((bore_m - vent.diameter_m) / 2)} of lid over the bore: a vent is ${vent_share.low} to ${vent_share.high} of the bore across.`,
        ]),
    ...(options.tilt === undefined || (rises >= tilt_degrees.low && rises <= tilt_degrees.high)
      ? []
      : [`But the tuyere rises ${rises}°, where ${tilt_degrees.low} to ${tilt_degrees.high}° is usual.`]),
  ];
}

/** The options that make a lining stand its metal; nothing where none is needed, or none does. */
export function liningChange({ unfit, materials }: Pick<SizeParts, 'unfit' | 'materials'>): string | undefined {
  const [face, behind] = unfit?.fitting ?? [];
  if (!face) return undefined;
  return [
    ...(face.id === materials.lining ? [] : [`lining=${face.id}`]),
    // Without insulation the face itself would be what is put behind.
    ...(!behind || behind.id === materials.insulation.id || behind.id === materials.lining
      ? []
      : [`insulation=${behind.id}`]),
  ].join(' ');
}

const failures = ({ sized, units }: SizeParts): string =>
  sized.fit.checks
    .filter(({ holds }) => !holds)
    .map(({ of, says, room_m, least_m }) => {
      const length = (value: number) => formatBoth(value, 'm', units);
      if (room_m >= 0) return `${says} ${length(room_m)}, ${length(least_m)} wanted`;
      return of === 'height'
        ? `the lid stands ${length(-room_m)} above the vessel`
        : `the lining is ${length(-2 * room_m)} too wide`;
    })
    .join('; ');

export function changeWords(change: Change, { units }: Pick<SizeParts, 'units'>): string {
  switch (change.option) {
    case 'vessel':
      return `vessel=${change.id}`;
    case 'crucible':
      return `crucible=${typedLength(change.diameter_m, units)} x ${typedLength(change.height_m, units)}`;
    case 'several':
      return change.to.map(({ option, to_m }) => `${option}=${lowered(to_m, units)}`).join(' ');
    default:
      return `${change.option}=${lowered(change.to_m, units)}`;
  }
}

/** Rounded down in the reader's units: what was computed to fit must still fit as it is typed back. */
const lowered = (length_m: number, units: SizeParts['units']): string =>
  units === 'US'
    ? `${Math.floor((length_m / 0.0254) * 100 + 1e-6) / 100} in`
    : `${Math.floor(length_m * 1000 + 1e-6)} mm`;

const shortName = (name: string): string => (name.split(',')[0] ?? name).replace(/^expanded /, '').toLowerCase();

export function notesOf(parts: SizeParts): readonly string[] {
  const { sized, units, changes } = parts;
  const { tuyere, furnace, question, fit } = sized;
  const length = (value: number) => formatBoth(value, 'm', units);
  const { bottom_m, top_m } = fit.insulation;
  // Mesh forms bring this advice with them.
  const straight = !parts.forms && !question.taper && Math.abs(top_m - bottom_m) > 2e-3;
  return [
    ...changes.map((change) => `To make it fit: ${change.says}, ${changeWords(change, parts)}`),
    ...(tuyere.holds
      ? []
      : [
          `A spilled crucible would run out of the tuyere: it stands ${length(tuyere.spill_depth_m)} deep, the tube's lowest edge outside only ${length(tuyere.outside_invert_m)} above the floor. Rise ${Math.ceil(degrees(tuyere.needed_tilt_rad))}° instead, or raise the hole to ${length(tuyere.needed_invert_m)}, or build a drain with a plug.`,
        ]),
    ...(straight
      ? [
          'The wall stays straight in a tapered can and the insulation takes up the taper: builders who tapered theirs to match regretted it (common practice, no source).',
        ]
      : []),
    ...(sized.vent.handbook_m < 0.8 * sized.vent.diameter_m
      ? [
          `The handbook's vent is smaller than hot gas at 3 to 8 m/s asks for (${length(sized.vent.handbook_m)} against ${length(sized.vent.diameter_m)}): begin between the two, and cut wider if the flame comes out of the tuyere.`,
        ]
      : []),
    `The tube runs ${length(furnace.tuyere.through_lining_m)} through the wall, ${length(furnace.tuyere.through_all_m)} to the outside, measured in plan.`,
    'Six to eight steam holes of 5 to 6 mm (1/4 in), low and high in the shell, before anything is rammed.',
  ];
}

/** What to cut or make, part by part. */
export function cutList(parts: SizeParts): Table {
  const { sized, units, sleeve, forms } = parts;
  const { furnace, tuyere } = sized;
  const length = (value: number) => formatTape(value, units);
  const by = (...lengths: readonly number[]) => lengths.map(length).join(' x ');
  const hole_m = shellHole(parts);
  const foot_m = 2 * liningRadius_m(furnace, furnace.underfloor_m);
  const rows: readonly (readonly string[])[] = [
    ['hole in the shell', 'steel', `${by(hole_m.along_m, hole_m.high_m)}, along x high: the tube meets it aslant`],
    [
      'sleeve',
      'sheet',
      `${by(sleeve.sheet.length_m, sleeve.sheet.width_m)}; ${sleeve.tabs_count} tabs of ${length(sleeve.tab_length_m)} at each end, bent to the curve`,
    ],
    ['under the floor', 'brick', `${length(foot_m)} across, ${length(furnace.underfloor_m)} thick, laid flat`],
    ...(forms?.pieces.map(({ name, from, says }) => [name, from, says(units).replace(`${name}: `, '')]) ?? []),
    ...(forms ? wireRows(forms.wires, length) : []),
    ['slot in the bore', 'lining', `${by(tuyere.slot.arc_m, tuyere.slot.height_m)}, along x high, with a thin edge`],
    ...(furnace.plinth.height_m > 0
      ? [
          [
            'plinth',
            'lining',
            `${length(2 * furnace.plinth.radius_m)} across, ${length(furnace.plinth.height_m)} high, loose`,
          ],
        ]
      : []),
    [
      'lid',
      'lining',
      `${length(2 * furnace.lid.radius_m)} across, ${length(furnace.lid.thickness_m)} thick, vent ${length(sized.vent.diameter_m)}`,
    ],
  ];
  return { columns: ['cut or make', 'of', 'size'], rows };
}

const wireRows = (wires: Forms['wires'], length: (value: number) => string): readonly (readonly string[])[] =>
  wires.map(({ name, count, cut_m }) => [
    count === 1 ? name : `${count} ${name}s`,
    'wire',
    `${length(cut_m)} ${count === 1 ? 'long' : 'each'}`,
  ]);

/** The tube through the shell: its width is spread by the slant in plan, its height by the tilt. */
export function shellHole({ sized }: Pick<SizeParts, 'sized'>): { readonly along_m: number; readonly high_m: number } {
  const { shape } = sized.tuyere;
  const { vessel } = sized.furnace;
  const radius_m = Math.hypot(
    shape.offset_m,
    shape.through_all_m + Math.sqrt(Math.max(0, (shape.offset_m + shape.bore_radius_m) ** 2 - shape.offset_m ** 2)),
  );
  const at = (aside_m: number) => Math.asin(Math.min(1, aside_m / radius_m));
  return {
    along_m:
      (radius_m - vessel.wall_m / 2) *
      (at(shape.offset_m + shape.outer_radius_m) - at(shape.offset_m - shape.outer_radius_m)),
    high_m: (2 * shape.outer_radius_m) / Math.cos(shape.tilt_rad),
  };
}

/** Every rule that was used, with what it gave and the option that overrides it. */
export function assumptionsOf(parts: SizeParts): readonly Assumption[] {
  const { sized, options, units, materials } = parts;
  const { measures, question, furnace } = sized;
  const gas = question.fuel === 'gas';
  const rows: (Assumption | undefined)[] = [];
  const rule = (option: keyof typeof options, name: RuleName, value_m: number) => {
    if (options[option] !== undefined) return;
    rows.push({
      text: sizingRules[name].says,
      override: `${option}=${typedLength(value_m, units)}`,
    });
  };
  const unitless = [parts.vesselSaid, parts.crucibleSaid].filter(
    (said) => said !== undefined && !/[a-z"'″”’′]/i.test(said.replace(/x|by/gi, '')),
  );
  if (unitless.length > 0) {
    const unit = units === 'US' ? 'in' : 'cm';
    rows.push({ text: `${unitless.join(' and ')} means ${unit}`, override: 'units=us' });
  }
  if (options.fuel === undefined) rows.push({ text: 'fired with gas', override: 'fuel=charcoal' });
  if (parts.crucibleSaid === undefined && parts.asked === 'can')
    rows.push({
      text: 'the largest usual crucible that leaves wall and insulation their room',
      override: 'crucible=6 in x 8 in',
    });
  rule('gap', gas ? 'gap_gas_m' : 'gap_charcoal_m', measures.gap_m);
  if (options.lining === undefined)
    rows.push({ text: shortName(findMaterial(materials.lining).name), override: 'lining=dense castable' });
  rule('wall', 'wall_m', measures.wall_m);
  if (options.insulation === undefined)
    rows.push({ text: shortName(materials.insulation.name), override: 'insulation=perlite' });
  if (options.behind === undefined)
    rows.push({
      text: `insulation of at least ${formatSi(sizingRules.behind_m.low, 'm', units).replace(/ \(.*\)$/, '')} is enough`,
      override: `behind=${typedLength(sizingRules.behind_m.typical, units)}`,
    });
  rule('floor', 'floor_m', measures.floor_m);
  rule('under', 'underfloor_m', measures.underfloor_m);
  if (gas) rule('plinth', 'plinth_m', measures.plinth_m);
  else rule('plinth', 'bed_m', furnace.bed_m);
  rule('rim', 'rim_m', measures.rim_m);
  rule('lid', 'lid_m', measures.lid_m);
  rule('tuyere', gas ? 'tuyere_gas_m' : 'tuyere_charcoal_m', measures.tube_m);
  if (options.tilt === undefined)
    rows.push({
      text: `the tuyere rises ${Math.round(degrees(furnace.tuyere.tilt_rad))}°${sized.tuyere.spill_depth_m > 0 ? ', so that a spill stays in' : ''}`,
      override: 'tilt=15',
    });
  if (options.rate === undefined) {
    const { lead } = formatFigure(
      { id: 'rate', label: '', value: sized.rate_W, unit: 'W', range: parts.rate, rangeBasis: 'judged' },
      units,
    );
    rows.push({ text: `${lead} for this room, judged`, override: units === 'US' ? 'rate=60,000 Btu/h' : 'rate=15 kW' });
  }
  if (options.metal === undefined && parts.asked !== 'melt')
    rows.push({
      text: `aluminium, and gas that leaves at ${formatSi(question.flue_K, 'K', units)}`,
      override: 'metal=bronze',
    });
  if (options.taper === undefined && furnace.vessel.top_radius_m !== furnace.vessel.bottom_radius_m)
    rows.push({ text: 'a straight wall', override: 'taper=yes' });
  if (furnace.vessel.tolerance)
    rows.push({ text: 'vessel sizes of the catalogue, ±2 %', override: `vessel=15 in / 17 in x 22 in` });
  return rows.filter((one) => one !== undefined);
}
