import { findMaterial } from '../../core/materials/catalogue.ts';
import type { Spread } from '../../core/materials/spread.ts';
import type { Estimate } from '../../core/mix/estimate.ts';
import { bagsFor } from '../../core/mix/price.ts';
import type { Figure } from '../../core/quantity/figure.ts';
import { formatFigure } from '../../core/quantity/format.ts';
import type { Step } from '../../core/step.ts';
import type { Assumption } from '../card.ts';
import type { Answer, AnswerContext } from '../command.ts';
import { type KnownPrice, whosePrices } from '../prices.ts';
import { capital } from '../sentence.ts';
import { costOf, noCostNote, type Sold, shortName, soldAs } from './cost.ts';
import type { MixOptions } from './options.ts';
import type { MixQuestion } from './question.ts';

interface Parts {
  readonly question: MixQuestion;
  readonly options: MixOptions;
  readonly estimate: Estimate;
  readonly prices: ReadonlyMap<string, KnownPrice>;
  readonly context: AnswerContext;
}

/** NIOSH lifting equation, load constant: what one person lifts in an ideal posture. */
const oneLift_kg = 23;

export function mixAnswer(parts: Parts): Answer {
  const { question, options, estimate, context } = parts;
  const { typical } = estimate;
  const show = (figure: Figure) => {
    const { lead, range } = formatFigure(figure, context.units);
    return range === undefined ? lead : `${lead} (${range})`;
  };
  const sold = estimate.typical.ingredients.map(({ material }) => soldAs(material, parts.prices));
  const ingredients = ingredientFigures(parts, sold);
  const water = waterFigure(parts);
  const wet = sampled('mix.wet_mass', 'wet mix', typical.wet_mass_kg, 'kg', estimate.ranges.wet);
  const volume: Figure = {
    ...sampled(
      'mix.volume',
      'fills, rammed',
      estimate.volume_m3,
      'm3',
      'volume_m3' in question.estimate.amount ? undefined : estimate.ranges.volume,
    ),
    shown: 'bulk',
  };
  const masses = ingredients.filter(({ id }) => id.endsWith('_mass'));
  const name = capital(question.ownRatio ? 'own ratio' : question.recipe.name);
  const cost = costOf(estimate, sold);
  return {
    headline: `${name}: ${masses.map((one) => `${show(one)} ${one.label}`).join(', ')}, with about ${show(water)} of water, fills ${show(volume)}.`,
    figures: [
      ...ingredients,
      water,
      wet,
      volume,
      ...afterwards(parts),
      ...(cost ? [judged('mix.cost', 'cost', cost.total, cost.currency)] : []),
    ],
    notes: [...notesOf(parts), ...noCostNote(sold)],
    given: whosePrices(
      sold.flatMap((one) => one?.known ?? []),
      context.now,
      context.units,
    ),
    assumed: assumptions(question, options, sold),
    doubt: estimate.movesMost
      ? `${estimate.movesMost.input} (${Math.round(estimate.movesMost.share * 100)} % of the spread)`
      : 'nothing that was sampled',
    sources: ['derived', question.recipe.source, ...question.estimate.parts.flatMap(sourcesOf)].filter(
      (one, index, all) => all.indexOf(one) === index,
    ),
    working: [...lookUps(question), ...typical.steps(), ...question.fitness.steps()],
    handsOver: { amount: `${estimate.volume_m3.toPrecision(6)} m3`, recipe: question.recipe.id },
    hazards: {
      facts: [
        ...(options.damp && options.damp.si > 0 ? ['damp-lining'] : []),
        ...question.estimate.parts.flatMap(({ material }) => findMaterial(material).hazards),
      ],
      numbers: { lift_kg: options.tub?.dimension === 'mass' ? options.tub.si : (wet.range?.high ?? wet.value) },
    },
    next: nextLines(question, options),
  };
}

function sampled(id: string, label: string, value: number, unit: Figure['unit'], range: Figure['range']): Figure {
  return range && range.high > range.low
    ? { id, label, value, unit, range: { low: range.low, high: range.high }, rangeBasis: 'sampled' }
    : { id, label, value, unit, rangeBasis: 'none' };
}

