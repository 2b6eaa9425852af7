import { z } from 'zod';
import { AskError } from '../../core/ask-error.ts';
import { findMaterial } from '../../core/materials/catalogue.ts';
import type { Datum, Material, PropertyName } from '../../core/materials/material.ts';
import type { Figure, UnitSystem } from '../../core/quantity/figure.ts';
import { formatFigure } from '../../core/quantity/format.ts';
import type { Command } from '../command.ts';
import { splitVersus } from '../grammar.ts';
import { about, text } from '../options.ts';
import { conductivityChart } from './chart.ts';
import { propertyLabels } from './labels.ts';

const options = z.strictObject({ material: text({ label: 'a material, or two with vs between', most: 120 }) });

export const stuff = {
  name: 'stuff',
  summary: "A material's properties with their sources, or two side by side.",
  options,
  subject: 'material',
  examples: [
    { line: 'stuff vermiculite', says: 'what it is good for, where it fails, and its numbers' },
    { line: 'stuff vermiculite vs perlite', says: 'two side by side' },
  ],
  hazards: ['hot-work'],
  figures: Object.fromEntries(Object.entries(propertyLabels).map(([name, { label }]) => [idOf(name), label])),
  async answer({ material }, { units }) {
    const names = splitVersus(material);
    if (names.length > 2 || names.some((name) => name === '')) throw wrongCount();
    const [first, second] = about('material', () => names.map(findMaterial));
    if (!first) throw wrongCount();
    return second ? sideBySide(first, second, units) : one(first, units);
  },
} satisfies Command<typeof options>;

function one(material: Material, units: UnitSystem) {
  return {
    headline: `${material.name}: ${material.goodFor}`,
    figures: propertiesOf(material).map(([name, datum]) => figureOf(name, datum)),
    table: curveTable([material], units),
    ...conductivityChart([material], units),
    notes: [
      `Fails when: ${material.failsWhen}`,
      ...(material.hotFace ? [`As a hot face: ${material.hotFace.fit}. ${material.hotFace.why}`] : []),
      ...(material.aliases.length > 0 ? [`Also called: ${material.aliases.join(', ')}`] : []),
      ...propertiesOf(material).flatMap(([name, { note }]) => (note ? [`${labelOf(name)}: ${note}`] : [])),
    ],
    assumed: [],
    doubt: 'the grade you buy: the ranges are over grades, not errors of measurement',
    sources: sourcesOf(material),
    hazards: { facts: material.hazards },
    next: [
      {
        label: 'beside another',
        line: `stuff ${material.id} vs ${material.id === 'perlite' ? 'vermiculite' : 'perlite'}`,
      },
      { label: 'a mix to fill a lining', line: 'mix 30 L' },
    ],
  };
}

function sideBySide(a: Material, b: Material, units: UnitSystem) {
  const names = Object.keys(propertyLabels).filter(
    (name) => name in a.properties || name in b.properties,
  ) as PropertyName[];
  const cell = (material: Material, name: PropertyName) => {
    const datum = material.properties[name];
    if (!datum) return '–';
    const { lead, range } = formatFigure(figureOf(name, datum), units);
    return `${lead}${range ? ` (${range})` : ''}, ${datum.standing}`;
  };
  const curves = curveTable([a, b], units);
  return {
    headline: `${a.name}: ${a.goodFor} ${b.name}: ${b.goodFor}`,
    figures: [],
    table: {
      columns: ['', a.name, b.name],
      rows: [...names.map((name) => [labelOf(name), cell(a, name), cell(b, name)]), ...curves.rows],
    },
    ...conductivityChart([a, b], units),
    notes: [`${a.name} fails when: ${a.failsWhen}`, `${b.name} fails when: ${b.failsWhen}`],
    assumed: [],
    doubt: 'the grade you buy: the ranges are over grades, not errors of measurement',
    sources: [...new Set([...sourcesOf(a), ...sourcesOf(b)])],
    hazards: { facts: [...a.hazards, ...b.hazards] },
    next: [
      { label: a.name, line: `stuff ${a.id}` },
      { label: b.name, line: `stuff ${b.id}` },
    ],
  };
}

function idOf(name: string): string {
  return `stuff.${name.replace(/(_kg_m3|_per_K|_Pa|_K)$/, '')}`;
}

const labelOf = (name: PropertyName): string => propertyLabels[name].label;

const propertiesOf = ({ properties }: Material) => Object.entries(properties) as [PropertyName, Datum][];

function figureOf(name: PropertyName, { low, typical, high, standing }: Datum): Figure {
  const { label, unit, shown } = propertyLabels[name];
  const base = { id: idOf(name), label, value: typical, unit, note: standing, ...(shown ? { shown } : {}) };
  return low < high ? { ...base, range: { low, high }, rangeBasis: 'judged' } : { ...base, rangeBasis: 'none' };
}

const sourcesOf = ({ properties, conductivity_W_mK: k, heat_capacity_J_kgK: c }: Material): readonly string[] => [
  ...new Set([
    ...Object.values(properties).flatMap((datum) => (datum ? [datum.source] : [])),
    ...[k, c].flatMap((one) => (one ? [one.source] : [])),
  ]),
];

/** Conductivity at each tabulated temperature: it grows several times over on the way up. */
function curveTable(materials: readonly Material[], units: UnitSystem) {
  const temperatures = [...new Set(materials.flatMap(({ conductivity_W_mK: k }) => k?.T_K ?? []))].toSorted(
    (a, b) => a - b,
  );
  const cell = ({ conductivity_W_mK: k }: Material, T_K: number) => {
    const at = k?.T_K.indexOf(T_K) ?? -1;
    return k && at >= 0
      ? `${digits(k.typical[at])} (${digits(k.low[at])} to ${digits(k.high[at])}), ${k.standing}`
      : '–';
  };
  const name = (T_K: number) => {
    const { lead } = formatFigure({ id: 'T', label: 'T', value: T_K, unit: 'K', rangeBasis: 'none' }, units);
    return `conductivity at ${lead}, W/(m K)`;
  };
  return {
    columns: ['', ...materials.map((one) => one.name)],
    rows: temperatures.map((T_K) => [name(T_K), ...materials.map((one) => cell(one, T_K))]),
  };
}

/** A conductivity to the two digits that its spread deserves. */
const digits = (value: number | undefined): string => Number((value ?? Number.NaN).toPrecision(2)).toString();

const wrongCount = () =>
  new AskError({
    code: 'unreadable',
    what: 'stuff takes one material, or two with vs between',
    expected: 'names from the catalogue',
    example: 'vermiculite vs perlite',
    option: 'material',
  });
