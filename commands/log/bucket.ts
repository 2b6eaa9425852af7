import { AskError } from '../../core/ask-error.ts';
import { readingErrors } from '../../core/build/log-data.ts';
import { findMaterial } from '../../core/materials/catalogue.ts';
import type { Datum, Material } from '../../core/materials/material.ts';
import { recipes } from '../../core/mix/recipes.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { formatBoth, formatSi } from '../../core/quantity/format.ts';
import type { Assumption } from '../card.ts';
import type { Command } from '../command.ts';
import type { Build } from '../memory.ts';
import { about } from '../options.ts';
import { capital } from '../sentence.ts';
import { faceOf } from './face.ts';
import { addEntry, buildFor, logFamily, momentOf } from './family.ts';
import { figure, logFigures } from './figures.ts';
import { type BucketOptions, bucketOptions } from './options.ts';
import { filledWords } from './words.ts';

export const logBucket = {
  ...logFamily,
  name: 'log bucket',
  summary: 'Log one weighed bucket, rammed or loose: weights of mix and size for=<build> follow it.',
  options: bucketOptions,
  subject: 'volume',
  examples: [
    { line: 'log bucket 5 L mass=9.1 kg', says: 'the lining of the newest build, rammed as in its wall, dried' },
    { line: 'log bucket 5 gal mass=4.4 lb of=vermiculite', says: 'loose fill, levelled off' },
    {
      line: 'log bucket 2 L mass=4.4 kg empty=0.4 kg damp=7% build=club lining',
      says: 'fresh mix, weighed with its bucket',
    },
  ],
  hazards: ['silica-dust', 'dry-powder'],
  figures: logFigures,
  async answer(options, context) {
    const { units } = context;
    const { volume, mass, damp, empty } = options;
    const where = await buildFor(options.build, context);
    const { build } = where;
    const { material, assumed } = materialOf(options, build);
    const how = options.how ?? (packed.has(material.kind) ? 'rammed' : 'loose');
    const expected = densityOf(material, how);
    const net_kg = mass.si - (empty?.si ?? 0);
    if (net_kg <= 0) throw nothingIn(options, units);
    const density = net_kg / volume.si / (1 + (damp?.si ?? 0));
    refuseImpossible({ density, expected, options, material, how, units });
    const at = await momentOf(options.on, context);
    const data = {
      material: material.id,
      how,
      volume_m3: volume.si,
      mass_kg: net_kg,
      ...(damp ? { damp: damp.si } : {}),
    };
    await addEntry(where, { kind: 'bucket', at, data }, context);
    const error = readingErrors[how === 'rammed' ? 'rammed_bucket' : 'loose_bucket'];
    const outside = density < expected.low || density > expected.high;
    return {
      headline: `${capital(filledWords(material, how))}: ${formatBoth(density, 'kg/m3', units)} dry, where the catalogue has ${rangeText(expected, units)}.`,
      figures: [
        figure('log.density', 'by your bucket', density, 'kg/m3', {
          range: { low: density * (1 - error.value), high: density * (1 + error.value) },
          rangeBasis: 'judged',
          note: 'how well one bucket stands for all',
        }),
        figure('log.expected', 'in the catalogue', expected.typical, 'kg/m3', {
          range: expected,
          rangeBasis: 'judged',
        }),
      ],
      notes: outside
        ? [
            'That is outside of what the catalogue has: possible, but worth a second bucket. Did the empty one stand on the scale (empty=)?',
          ]
        : [],
      assumed: [
        ...where.assumed,
        ...assumed,
        ...(options.how === undefined ? [{ text: how, override: `how=${how === 'rammed' ? 'loose' : 'rammed'}` }] : []),
        ...(damp === undefined ? [{ text: 'weighed dry', override: 'damp=7%' }] : []),
        ...(empty === undefined ? [{ text: 'without the bucket', override: 'empty=0.4 kg' }] : []),
      ],
      sources: [...new Set([expected.source, error.source, 'derived'])],
      working: [
        {
          formula: 'dry density = mass ÷ volume ÷ (1 + water)',
          inputs: { mass_kg: net_kg, volume_m3: volume.si, water: damp?.si ?? 0 },
          gives: { dry_density_kg_m3: density },
          source: 'derived',
        },
      ],
      hazards: { facts: material.hazards },
      next: [
        build.ask.command === 'mix'
          ? { label: 'the mix, by this bucket', line: `mix for=${build.name}` }
          : { label: 'all of its log', line: `log list ${build.name}` },
        { label: 'how it is fired', line: `log burn 3 kg lump charcoal time=50 min build=${build.name}` },
      ],
    };
  },
} satisfies Command<typeof bucketOptions>;

