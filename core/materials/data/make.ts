import type { SourceId, Standing } from '../../sources/source.ts';
import type { Curve, Datum } from '../material.ts';

export const celsius = (degrees: number): number => degrees + 273.15;
export const inches = (length: number): number => length * 0.0254;
export const usGallons = (volume: number): number => volume * 0.003785411784;

/** Where a number is from and how much weight it bears. */
export interface Cite {
  readonly source: SourceId;
  readonly standing: Standing;
}
export const published = (source: SourceId): Cite => ({ source, standing: 'published' });
export const MEMORY: Cite = { source: 'from-memory', standing: 'from memory' };
export const DERIVED: Cite = { source: 'derived', standing: 'derived' };
export const PRACTICE: Cite = { source: 'common-practice', standing: 'common practice' };

const noted = (note: string | undefined) => (note === undefined ? {} : { note });

export const datum = (low: number, typical: number, high: number, cite: Cite, note?: string): Datum => ({
  low,
  typical,
  high,
  ...cite,
  ...noted(note),
});

/** A temperature given in °C, kept in K. */
export const degrees = (low: number, typical: number, high: number, cite: Cite, note?: string): Datum =>
  datum(celsius(low), celsius(typical), celsius(high), cite, note);

type Row = readonly [T_C: number, low: number, typical: number, high: number];

export const curve = (kind: Curve['kind'], cite: Cite, rows: readonly Row[], note?: string): Curve => ({
  T_K: rows.map(([T]) => celsius(T)),
  low: rows.map(([, low]) => low),
  typical: rows.map(([, , typical]) => typical),
  high: rows.map(([, , , high]) => high),
  kind,
  ...cite,
  ...noted(note),
});

/** The typical line with its range known only as factors of it. */
export const banded = (
  kind: Curve['kind'],
  cite: Cite,
  rows: readonly (readonly [T_C: number, typical: number])[],
  [least, most]: readonly [least: number, most: number],
  note?: string,
): Curve =>
  curve(
    kind,
    cite,
    rows.map(([T, typical]) => [T, typical * least, typical, typical * most]),
    note,
  );

/** Fired or dried clay bodies: true heat capacity, kept wide because no excerpt of a table was seen. */
export const clayBodyHeat = banded(
  'local',
  MEMORY,
  [
    [20, 800],
    [600, 1080],
    [1000, 1110],
  ],
  [0.92, 1.06],
);
