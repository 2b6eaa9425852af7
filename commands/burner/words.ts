import { FLAME } from '../../core/fire/propane/flame-holding.ts';
import { formatFigure, formatSi } from '../../core/quantity/format.ts';
import type { Assumption } from '../card.ts';
import { capital } from '../sentence.ts';
import { typedLength } from '../size/parts.ts';
import { burnerFigures } from './figures.ts';
import { type BurnerParts, RICH } from './parts.ts';
import { type BurnerKey, LOWER_J_kg, usual } from './question.ts';

const percent = (share: number): string => `${Math.round(share * 100)} %`;

export function headlineOf(parts: BurnerParts): string {
  const { question, draw, tube, context, point } = parts;
  const figures = burnerFigures(parts);
  const said = (id: string) => {
    const { lead, range } = formatFigure(figures.find((one) => one.id === `burner.${id}`)!, context.units);
    return range === undefined ? lead : `${lead} (${range})`;
  };
  const { finds } = question.known;
  const found =
    finds === 'jet'
      ? `${said('rate')} is ${said('propane')} of propane: a jet of ${said('jet')} at ${said('pressure')}`
      : finds === 'pressure'
        ? `${said('rate')} is ${said('propane')} of propane: the jet of ${said('jet')} takes ${said('pressure')}`
        : `A jet of ${said('jet')} at ${said('pressure')} lets ${said('propane')} of propane through: ${said('rate')}`;
  const wanted =
    question.wanted_kg_s === undefined ? '' : `, ${percent(point.flow_kg_s / question.wanted_kg_s)} of what was asked`;
  const air =
    tube === undefined
      ? ''
      : tube.chosen
        ? `, in a mixing tube of ${formatSi(tube.bore_m, 'm', context.units)}`
        : `; its tube draws ${said('air')} of the air it needs`;
  const bottles = `${question.bottles > 1 ? `${question.bottles} bottles` : 'a bottle'} of ${formatSi(question.bottle.fill_kg, 'kg', context.units)}`;
  const end = draw.down.cold_s === undefined ? 'until empty' : 'until too cold, not empty';
  return `${found}${wanted}${air}. ${capital(bottles)} ${question.bottles > 1 ? 'last' : 'lasts'} ${said('lasts')}, ${end}.`;
}

/** A hole is cut for one tube: by more than this in width another neither fits nor seals in it. Judged. */
const OTHER_TUBE = 0.1;

function holeNote({ tube, options, context }: BurnerParts): readonly string[] {
  const hole_m = options.tuyere?.si;
  if (hole_m === undefined || tube === undefined || Math.abs(tube.bore_m / hole_m - 1) <= OTHER_TUBE) return [];
  const show = (length_m: number) => formatSi(length_m, 'm', context.units);
  const typed = typedLength(tube.bore_m, context.units);
  return [
    `The furnace has its hole for a tube of ${show(hole_m)}, this burner's is ${show(tube.bore_m)}: ask size again with tuyere=${typed} before it is cut${tube.bore_m < hole_m ? ', or pack round it' : ''}.`,
  ];
}

export function notesOf(parts: BurnerParts): readonly string[] {
  const { question, draw, tube, regulator, context, point } = parts;
  const show = (Pa: number) => formatSi(Pa, 'Pa', context.units);
  const { bottles } = question;
  const needed = Math.ceil(point.flow_kg_s / draw.steady.draw_kg_s);
  const cold = draw.down.cold_s !== undefined;
  return [
    ...holeNote(parts),
    `By the least of its kind: ${regulator.name}, which needs ${show(question.spreads.headroom_Pa.typical)} more before it than it lets out (from memory).`,
    ...(cold
      ? [
          `Frost limit: at this air a bottle so full keeps up ${formatSi(draw.steady.draw_kg_s, 'kg/s', context.units)} ${needed > 12 ? 'and no reasonable number of bottles would do' : needed > bottles ? `and ${needed} of them would do` : 'but less as it empties: liquid must wet the shell to take heat up'}.`,
        ]
      : []),
    ...(tube
      ? tubeNotes(parts, tube)
      : ['No tube draws enough air against this pressure in the furnace: a wider vent, or more pressure at the jet.']),
    'Light with the flame there first, then the gas; gas off at the bottle first.',
  ];
}

