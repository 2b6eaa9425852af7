import { AskError } from '../../ask-error.ts';
import type { UnitSystem } from '../../quantity/figure.ts';
import { formatBoth } from '../../quantity/format.ts';
import { formatTape } from '../../quantity/tape.ts';
import type { Step, WithSteps } from '../../step.ts';
import type { Furnace } from '../furnace.ts';
import { type Flat, type Packing, packOnRoll } from '../layout/roll.ts';
import { diskPieces } from './disk.ts';
import { type Hole, holeOf, tubeOf } from './hole.ts';
import { lidHoops, lidPattern, lidWires } from './lid.ts';
import { boxOf } from './outline.ts';
import { type Piece, pieceArea_m2 } from './piece.ts';
import { formRules, rollWidths_m } from './rules.ts';
import { type Cone, sectorOf, slant_m } from './sector.ts';
import { type Shell, shellPieces } from './shell.ts';
import { formSteps } from './steps.ts';
import { type WireCut, wireCuts, wireLength_m, wireMass_kg } from './wire.ts';

export interface FormsInput {
  readonly furnace: Furnace;
  /** Lap at every seam. */
  readonly overlap_m: number;
  /** Width of the roll at hand, else the one of `rollWidths_m` that takes the fewest pieces and then the least mesh. */
  readonly mesh?: { readonly roll_m?: number; readonly thickness_m?: number };
  readonly clip_spacing_m: number;
  readonly radial_wires: number;
  readonly rings: number;
  /** Wire, thick. */
  readonly wire_m: number;
  /** Lead the words of a refusal. */
  readonly units: UnitSystem;
}

/** Forms of a rammed furnace, to cut from mesh and wire. */
export interface Forms extends WithSteps {
  readonly pieces: readonly Piece[];
  readonly mesh: Packing & { readonly width_m: number; readonly area_m2: number; readonly waste: number };
  readonly wires: readonly WireCut[];
  readonly clips_count: number;
  readonly wire_length_m: number;
  readonly wire_mass_kg: number;
  readonly advice: readonly string[];
}

/** The two shells in mid-thickness: the inner stands inside the bore's face, the outer outside the lining's. */
export interface Shells {
  readonly inner: Cone;
  readonly outer: Cone;
  readonly innerHole: Hole;
  readonly outerHole: Hole;
}

/** Panels beyond which a roll is no use. */
const MOST_PANELS = 24;
/** Less taper than this nobody can cut: the form is straight. */
const LEAST_TAPER_m = 1e-5;

/**
 * Flat patterns, cut list and mesh for the forms of a furnace: an inner shell at the bore, an outer one at the
 * lining's outside and down to the floor's underside, its bottom, the lid's two hoops and its wires.
 * Lengths in m; developed lengths in mid-thickness. Derived; counts and laps are common practice.
 * @throws AskError `impossible` for a taper that closes to a point, a hole that misses, a roll too narrow;
 * `out-of-range` for laps, spacings and counts that nobody could build.
 */
export function formsFor(input: FormsInput): Forms {
  refuseUnbuildable(input);
  const thickness_m = input.mesh?.thickness_m ?? formRules.mesh_m.typical;
  const shells = shellsOf(input.furnace, thickness_m, input.units);
  const widths = input.mesh?.roll_m === undefined ? rollWidths_m : [input.mesh.roll_m];
  const splits = splitsOf(input, shells, thickness_m);
  const cut = widths.flatMap((width_m) => cutFrom(splits, width_m) ?? []);
  const best = cut.reduce<Cut | undefined>((least, one) => (!least || isLess(one, least) ? one : least), undefined);
  if (best === undefined) throw tooNarrow(Math.max(...widths), input.units);
  const { furnace, clip_spacing_m, wire_m } = input;
  const lid = lidWires(furnace.lid, input);
  const middle: Cone = {
    bottom_radius_m: (shells.inner.bottom_radius_m + atFloor_m(shells, furnace)) / 2,
    top_radius_m: (shells.inner.top_radius_m + shells.outer.top_radius_m) / 2,
    height_m: shells.inner.height_m,
  };
  const round_m = 2 * Math.PI * shells.outer.bottom_radius_m;
  const seams_m = best.innerPanels * slant_m(shells.inner) + best.outerPanels * slant_m(shells.outer) + round_m;
  const wires = wireCuts({ middle, wall_m: furnace.wall_m, clip_spacing_m, seams_m, lid });
  const wire_length_m = wireLength_m(wires);
  const forms = {
    pieces: Object.freeze([...best.pieces, lidPattern(furnace.lid, lid)]),
    mesh: Object.freeze(best.mesh),
    wires: Object.freeze(wires),
    clips_count: wires.find(({ name }) => name === 'clip')?.count ?? 0,
    wire_length_m,
    wire_mass_kg: wireMass_kg({ length_m: wire_length_m, wire_m }),
    advice: Object.freeze(adviceOf(furnace, shells, best)),
  };
  return Object.freeze({ ...forms, steps: (): readonly Step[] => formSteps({ input, shells, thickness_m, forms }) });
}