function judged(id: string, label: string, spread: Spread, unit: Figure['unit']): Figure {
  return {
    id,
    label,
    value: spread.typical,
    unit,
    range: { low: spread.low, high: spread.high },
    rangeBasis: 'judged',
  };
}

function ingredientFigures({ estimate }: Parts, bags: readonly (Sold | undefined)[]): readonly Figure[] {
  return estimate.typical.ingredients.flatMap((one, index, all): Figure[] => {
    const label = shortName(one.material);
    const sold = bags[index];
    const count = sold ? bagsFor(sold, { mass_kg: one.weighed_kg, loose_volume_m3: one.loose_volume_m3 }) : undefined;
    const earlier = all.slice(0, index).filter(({ slot }) => slot === one.slot).length;
    const id = `mix.${one.slot}${earlier === 0 ? '' : earlier + 1}`;
    return [
      {
        ...sampled(`${id}_mass`, label, one.weighed_kg, 'kg', estimate.ranges[`mass${index}`]),
        ...(count === undefined ? {} : { note: `${count} ${count === 1 ? 'bag' : 'bags'}` }),
      },
      {
        ...sampled(`${id}_volume`, `${label}, loose`, one.loose_volume_m3, 'm3', estimate.ranges[`loose${index}`]),
        shown: 'bulk',
      },
    ];
  });
}

function waterFigure({ estimate, question }: Parts): Figure {
  const note =
    question.recipe.method === 'ram'
      ? 'stop when a squeezed lump holds and breaks clean'
      : "the maker's amount wins; add the last part by the cup";
  // Water in kg fills as many litres: 1000 kg/m³ at the tap.
  const litres = (kg: number) => kg / 1000;
  const range = estimate.ranges.water;
  return {
    ...sampled(
      'mix.water',
      'water to add',
      litres(estimate.typical.water_kg),
      'm3',
      range && { low: litres(range.low), high: litres(range.high) },
    ),
    shown: 'liquid',
    note,
  };
}

function afterwards({ question, options, estimate }: Parts): readonly Figure[] {
  const { properties } = findMaterial(question.recipe.lining);
  const { typical } = estimate;
  const lost_kg = typical.ingredients.reduce(
    (sum, one) => sum + one.dry_mass_kg * (findMaterial(one.material).properties.ignition_loss?.typical ?? 0),
    0,
  );
  const { temper_s, sieve_m } = question.recipe;
  const found: (Figure | undefined)[] = [
    sampled('mix.dry_mass', 'dried', typical.dry_mass_kg, 'kg', estimate.ranges.dry),
    { id: 'mix.fired_mass', label: 'fired', value: typical.dry_mass_kg - lost_kg, unit: 'kg', rangeBasis: 'none' },
    properties.drying_shrinkage && {
      ...judged('mix.drying_shrinkage', 'shrinks drying', properties.drying_shrinkage, '1'),
      shown: 'percent',
    },
    properties.firing_shrinkage && {
      ...judged('mix.firing_shrinkage', 'shrinks firing', properties.firing_shrinkage, '1'),
      shown: 'percent',
    },
    temper_s.high > 0 ? { ...judged('mix.temper', 'rest in a closed bag', temper_s, 's'), shown: 'hours' } : undefined,
    { id: 'mix.sieve', label: 'sieve the aggregate at', value: sieve_m, unit: 'm', rangeBasis: 'none' },
    Number.isFinite(question.fitness.limit_K)
      ? {
          id: 'mix.limit',
          label: 'holds to',
          value: question.fitness.limit_K,
          unit: 'K',
          rangeBasis: 'none',
          note: 'adverse end',
        }
      : undefined,
    options.tub && batches(estimate, options.tub),
  ];
  return found.filter((one) => one !== undefined);
}

function batches({ typical, volume_m3, ranges }: Estimate, tub: NonNullable<MixOptions['tub']>): Figure {
  const loose_m3 = typical.ingredients.reduce((sum, one) => sum + one.loose_volume_m3, 0);
  const whole = tub.dimension === 'mass' ? (ranges.wet?.high ?? typical.wet_mass_kg) : Math.max(loose_m3, volume_m3);
  return {
    id: 'mix.batches',
    label: `batches in ${tub.text}`,
    value: Math.ceil(whole / tub.si),
    unit: 'count',
    rangeBasis: 'none',
  };
}