/** Rammed or cast where they stand; anything else is filled in. */
const packed: ReadonlySet<Material['kind']> = new Set(['lining', 'castable']);

function materialOf({ of }: BucketOptions, build: Build): { material: Material; assumed: readonly Assumption[] } {
  if (of !== undefined) {
    const recipe = recipes.find(({ id }) => id === of.toLowerCase());
    return { material: about('of', () => findMaterial(recipe?.lining ?? of)), assumed: [] };
  }
  const face = faceOf(build);
  if (face) {
    const material = findMaterial(face.material);
    return { material, assumed: [{ text: `of its hot face, ${material.name}`, override: 'of=vermiculite' }] };
  }
  throw new AskError({
    code: 'missing',
    what: `${build.name} does not say of what its lining is`,
    expected: 'of=…, a material of the catalogue',
    example: 'clay-sand',
    option: 'of',
  });
}

function densityOf({ name, properties }: Material, how: 'rammed' | 'loose'): Datum {
  const found =
    how === 'loose' ? (properties.loose_density_kg_m3 ?? properties.density_kg_m3) : properties.density_kg_m3;
  if (found) return found;
  throw new AskError({
    code: 'unfit',
    what: `the catalogue has no ${how === 'loose' ? 'loose' : 'rammed'} density of ${name} to hold a bucket against`,
    expected:
      how === 'loose' ? 'a material with a density' : 'how=loose, or what it becomes when it is rammed: of=clay-sand',
    example: how === 'loose' ? 'clay-sand' : 'loose',
    option: how === 'loose' ? 'of' : 'how',
  });
}

/** Beyond these shares of the catalogue's ends it is another material, or another unit. */
const [least, most] = [0.6, 1.4];

function refuseImpossible({
  density,
  expected,
  options: { volume, mass },
  material,
  how,
  units,
}: {
  readonly density: number;
  readonly expected: Datum;
  readonly options: BucketOptions;
  readonly material: Material;
  readonly how: string;
  readonly units: UnitSystem;
}): void {
  if (density >= least * expected.low && density <= most * expected.high) return;
  const likely_kg = expected.typical * volume.si;
  throw new AskError({
    code: 'impossible',
    what: `${mass.text} in ${volume.text} is ${formatSi(density, 'kg/m3', units)}, and ${filledWords(material, how)} is ${rangeText(expected, units)}`,
    expected: `about ${formatSi(likely_kg, 'kg', units)} in that volume; without the bucket (empty=), and of= if it is something else`,
    example: formatSi(likely_kg, 'kg', units),
    option: 'mass',
  });
}

const nothingIn = ({ mass, empty }: BucketOptions, units: UnitSystem) =>
  new AskError({
    code: 'impossible',
    what: `the full bucket (${mass.text}) weighs no more than the empty one (${empty?.text})`,
    expected: 'the mass of the full bucket, and what it weighs empty',
    example: formatSi((empty?.si ?? 0) + 9, 'kg', units),
    option: 'mass',
  });

const rangeText = ({ low, high }: Datum, units: UnitSystem): string =>
  `${formatSi(low, 'kg/m3', units)} to ${formatSi(high, 'kg/m3', units)}`.replace(/ \S+ to /, ' to ');
