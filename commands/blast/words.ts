import { formatFigure, formatSi } from '../../core/quantity/format.ts';
import type { Assumption } from '../card.ts';
import { capital } from '../sentence.ts';
import { notSizedFor } from '../size/sized-for.ts';
import { blastFigures } from './figures.ts';
import type { BlastParts } from './parts.ts';
import { type BlastKey, usual } from './question.ts';

const percent = (share: number): string => `${Math.round(share * 100)} %`;
/** A twentieth: past it the answer is as good as sure. */
const SURE = 0.95;
/** More than this of the need is worth a valve. */
const MUCH = 1.3;
/** From twice the need on a blower left open makes another fire than the one asked about. */
const FAR_MORE = 2;

function said(parts: BlastParts, id: string): string {
  const figure = blastFigures(parts).find((one) => one.id === `blast.${id}`)!;
  const { lead, range } = formatFigure(figure, parts.context.units);
  return range === undefined ? lead : `${lead} (${range})`;
}

export function headlineOf(parts: BlastParts): string {
  const { question, met, gains, context } = parts;
  const show = (m: number) => formatSi(m, 'm', context.units);
  const through = `${capital(question.blower.name)} blows ${said(parts, 'flow')} through ${show(question.pipe.bore_m)} of ${question.pipe.kind}`;
  const [best] = gains;
  const help = best ? `What would help most is ${best.says}: ${percent(best.gain)} more air.` : '';
  if (met === undefined)
    return `${through}: that burns ${said(parts, 'fuel')} of ${question.fuel.name} and sets ${said(parts, 'power')} free. ${help}`;
  const verdict =
    met > SURE ? 'Enough' : met > 0.5 ? 'Probably enough' : met > 1 - SURE ? 'Probably too little' : 'Too little';
  const cover = parts.point.flow_m3_s / (parts.needed_m3_s ?? 1);
  const then =
    cover < MUCH
      ? ` ${help}`
      : cover > FAR_MORE
        ? ` ${question.blower.bleed ? 'Bleed' : 'Throttle or bleed'} it: left open it feeds ${said(parts, 'power')}.`
        : '';
  const far = cover > FAR_MORE ? `${verdict}, and far more than the fire needs` : verdict;
  return `${far}: ${through.charAt(0).toLowerCase()}${through.slice(1)}, and the fire needs ${said(parts, 'need')}; it is met in ${percent(met)} of the cases.${then}`;
}

export function notesOf(parts: BlastParts): readonly string[] {
  const { question, options, point, needed_m3_s: need, valve_Pa, gains, context } = parts;
  const other = notSizedFor(options.sized, question.fuel, context.units);
  const pressure = (Pa: number) => formatSi(Pa, 'Pa', context.units);
  const much = need !== undefined && point.flow_m3_s > MUCH * need;
  return [
    ...(other === undefined ? [] : [other]),
    ...(question.blower.remark ? [question.blower.remark] : []),
    biggest(parts),
    ...(much && valve_Pa !== undefined
      ? [
          question.blower.bleed
            ? `More than the fire takes: let ${percent(1 - need / point.flow_m3_s)} of it out by a bleed hole before the pipe; its motor needs the air.`
            : `More than the fire takes: a gate that takes ${pressure(valve_Pa)}, or a bleed hole before the pipe, brings it down to the need. Start low and open it as the bed lights.`,
        ]
      : []),
    ...(gains.every(({ change, gain }) => gain < 0.05 || change === 'flow' || change === 'pressure')
      ? ['A wider pipe would hardly help: the blower or the bed sets the flow.']
      : []),
    'Blower off: what is in the furnace drifts back up the pipe, CO with it. Pull the pipe off or open a flap at once, and restart low.',
    ...(question.fuel.kind === 'solid'
      ? [
          'Clinker and fines can raise the bed’s loss several-fold: no formula knows how much. Rake it out when the flow drops.',
        ]
      : question.fuel.kind === 'liquid'
        ? ['Oil from a tank above the burner by gravity, with a valve within reach; never a tank under pressure.']
        : []),
  ];
}

/** Where the blower's pressure goes. */
function biggest({ point, context, question }: BlastParts): string {
  const losses = [
    { at: 'the pipe', Pa: point.pipe_Pa },
    { at: 'the tuyere', Pa: point.tuyere_Pa },
    ...(question.bed ? [{ at: 'the bed', Pa: point.bed_Pa }] : []),
  ].toSorted((a, b) => b.Pa - a.Pa);
  const show = (Pa: number) => formatSi(Pa, 'Pa', context.units);
  return `Of ${show(point.fan_Pa)} at the blower ${losses.map(({ at, Pa }) => `${at} takes ${show(Pa)}`).join(', ')}; ${percent(point.of_free_flow)} of its free flow gets through.`;
}