interface Cut {
  readonly pieces: readonly Piece[];
  readonly innerPanels: number;
  readonly outerPanels: number;
  readonly mesh: Forms['mesh'];
}

const isLess = (one: Cut, other: Cut): boolean =>
  one.pieces.length === other.pieces.length
    ? one.mesh.area_m2 < other.mesh.area_m2
    : one.pieces.length < other.pieces.length;

/** Both shells with the tuyere's hole in each, radii in mid-thickness of the mesh. Derived. */
export function shellsOf(furnace: Furnace, thickness_m: number, units: UnitSystem): Shells {
  const { bore, wall_m, floor_m, tuyere } = furnace;
  const taper = bore.top_radius_m - bore.bottom_radius_m;
  const widening = Math.abs(taper) < LEAST_TAPER_m ? 0 : taper / bore.height_m;
  const half = thickness_m / 2;
  const inner: Cone = {
    bottom_radius_m: bore.bottom_radius_m - half,
    top_radius_m: bore.bottom_radius_m - half + widening * bore.height_m,
    height_m: bore.height_m,
  };
  const outer: Cone = {
    bottom_radius_m: bore.bottom_radius_m + wall_m + half - widening * floor_m,
    top_radius_m: bore.bottom_radius_m + wall_m + half + widening * bore.height_m,
    height_m: bore.height_m + floor_m,
  };
  const tube = tubeOf(furnace, tuyere.outer_radius_m);
  const raised = { ...tube, up_m: tube.up_m + floor_m };
  // A taper beyond a cone is refused before a hole is looked for in it.
  for (const cone of [inner, outer]) sectorOf(cone, units);
  return { inner, outer, innerHole: holeOf(inner, tube, units), outerHole: holeOf(outer, raised, units) };
}

const atFloor_m = ({ outer }: Shells, { floor_m }: Furnace): number =>
  outer.bottom_radius_m + ((outer.top_radius_m - outer.bottom_radius_m) * floor_m) / outer.height_m;

/** The pieces when a shell or the bottom is split into so many; made once for all widths of roll. */
interface Splits {
  readonly inner: (panels: number) => readonly Piece[];
  readonly outer: (panels: number) => readonly Piece[];
  readonly bottom: (strips: number) => readonly Piece[];
  readonly hoops: readonly Piece[];
}

function splitsOf({ furnace, overlap_m }: FormsInput, shells: Shells, sheet_m: number): Splits {
  const { lid, floor_m } = furnace;
  const innerShell: Shell = { name: 'inner form', cone: shells.inner, hole: shells.innerHole };
  const outerShell: Shell = { name: 'outer form', cone: shells.outer, hole: shells.outerHole, floor_m };
  return {
    inner: once((panels) => shellPieces(innerShell, panels, overlap_m)),
    outer: once((panels) => shellPieces(outerShell, panels, overlap_m)),
    bottom: once((strips) => diskPieces('bottom', shells.outer.bottom_radius_m, strips, overlap_m)),
    hoops: lidHoops(lid, sheet_m, overlap_m),
  };
}

function once<T>(make: (count: number) => T): (count: number) => T {
  const made = new Map<number, T>();
  return (count) => {
    const value = made.get(count) ?? make(count);
    made.set(count, value);
    return value;
  };
}

function cutFrom({ hoops, ...splits }: Splits, width_m: number): Cut | undefined {
  const fits = (pieces: readonly Piece[]): boolean => pieces.every((piece) => narrowSide_m(piece) <= width_m);
  const inner = fewest(splits.inner, fits);
  const outer = fewest(splits.outer, fits);
  const bottom = fewest(splits.bottom, fits);
  if (!inner || !outer || !bottom || !fits(hoops)) return undefined;
  const pieces = [...inner, ...outer, ...bottom, ...hoops];
  const packing = packOnRoll(pieces.map(flatOf), width_m);
  if (packing === undefined) return undefined;
  const area_m2 = packing.length_m * width_m;
  const used_m2 = pieces.reduce((sum, piece) => sum + pieceArea_m2(piece), 0);
  const mesh = { ...packing, width_m, area_m2, waste: 1 - used_m2 / area_m2 };
  return { pieces, innerPanels: inner.length, outerPanels: outer.length, mesh };
}

