import { AskError } from '../ask-error.ts';
import type { Tie } from '../doubt/together.ts';
import { findMaterial } from '../materials/catalogue.ts';
import { at } from '../materials/curve.ts';
import type { Spread } from '../materials/spread.ts';
import { densityTie } from './data/density-ties.ts';
import { lossFunction, type Outside } from './outside.ts';
import { closedBore, lidOn, openBore } from './transient/drives.ts';
import { type AskedLayer, grade, type LayerModel, layerModel } from './wall-layers.ts';
import type { Phase, WallInput, WallShell } from './wall-run.ts';

/** One firing of a round wall: up to heat, held there, fire out, then left to itself. */
export interface WallQuestion {
  /** Hot side first. */
  readonly layers: readonly AskedLayer[];
  /** Inside diameter of the hot face, and the height that is heated. */
  readonly bore_m: number;
  readonly height_m: number;
  readonly hot_K: Spread;
  readonly ramp_s: number;
  readonly hold_s: number;
  /** Share by which the bore may be hot sooner or later than said, the fire going out when it did; none where left out. */
  readonly ramp_doubt?: number;
  /** How long the lid stays off once the fire is out: 0 puts it on at once, Infinity never. */
  readonly lid_off_s: number;
  readonly lid: readonly AskedLayer[];
  readonly floor: readonly AskedLayer[];
  readonly vent_radius_m: number;
  readonly shell_m: number;
  readonly emissivity: Spread;
  readonly wind_m_s: Spread;
  readonly air_K: Spread;
}

/** A value for every doubtful input, by its name in the reader's words. */
export type Draw = Readonly<Record<string, number>>;

/** How finely a run is computed. */
export interface Fineness {
  readonly cells: number;
  readonly tolerance_dK: number;
}

/** The wall of a question with its doubts, ready to be run for any draw of them. */
export interface WallModel {
  readonly question: WallQuestion;
  readonly layers: readonly LayerModel[];
  /** By name in the reader's words, as the card tells which of them moves the answer most. */
  readonly inputs: Readonly<Record<string, Spread>>;
  /** Names of the densities among them, hot side first. */
  readonly densities: readonly string[];
  /** Of each layer, its conductivity with its density. */
  readonly together: readonly Tie<string>[];
  readonly typical: Draw;
  readonly fire_out_s: number;
  readonly inner_m2: number;
  readonly outer_radius_m: number;
  readonly input: (draw: Draw, fineness: Fineness) => WallInput;
}

/** Longest that a wall is followed after the fire is out. */
export const longest_s = 48 * 3600;
/** 43 °C: a hand may rest on it as long as it likes. */
export const touch_K = 316.15;
const mostLayers = 4;
/** Film and radiation over the lid and under the floor together (from memory: 8–15 W/(m² K)). */
const endFilm_W_m2K = 12;

export const boreRuns = 'how hot the bore really runs';
export const boreHurries = 'how soon the bore is hot';
export const emissivityDoubt = "the shell's emissivity";
export const windDoubt = 'the wind';
export const airDoubt = 'the air';

/**
 * @throws AskError `out-of-range` where the hot face is no hotter than the air or a layer has no thickness,
 * `too-long` above four layers, `unfit` for a material without data.
 */
export function wallModel(question: WallQuestion): WallModel {
  refuseMany(question.layers.length);
  refuseColdFace(question);
  const layers = question.layers.map(layerModel);
  const names = namesOf(layers);
  const inputs: Record<string, Spread> = {};
  for (const [index, { conducts, dense, wet }] of names.entries()) {
    inputs[conducts] = grade;
    inputs[dense] = layers[index]!.density_kg_m3;
    inputs[wet] = layers[index]!.water;
  }
  Object.assign(inputs, {
    [boreRuns]: question.hot_K,
    [boreHurries]: rampSpread(question),
    [emissivityDoubt]: question.emissivity,
    [windDoubt]: question.wind_m_s,
    [airDoubt]: question.air_K,
  });
  const radius_m = question.bore_m / 2;
  const outer_radius_m = radius_m + layers.reduce((sum, one) => sum + one.thickness_m, 0) + question.shell_m;
  const fire_out_s = question.ramp_s + question.hold_s;
  const inner_m2 = 2 * Math.PI * radius_m * question.height_m;
  const ends_m2K_W = endResistance(question, inner_m2);
  const shell = shellOf(question.shell_m);
  return {
    question,
    layers,
    inputs,
    densities: names.map(({ dense }) => dense),
    together: layers.flatMap(({ material }, index): readonly Tie<string>[] => {
      const tie = densityTie(material);
      return tie ? [{ input: names[index]!.conducts, goesWith: names[index]!.dense, ...tie }] : [];
    }),
    typical: Object.fromEntries(Object.entries(inputs).map(([name, { typical }]) => [name, typical])),
    fire_out_s,
    inner_m2,
    outer_radius_m,
    input: (draw, fineness) => {
      const air_K = draw[airDoubt]!;
      return {
        geometry: 'cylinder',
        inner_radius_m: radius_m,
        layers: layers.map((layer, index) => {
          const { conducts, dense, wet } = names[index]!;
          return layer.draw({
            conductivity: draw[conducts]!,
            density_kg_m3: draw[dense]!,
            water: draw[wet]!,
          });
        }),
        ...(shell ? { shell } : {}),
        start_K: air_K,
        outward_W_m2: lossFunction(outsideOf(question, outer_radius_m, draw)),
        phases: phasesOf(question, {
          hot_K: draw[boreRuns]!,
          ramp_s: draw[boreHurries]!,
          air_K,
          ends_m2K_W,
        }),
        until_shell_below_K: Math.max(touch_K, air_K + 3),
        ...fineness,
      };
    },
  };
}

