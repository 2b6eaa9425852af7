import type { WallAnswer } from '../../core/heat/wall-answer.ts';
import type { LayerHeat } from '../../core/heat/wall-limits.ts';
import { recipes } from '../../core/mix/recipes.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { formatSi } from '../../core/quantity/format.ts';
import type { Answer, AnswerContext } from '../command.ts';
import { wallChart } from './chart.ts';
import {
  depthFigures,
  dryingFigures,
  heatFigures,
  infraredFigures,
  interfaceFigures,
  shellFigures,
  touchFigures,
} from './figures.ts';
import { layerText, thickerText } from './layers.ts';
import { wallNotes } from './notes.ts';
import type { WallOptions } from './options.ts';
import type { AskedWall } from './question.ts';
import { headlineOf, hottestShell_K, reasonOf } from './words.ts';

interface Parts {
  readonly asked: AskedWall;
  readonly answer: WallAnswer;
  /** What cautions go by where there is no range: no sample goes beyond it. */
  readonly bound?: { readonly shell_K: number; readonly layers: readonly LayerHeat[] };
  readonly options: WallOptions;
  readonly context: AnswerContext;
}

const inch_m = 0.0254;

export function wallCard(parts: Parts): Answer {
  const { asked, answer, context } = parts;
  const { units } = context;
  return {
    headline: headlineOf(answer, units),
    figures: [
      ...shellFigures(answer),
      ...infraredFigures(answer),
      ...dryingFigures(answer),
      ...touchFigures(answer, units),
      ...interfaceFigures(answer, units),
      ...heatFigures(answer),
      ...depthFigures(answer, units),
    ],
    chart: wallChart(answer, units),
    notes: wallNotes(answer, asked, units),
    assumed: asked.assumed,
    doubt: doubtOf(answer, units),
    sources: sourcesOf(parts),
    working: answer.steps(),
    handsOver: handsOver(parts),
    hazards: hazardsOf(parts),
    next: nextLines(parts),
  };
}

/** How many inputs are named, and the least share worth it. */
const named = { most: 3, share: 0.05 } as const;

/** The inputs that move the shell's peak, in the order of their shares of its spread. */
function doubtOf({ doubts, outside_model }: WallAnswer, units: UnitSystem): string {
  const [most, ...others] = doubts.slice(0, named.most).filter(({ share }, at) => at === 0 || share >= named.share);
  const percent = (share: number) => `${Math.round(share * 100)} %`;
  if (most) {
    const first = `${most.input} (${percent(most.share)} of the spread of the shell's peak)`;
    return [first, ...others.map(({ input, share }) => `${input} (${percent(share)})`)].join(', then ');
  }
  const [first] = outside_model;
  return first ? reasonOf(first, units) : 'nothing that was sampled';
}

function sourcesOf({ answer, asked }: Parts): readonly string[] {
  const found = [
    ...answer.model.layers.flatMap(({ material: { conductivity_W_mK: k, heat_capacity_J_kgK: c, properties } }) => [
      k?.source,
      c?.source,
      properties.density_kg_m3?.source,
      properties.service_limit_K?.source,
    ]),
    asked.finish.emissivity.source,
    // The touches of a hand, and the vessel's own lid.
    'iso-13732-1',
    'common-practice',
    ...answer.steps().map(({ source }) => source),
  ];
  return [...new Set(found.filter((one) => one !== undefined))];
}

/** For `mix`, `settle` and what asks for heat: as it would be typed. */
function handsOver({ asked, answer }: Parts): Record<string, string> {
  const { question } = answer.model;
  const [hot] = asked.layers;
  const recipe = recipes.find(({ lining }) => lining === hot?.material.id);
  return {
    layers: asked.layers.map(layerText).join('; '),
    bore: millimetres(question.bore_m),
    height: millimetres(question.height_m),
    hot: `${Math.round(question.hot_K.typical - 273.15)} °C`,
    stored: `${(answer.firing.stored_J / 1e6).toPrecision(4)} MJ`,
    loss: `${answer.firing.shell_loss_W.toPrecision(4)} W`,
    // The ring that mix is to fill, beside the height.
    ...(recipe && hot
      ? {
          inside: millimetres(question.bore_m),
          outside: millimetres(question.bore_m + 2 * hot.thickness_m),
          recipe: recipe.id,
        }
      : {}),
  };
}

/** Faster than this no schedule heats a damp lining, K/s: 50 K/h. */
const fastest_K_s = 50 / 3600;

function hazardsOf({ answer, asked, options, bound }: Parts): NonNullable<Answer['hazards']> {
  const { model } = answer;
  const { layers, shell_K } = bound ?? { layers: answer.layers, shell_K: hottestShell_K(answer) };
  const { hot_K, ramp_s, air_K } = model.question;
  const water = options.damp?.si ?? 0;
  const damp = water > 0.01;
  const fast = (hot_K.typical - air_K.typical) / ramp_s > fastest_K_s;
  return {
    facts: [
      'hot-steel',
      ...asked.finish.hazards,
      ...layers.flatMap(({ material }) => material.hazards),
      ...(damp ? ['damp-lining'] : []),
      ...(damp && fast ? ['fast-firing'] : []),
    ],
    numbers: {
      shell_K,
      ...limitNumbers(layers),
      ...(damp ? { lining_water: water } : {}),
    },
  };
}

/** The rules on hot face and interface speak of Portland and of fibre: give them the temperatures of those layers. */
function limitNumbers([first, ...behind]: readonly LayerHeat[]): Record<string, number> {
  const holds = (layer: LayerHeat | undefined, hazard: string) => layer?.material.hazards.includes(hazard) ?? false;
  const portland = behind.find((layer) => holds(layer, 'portland'));
  const fibre = [first, ...behind].find((layer) => holds(layer, 'ceramic-fibre'));
  if (first && holds(first, 'portland')) return { hot_face_K: first.adverse_K };
  return {
    ...(portland ? { interface_K: portland.adverse_K } : fibre ? { hot_face_K: fibre.adverse_K } : {}),
  };
}

function nextLines({ asked, answer, context: { commands, units } }: Parts): NonNullable<Answer['next']> {
  const has = (name: string) => commands.some((one) => one.name === name);
  const recipe = recipes.some(({ lining }) => lining === asked.layers[0]?.material.id);
  return [
    { label: 'another inch behind', line: `again ${thickerText(asked.layers, inch_m, units)}` },
    answer.model.question.lid_off_s > 0
      ? { label: 'with the lid on', line: 'again after=lid on' }
      : { label: 'with the lid off', line: 'again after=lid off' },
    ...(has('touch')
      ? [
          {
            label: 'what that does to a hand',
            line: `touch ${formatSi(hottestShell_K(answer), 'K', units)} surface=${asked.finish.id}`,
          },
        ]
      : []),
    ...(recipe && has('mix') ? [{ label: 'the mix for its hot face', line: 'mix for=last' }] : []),
  ];
}

const millimetres = (value: number): string => `${Number((value * 1000).toPrecision(6))} mm`;