function fewest(
  split: (count: number) => readonly Piece[],
  fits: (pieces: readonly Piece[]) => boolean,
): readonly Piece[] | undefined {
  for (let count = 1; count <= MOST_PANELS; count++) {
    const pieces = split(count);
    if (fits(pieces)) return pieces;
  }
  return undefined;
}

const flatOf = ({ name, outline }: Piece): Flat => {
  const { left, right, bottom, top } = boxOf(outline);
  return { name, width_m: right - left, height_m: top - bottom };
};

function narrowSide_m(piece: Piece): number {
  const { width_m, height_m } = flatOf(piece);
  return Math.min(width_m, height_m);
}

function adviceOf(furnace: Furnace, shells: Shells, { innerPanels, outerPanels }: Cut): string[] {
  const { bore, vessel } = furnace;
  const tapered = bore.top_radius_m !== bore.bottom_radius_m;
  const taperedVessel = vessel.top_radius_m !== vessel.bottom_radius_m;
  const said: string[] = [];
  if (tapered) {
    said.push(
      'Make the forms straight, even in a tapered can, and let the insulation take up the difference: a straight form is one rectangle, and builders who tapered theirs to match the can regretted it (common practice, no source).',
    );
  } else if (taperedVessel) {
    said.push(
      'The forms are straight on purpose: insulation fills what the can widens, and builders who tapered their forms to match the can regretted it (common practice, no source).',
    );
  }
  if (shells.innerHole.grazes) {
    said.push(
      'The tuyere grazes the bore, so the lining beside its slot ends in a feather edge: ram it round the tube, and trim it back to a finger of thickness.',
    );
  }
  if (shells.innerHole.notch || shells.outerHole.notch) {
    said.push(
      'The hole for the tuyere runs out at the foot of a form, so the tube cuts into the floor there: cut a notch, or set the tuyere a little higher.',
    );
  }
  if (innerPanels > 1 || outerPanels > 1) {
    said.push('A wider roll would save seams: a shell that is wider than the roll is lapped from panels.');
  }
  return said;
}

function tooNarrow(width_m: number, units: UnitSystem): AskError {
  return new AskError({
    code: 'impossible',
    what: `mesh ${formatTape(width_m, units)} wide is too narrow: a shell would need more than ${MOST_PANELS} panels, or a hoop does not fit it`,
    expected: `a wider roll, ${formatTape(rollWidths_m[0]!, units)} or more`,
    example: '24 in',
    option: 'roll',
  });
}

function refuseUnbuildable(input: FormsInput): void {
  const { overlap_m, clip_spacing_m, radial_wires, rings, wire_m, mesh, units } = input;
  const refuseOutside = refusalIn(units);
  refuseOutside('a lap', overlap_m, [0, 0.2], 'm', '40 mm', 'overlap');
  refuseOutside('clips', clip_spacing_m, [0.02, 1], 'm', '120 mm', 'clips');
  refuseOutside('wire', wire_m, [0.0003, 0.006], 'm', '1.3 mm', 'wire');
  refuseOutside('radial wires', radial_wires, [3, 36], 'count', '8', 'radials');
  refuseOutside('rings', rings, [0, 3], 'count', '2', 'rings');
  if (mesh?.roll_m !== undefined) refuseOutside('a roll', mesh.roll_m, [0.1, 5], 'm', '24 in', 'roll');
  if (mesh?.thickness_m !== undefined) refuseOutside('mesh', mesh.thickness_m, [0.0001, 0.01], 'm', '1 mm', 'mesh');
}

const refusalIn =
  (units: UnitSystem) =>
  (
    name: string,
    value: number,
    [low, high]: readonly [number, number],
    unit: 'm' | 'count',
    example: string,
    option: string,
  ): void => {
    const whole = unit === 'm' || Number.isInteger(value);
    if (value >= low && value <= high && whole) return;
    const shown = (each: number): string => formatBoth(each, unit, units, unit === 'm' ? 'sheet' : undefined);
    throw new AskError({
      code: 'out-of-range',
      what: `${name}: ${shown(value)} can't be built`,
      expected: `${unit === 'count' ? 'a whole number, ' : ''}${shown(low)} to ${shown(high)}`,
      example,
      option,
    });
  };