function tubeNotes({ context, question }: BurnerParts, tube: NonNullable<BurnerParts['tube']>): readonly string[] {
  const { holding, mixing, air } = tube;
  const speed = (v: number) => formatSi(v, 'm/s', context.units);
  const show = (Pa: number) => formatSi(Pa, 'Pa', context.units);
  const { low, high } = FLAME.practical_m_s;
  const at = `The mixture runs at ${speed(mixing.tube_velocity_m_s)}`;
  return [
    air < RICH
      ? `Rich: it draws ${percent(air)} of its air. Unless more gets in round it, the flue is full of CO: a wider tube or a smaller jet.`
      : `The ratio of tube to jet sets the air, hardly the pressure; ${show(Math.max(0, mixing.stall_Pa))} in the furnace stops it, ${show(question.spreads.back_Pa.typical)} is counted with.`,
    holding.against_flashback === 'above'
      ? `${at}: the flame does not run back (a band from memory, no verdict).`
      : `${at}: slow enough that the flame may run back into the tube (a band from memory): a smaller tube or more gas.`,
    holding.against_blow_off === 'above'
      ? `A bare end does not hold the flame at that speed: a flare or a step in the refractory does; such burners run at ${speed(low)} to ${speed(high)}.`
      : `A flare or a step in the refractory holds it; such burners run at ${speed(low)} to ${speed(high)}.`,
    ...(holding.against_practical === 'above'
      ? ['That is faster than such burners run: a wider tube, or two burners.']
      : []),
  ];
}

export function assumptions({ question, options, context, tube }: BurnerParts): readonly Assumption[] {
  const { units } = context;
  const US = units === 'US';
  const { known, bottle } = question;
  const rows: (Assumption | false)[] = [
    known.finds !== 'pressure' &&
      !options.pressure && {
        text: `${formatSi(usual.pressure_Pa, 'Pa', units)} at the jet, gauge`,
        override: US ? 'pressure=20 psi' : 'pressure=150 kPa',
      },
    options.pressure?.gauge === true && {
      text: 'that pressure is gauge',
      override: `pressure=${options.pressure.text} abs`,
    },
    !options.edge && { text: `a jet ${question.edge}`, override: 'edge=welding tip' },
    known.finds === 'jet'
      ? { text: 'the hole exactly as said', override: 'jet=0.8 mm' }
      : { text: 'the drill within 0.02 mm' },
    tube?.chosen === true && { text: 'a tube for the balanced air', override: US ? 'tube=1 in' : 'tube=25 mm' },
    !options.back && { text: '0 to 20 Pa in the furnace', override: 'back=50 Pa' },
    !options.bottle && { text: `a bottle of ${formatSi(bottle.fill_kg, 'kg', units)}`, override: 'bottle=40 lb' },
    !options.fill && { text: 'full', override: 'fill=50%' },
    !options.air && { text: `air at ${formatSi(question.air_K, 'K', units)}`, override: US ? 'air=40 °F' : 'air=5 °C' },
    !options.altitude && { text: 'at sea level', override: US ? 'altitude=5000 ft' : 'altitude=1500 m' },
  ];
  return rows.filter((row) => row !== false);
}

/** How each doubt can be narrowed at home. */
const weigh = 'weigh the bottle before and after an hour';
const dial = 'a gauge before the regulator shows when the bottle fails';
export const atHome: Readonly<Record<BurnerKey, { is: string; measure: string }>> = {
  discharge: { is: "the shape of the jet's edge", measure: weigh },
  jet: { is: "the jet's bore", measure: 'the largest drill shank that goes in, or weigh the bottle over an hour' },
  gauge: { is: 'the pressure gauge', measure: weigh },
  compressibility: { is: 'how far the gas is from ideal', measure: weigh },
  losses: { is: 'the losses of tube and air holes', measure: 'a flue gas meter in the vent' },
  back_Pa: {
    is: 'the pressure in the furnace',
    measure: 'a clear U-tube of water on a pipe into the wall; a wider vent lowers it',
  },
  exchange_W_m2K: { is: 'how fast heat gets into the bottle', measure: `wind, sun and frost change it: ${dial}` },
  pressure_factor: { is: "the gas's own vapour pressure", measure: `${dial}; light ends boil off first` },
  headroom_Pa: { is: 'what the regulator needs before it', measure: dial },
  usable_share: { is: 'how far down it can be drawn', measure: 'weigh the bottle when the flame fades' },
};

export function doubtOf({ doubt, question }: BurnerParts): string {
  const { finds } = question.known;
  const moved = [
    { of: finds === 'flow' ? 'the heat' : `the ${finds}`, mover: doubt.movesMost[finds] },
    { of: 'the bottle', mover: doubt.movesMost.lasts },
  ].flatMap(({ of, mover }) => (mover ? [{ of, ...mover }] : []));
  return moved
    .map(
      ({ of, input, share }) =>
        `for ${of}, ${atHome[input].is} (${percent(share)} of the spread): ${atHome[input].measure}`,
    )
    .join('; ');
}

export const kilowatts = (flow_kg_s: number): string => `${((flow_kg_s * LOWER_J_kg) / 1000).toPrecision(4)} kW`;