/** The shell's outside under one draw of the doubts. */
export const outsideOf = ({ height_m }: WallQuestion, outer_radius_m: number, draw: Draw): Outside => ({
  face: 'vertical',
  length_m: height_m,
  diameter_m: 2 * outer_radius_m,
  air_K: draw[airDoubt]!,
  emissivity: draw[emissivityDoubt]!,
  wind_m_s: draw[windDoubt]!,
});

function phasesOf(
  { hold_s, lid_off_s, bore_m, height_m, layers, ...asked }: WallQuestion,
  { hot_K, ramp_s, air_K, ends_m2K_W }: { hot_K: number; ramp_s: number; air_K: number; ends_m2K_W: number },
): readonly Phase[] {
  const fire_out_s = asked.ramp_s + hold_s;
  const end_s = fire_out_s + longest_s;
  const points = [[0, air_K], [ramp_s, hot_K], ...(ramp_s < fire_out_s ? [[fire_out_s, hot_K]] : [])] as [
    number,
    number,
  ][];
  const fire: Phase = { until_s: fire_out_s, drive: { kind: 'temperature', points } };
  const open: Phase['drive'] = openBore({
    // The open end against all that looks out of it, floor included.
    opening_ratio: bore_m / 4 / (height_m + bore_m / 4),
    emissivity: layers[0]?.material.properties.emissivity?.typical ?? 0.8,
    air_K,
  });
  const closed: Phase['drive'] = Number.isFinite(ends_m2K_W)
    ? lidOn({ resistance_m2K_W: ends_m2K_W, outside_K: air_K })
    : closedBore();
  const off_s = Math.min(lid_off_s, longest_s);
  return [
    fire,
    ...(off_s > 0 ? [{ until_s: fire_out_s + off_s, drive: open }] : []),
    ...(off_s < longest_s ? [{ until_s: end_s, drive: closed }] : []),
  ];
}

/** Never later than the fire goes out. */
function rampSpread({ ramp_s, hold_s, ramp_doubt = 0 }: WallQuestion): Spread {
  const high = Math.min(ramp_s * (1 + ramp_doubt), ramp_s + hold_s);
  return { low: ramp_s * (1 - ramp_doubt), typical: ramp_s, high };
}

/** Lid and floor beside each other, as seen by a m² of the side wall: what they store is left out. */
function endResistance({ lid, floor, bore_m }: WallQuestion, inner_m2: number): number {
  const disk_m2 = (Math.PI / 4) * bore_m ** 2;
  const conductance = [lid, floor].reduce((sum, stack) => sum + disk_m2 / stackResistance(stack), 0);
  return conductance > 0 ? inner_m2 / conductance : Number.POSITIVE_INFINITY;
}

/** m²K/W of plane layers at about 400 °C, halfway down a cooling, and the film behind them. */
function stackResistance(stack: readonly AskedLayer[]): number {
  if (stack.length === 0) return Number.POSITIVE_INFINITY;
  return stack.reduce((sum, { material, thickness_m }) => {
    const k = material.conductivity_W_mK;
    return k ? sum + thickness_m / at(k, 673).value : sum;
  }, 1 / endFilm_W_m2K);
}

function shellOf(thickness_m: number): WallShell | undefined {
  if (!(thickness_m > 0)) return undefined;
  const { heat_capacity_J_kgK: c, properties } = findMaterial('mild-steel');
  return {
    thickness_m,
    density_kg_m3: properties.density_kg_m3?.typical ?? 7850,
    heat_capacity: { T_K: c?.T_K ?? [293.15], c_J_kgK: c?.typical ?? [440] },
  };
}

/** The doubts of each layer; a material that stands there twice is told apart by its place. */
function namesOf(layers: readonly LayerModel[]) {
  return layers.map(({ material }, index) => {
    const twice = layers.some((other, place) => place !== index && other.material.id === material.id);
    const name = `${shortName(material.name)}${twice ? ` (layer ${index + 1})` : ''}`;
    return {
      conducts: `how well the ${name} conducts`,
      dense: `how dense the ${name} stands`,
      wet: `the water in the ${name}`,
    };
  });
}

/** Up to the comma or the bracket: what stands behind it is the grade. */
export const shortName = (name: string): string => (name.split(/,| \(| 1:2/)[0] ?? name).toLowerCase();

function refuseMany(count: number): void {
  if (count >= 1 && count <= mostLayers) return;
  throw new AskError({
    code: count === 0 ? 'missing' : 'too-long',
    what: `the wall has ${count} layers`,
    expected: `one to ${mostLayers} layers, hot side first`,
    example: 'wall 1 in castable; 2.5 in perlite',
    option: 'layers',
  });
}

function refuseColdFace({ hot_K, air_K }: WallQuestion): void {
  if (hot_K.typical > air_K.typical + 50) return;
  throw new AskError({
    code: 'out-of-range',
    what: `a hot face of ${celsius(hot_K.typical)} is no hotter than the air of ${celsius(air_K.typical)} by more than 50 K: nothing is fired`,
    expected: 'a hot face well above the air: 700 to 1500 °C for most metals',
    example: '1000 °C',
    option: 'hot',
  });
}

const celsius = (kelvin: number): string => `${Math.round(kelvin - 273.15)} °C`;
