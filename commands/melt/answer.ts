import { fumeLimits } from '../../core/melt/data/fume-limits.ts';
import type { MeltEstimate } from '../../core/melt/melt.ts';
import { hotFace_K } from '../../core/melt/melt-heat.ts';
import type { Answer, AnswerContext } from '../command.ts';
import { readFuel } from '../flame/fuel.ts';
import { about } from '../options.ts';
import { typedLength } from '../size/parts.ts';
import { readStack } from '../wall/layers.ts';
import { refilledText, type UnfitLining, unfitLining, unfitSays } from '../wall/unfit.ts';
import { meltChart } from './chart.ts';
import { figuresOf, lift_kg } from './figures.ts';
import { furnaceOptions, type MeltOptions } from './options.ts';
import { type AskedMelt, typedNumber } from './question.ts';
import { doubtOf, headlineOf, notesOf, pourTable } from './words.ts';

interface Parts {
  /** Where the furnace that was named does not stand this metal. */
  readonly unfit: UnfitLining | undefined;
  readonly relined: string | undefined;
  readonly asked: AskedMelt;
  readonly estimate: MeltEstimate;
  readonly options: MeltOptions;
  readonly context: AnswerContext;
}

export function meltCard(question: Omit<Parts, 'unfit' | 'relined'>): Answer {
  const parts: Parts = { ...question, ...liningOf(question) };
  const { asked, estimate, options, context } = parts;
  const { units } = context;
  const { alloy, form, pot, pour_K } = estimate.question;
  const working = [...asked.crucible.steps(), ...estimate.steps()];
  return {
    headline: [
      headlineOf(estimate, asked, units),
      ...unfitSays(parts.unfit, { metal: alloy.name, change: parts.relined, units }),
    ].join(' '),
    figures: figuresOf(estimate, asked),
    table: pourTable(estimate, units),
    chart: meltChart(estimate, units),
    notes: notesOf(estimate, units),
    assumed: asked.assumed,
    doubt: doubtOf(estimate),
    sources: [
      ...new Set([
        ...[alloy.solidus_K, alloy.liquidus_K, alloy.pour_K, alloy.liquid_density_kg_m3].map(({ source }) => source),
        ...working.map(({ source }) => source),
        ...fumeLimits.filter(({ element }) => alloy.composition[element]).map(({ source }) => source),
        ...(pot.id === 'steel' && alloy.family === 'aluminium' ? ['niinomi-1982'] : []),
        ...(alloy.family === 'iron' ? ['cupola-course-13'] : []),
      ]),
    ],
    working,
    handsOver: handsOver(parts),
    hazards: {
      facts: [
        ...alloy.hazards,
        ...form.hazards,
        ...(parts.unfit ? ['lining-short'] : []),
        ...(options.place === 'indoors' ? ['indoors'] : []),
        ...(pot.id === 'steel' ? ['reused-pot'] : []),
        ...(asked.crucibleGiven && estimate.charge.pours > 1 ? ['overfull-pot'] : []),
      ],
      numbers: { melt_K: pour_K.high, lift_kg: lift_kg(estimate) },
    },
    next: nextLines(parts),
  };
}

function liningOf({ estimate, options, context: { units } }: Omit<Parts, 'unfit' | 'relined'>) {
  const { layers: said, bore, height } = options;
  if (said === undefined) return { unfit: undefined, relined: undefined };
  const { alloy, pour_K } = estimate.question;
  const layers = about('layers', () => readStack(said, units));
  const hot_K = hotFace_K(alloy, pour_K.typical);
  const unfit = unfitLining({ layers, hot_K, bore_m: bore?.si, height_m: height?.si }, units);
  return { unfit, relined: unfit?.fitting && `layers=${refilledText(layers.layers, unfit.fitting)}` };
}

const joulesPerBtu = 1055.05585262;

/** For `fuel`, `blast`, `flame` and `wall`: as it would be typed. */
function handsOver({ asked, estimate, options, context: { units } }: Parts): Record<string, string> {
  const { question, typical } = estimate;
  const { shape } = asked.crucible;
  const US = units === 'US';
  const celsius = question.pour_K.typical - 273.15;
  return {
    metal: question.alloy.id.replaceAll('-', ' '),
    amount: asked.amount,
    pour: US ? `${(celsius * 1.8 + 32).toFixed(1)} °F` : `${celsius.toFixed(1)} °C`,
    heat: US ? `${typedNumber(typical.heat_J / joulesPerBtu)} Btu` : `${typedNumber(typical.heat_J / 1e6)} MJ`,
    crucible: `${typedLength(2 * shape.outside_radius_m, units)} x ${typedLength(shape.height_m, units)}`,
    ...(options.material === undefined ? {} : { material: options.material }),
    ...Object.fromEntries(
      furnaceOptions.flatMap((name) => {
        const value = options[name];
        if (value === undefined) return [];
        return [[name, typeof value === 'string' ? value : `${value.text} ${value.assumedUnit ?? ''}`.trim()]];
      }),
    ),
  };
}

function nextLines({ asked, estimate, options, context: { commands } }: Parts): NonNullable<Answer['next']> {
  const has = (name: string) => commands.some((one) => one.name === name);
  const { alloy } = estimate.question;
  // What asks this question again stands before what asks another one about it.
  return [
    asked.section === 'thin'
      ? { label: 'for heavy sections', line: 'again section=heavy' }
      : { label: 'for thin sections', line: 'again section=thin' },
    ...(has('fuel') ? [{ label: 'how much fuel, how long', line: 'fuel for=last' }] : []),
    ...(has('size melt') && !asked.crucibleGiven
      ? [{ label: 'the furnace for it', line: `size melt ${asked.amount} ${alloy.id.replaceAll('-', ' ')}` }]
      : []),
    ...(has('flame')
      ? [
          {
            label: 'how hot a flame gets',
            line: `flame ${options.fuel === undefined ? 'propane' : readFuel(options.fuel).id}`,
          },
        ]
      : []),
    { label: 'how that was worked out', line: 'why' },
  ];
}