export function assumptions({ question, options, context }: BlastParts): readonly Assumption[] {
  const { units } = context;
  const show = (m: number) => formatSi(m, 'm', units);
  const solid = question.fuel.kind === 'solid';
  const { bed, spreads } = question;
  const rows: (Assumption | false | undefined)[] = [
    options.fuel === undefined && { text: question.fuel.name, override: 'fuel=briquettes' },
    options.blower === undefined && { text: `${question.blower.name}, cold`, override: 'blower=35 cfm 2 inWC' },
    options.blower !== undefined &&
      /^[\d.,]/.test(options.blower) && { text: 'the plate is right within 15 %', override: 'blower=40 cfm 2 inWC' },
    options.pipe === undefined && {
      text: `${show(usual.pipe.length_m)} of steel pipe, ${show(usual.pipe.bore_m)} inside`,
      override: units === 'US' ? 'pipe=2 in x 5 ft' : 'pipe=50 mm x 1.5 m',
    },
    options.bends === undefined && { text: 'no bends', override: 'bends=2' },
    options.tuyere === undefined && { text: 'a tuyere as wide as the pipe', override: `tuyere=${show(0.0254)}` },
    bed && options.bore === undefined && { text: `a bore of ${show(bed.bore_m)}`, override: `bore=${show(0.3048)}` },
    bed &&
      options.bed === undefined && {
        text: `${show(bed.depth_m)} of fuel above the tuyere`,
        override: `bed=${show(0.35)}`,
      },
    solid &&
      options.lump === undefined && {
        text: `lumps of ${show(spreads.lump_m.low)} to ${show(spreads.lump_m.high)}`,
        override: `lump=${show(0.02)}`,
      },
    solid &&
      options.co === undefined &&
      options.excess === undefined && {
        text: `${percent(spreads.co_share.low)} to ${percent(spreads.co_share.high)} of the carbon leaves as CO`,
        override: 'co=20%',
      },
    options.excess === undefined && {
      text: solid ? 'no air left over: a bed deep enough to use it up' : '10 to 40 % excess air',
      override: 'excess=20%',
    },
    options.back === undefined && { text: 'no pressure in the furnace: a wide vent', override: 'back=20 Pa' },
    options.altitude === undefined && {
      text: 'at sea level',
      override: units === 'US' ? 'altitude=5000 ft' : 'altitude=1500 m',
    },
    options.air === undefined && {
      text: `air at ${formatSi(usual.air_K, 'K', units)}`,
      override: `air=${formatSi(303.15, 'K', units)}`,
    },
    options.humidity === undefined && { text: 'half saturated with water', override: 'humidity=80%' },
  ];
  return rows
    .filter((row) => row !== false && row !== undefined)
    .map(({ text, override }) => ({
      text,
      ...(override === undefined ? {} : { override: override.replace(/ \([\d /]+\)/, '') }),
    }));
}

/** How each doubt can be narrowed at home. */
const bag = 'hold a 30 gal bag over the tuyere and time how fast it fills';
const tube = 'a clear U-tube of water at the blower shows its pressure in the running furnace';
export const atHome: Readonly<Record<BlastKey, { is: string; measure: string }>> = {
  free_m3_s: { is: "the blower's free flow", measure: 'hold a 30 gal bag over its bare mouth and time it' },
  shut_Pa: {
    is: "the blower's shut-off pressure",
    measure: 'a clear U-tube of water on its mouth, shut off for a second',
  },
  entrance: { is: 'the loss into the pipe', measure: bag },
  bend: { is: 'the loss at the bends', measure: bag },
  friction: { is: "the hose's friction", measure: tube },
  lump_m: { is: 'the size of the lumps', measure: 'measure twenty of them, and sieve out fines' },
  void_share: {
    is: 'the room between the lumps',
    measure: 'fill a bucket with lumps, then with water: the share that goes in',
  },
  sphericity: { is: 'the shape of the lumps', measure: tube },
  roughness_factor: { is: 'the roughness of the bed', measure: tube },
  bed_K: { is: "the bed's temperature", measure: tube },
  co_share: { is: 'the carbon that leaves as CO', measure: 'weigh the fuel burned in an hour against the air' },
  excess_air: { is: 'excess air', measure: 'a flue gas meter in the vent' },
  ash: { is: 'ash', measure: 'burn 200 g to white ash on a steel lid outdoors and weigh it' },
  moisture: { is: 'water in the fuel', measure: 'weigh 200 g, dry them at 105 °C (220 °F) over night, weigh again' },
  dry_J_kg: { is: 'the heating value', measure: 'the supplier may state it' },
};

export function doubtOf({ doubt, met }: BlastParts): string {
  const moved = [
    {
      of: met === undefined ? 'the air' : 'whether it is enough',
      mover: met === undefined ? doubt.movesMost.flow : doubt.movesMost.cover,
    },
    ...(met === undefined ? [{ of: 'the heat', mover: doubt.movesMost.power }] : []),
  ].flatMap(({ of, mover }) => (mover ? [{ of, ...mover }] : []));
  if (moved.length === 0) return 'at an end of the spreads no air passes, or too fast for these formulas: no range';
  return moved
    .filter(({ input }, at, all) => all.findIndex((one) => one.input === input) === at)
    .map(
      ({ of, input, share }) =>
        `for ${of}, ${atHome[input].is} (${percent(share)} of the spread): ${atHome[input].measure}`,
    )
    .join('; ');
}