function notesOf({ question, estimate, options }: Parts): readonly string[] {
  const heavy = (estimate.ranges.wet?.high ?? estimate.typical.wet_mass_kg) > oneLift_kg;
  return [
    ...(question.ownRatio ? [] : [question.recipe.note]),
    ...question.changes,
    ...(question.recipe.method === 'ram'
      ? [
          'Squeeze test: a handful holds its shape, breaks in two clean pieces and leaves the palm dry (common practice, no source).',
        ]
      : []),
    ...(heavy && !options.tub ? ['More than one person lifts at once (23 kg, 51 lb): tub= counts the batches.'] : []),
    ...(question.fitness.margin_K === undefined
      ? []
      : [
          `Margin above the face that ${options.metal} needs: ${Math.round(question.fitness.margin_K)} K at the adverse end.`,
        ]),
  ];
}

function assumptions(
  question: MixQuestion,
  options: MixOptions,
  sold: readonly (Sold | undefined)[],
): readonly Assumption[] {
  const common = sold.flatMap((one) => (one && !one.known ? [one.name] : []));
  const clay = question.estimate.parts.some(({ slot }) => slot === 'clay');
  const rows: (Assumption | undefined)[] = [
    options.recipe === undefined && options.ratio === undefined
      ? { text: `${question.recipe.name}, parts by ${question.recipe.by}`, override: 'recipe=castable' }
      : undefined,
    clay && !options.damp ? { text: 'clay bone dry', override: 'damp=10%' } : undefined,
    clay && options.damp ? { text: "damp is water over the clay's dry weight", override: 'damp=0%' } : undefined,
    options.ram === undefined && question.recipe.method === 'ram'
      ? { text: 'rammed hard', override: 'ram=light' }
      : undefined,
    options.spare === undefined ? { text: '10 % spare in it', override: 'spare=5%' } : undefined,
    options.metal === undefined
      ? { text: `a ${question.role}, metal not named`, override: 'metal=aluminium' }
      : undefined,
    common.length === 0
      ? undefined
      : {
          text: `common bags and prices${common.length === sold.length ? '' : ` of ${common.join(', ')}`}, as remembered`,
          override: 'prices=clay 50 lb $9; sand 50 lb $5',
        },
  ];
  return rows.filter((one) => one !== undefined);
}

/** What was taken from the catalogue, with its source, before anything is computed. */
function lookUps({ recipe, estimate }: MixQuestion): readonly Step[] {
  const rows = [
    { of: recipe.lining, what: 'density, dry', datum: findMaterial(recipe.lining).properties.density_kg_m3 },
    ...estimate.parts.map(({ material }) => ({
      of: material,
      what: 'bulk density, loose',
      datum: findMaterial(material).properties.loose_density_kg_m3,
    })),
  ];
  return rows.flatMap(({ of, what, datum }) =>
    datum
      ? [
          {
            formula: `${findMaterial(of).name}: ${what}, from the catalogue (${datum.standing})`,
            inputs: { low_kg_m3: datum.low, high_kg_m3: datum.high },
            gives: { typical_kg_m3: datum.typical },
            source: datum.source,
          },
        ]
      : [],
  );
}

const sourcesOf = ({ material }: { material: string }): readonly string[] => {
  const source = findMaterial(material).properties.loose_density_kg_m3?.source;
  return source === undefined ? [] : [source];
};

/** Follow-ups that this very question allows: no castable for someone who listed what they have. */
const nextLines = ({ recipe }: MixQuestion, { have, ratio }: MixOptions): NonNullable<Answer['next']> => [
  ...(have !== undefined || ratio !== undefined
    ? []
    : recipe.id === 'castable'
      ? [{ label: 'the same in clay and sand', line: 'again recipe=clay-sand' }]
      : [{ label: 'the same in castable', line: 'again recipe=castable' }]),
  { label: 'how many batches', line: 'again tub=20 kg' },
  { label: 'how that was worked out', line: 'why' },
];
