import type { WallAnswer } from '../../core/heat/wall-answer.ts';
import { smallFire_W } from '../../core/heat/wall-fuel.ts';
import { longest_s, shortName, touch_K } from '../../core/heat/wall-question.ts';
import { findMaterial } from '../../core/materials/catalogue.ts';
import type { Figure } from '../../core/quantity/figure.ts';
import { formatFigure, formatSi } from '../../core/quantity/format.ts';
import type { Answer, AnswerContext } from '../command.ts';
import { wallChart } from './chart.ts';
import { depthFigures, heatFigures, interfaceFigures, shellFigures, touchFigures } from './figures.ts';
import { layerText, thickerText } from './layers.ts';
import type { WallOptions } from './options.ts';
import type { AskedWall } from './question.ts';

interface Parts {
  readonly asked: AskedWall;
  readonly answer: WallAnswer;
  readonly options: WallOptions;
  readonly context: AnswerContext;
}

const inch = 0.0254;

export function wallCard(parts: Parts): Answer {
  const { asked, answer, context } = parts;
  const { firing, model, doubt } = answer;
  return {
    headline: headline(parts),
    figures: [
      ...shellFigures(answer),
      ...touchFigures(answer),
      ...interfaceFigures(answer),
      ...heatFigures(answer),
      ...depthFigures(answer),
    ],
    chart: wallChart(answer, context.units),
    notes: notesOf(parts),
    assumed: asked.assumed,
    doubt: doubt
      ? `${doubt.input} (${Math.round(doubt.share * 100)} % of the spread of the shell's peak)`
      : answer.outside_model.length > 0
        ? `whether the wall stays what it is: ${answer.outside_model.join('; ')}`
        : 'nothing that was sampled',
    sources: sourcesOf(parts),
    working: answer.steps(),
    handsOver: {
      layers: asked.layers.map(layerText).join('; '),
      bore: metres(model.question.bore_m),
      height: metres(model.question.height_m),
      hot: `${(model.question.hot_K.typical - 273.15).toFixed(0)} °C`,
      stored: `${(firing.stored_J / 1e6).toPrecision(4)} MJ`,
      loss: `${firing.shell_loss_W.toPrecision(4)} W`,
    },
    hazards: hazardsOf(parts),
    next: nextLines(parts),
  };
}

function headline({ answer, context: { units } }: Parts): string {
  const { firing, ranges, outside_model, layers } = answer;
  const show = (figure: Figure | undefined) => {
    if (!figure) return '';
    const { lead, range } = formatFigure(figure, units);
    return range === undefined ? lead : `${lead} (${range})`;
  };
  const [peak] = shellFigures(answer);
  const minutes = (seconds: number) =>
    formatSi(Math.abs(seconds), 's', units, Math.abs(seconds) < 5400 ? 'minutes' : 'hours');
  const after = firing.shell_peak_after_s;
  const when =
    Math.abs(after) < 60
      ? 'as the fire goes out'
      : after > 0
        ? `${minutes(after)} after the fire is out`
        : `${minutes(after)} before the fire is out`;
  const cool_s = ranges.cool0?.high ?? firing.cool_s[0]!;
  const hot = firing.shell_peak_K > touch_K || (ranges.shell_peak?.high ?? 0) > touch_K;
  const touch = !hot
    ? `It stays below ${formatSi(touch_K, 'K', units)}: a hand may rest on it`
    : cool_s >= longest_s - 1
      ? 'Not safe to touch for more than two days after that'
      : `Safe to touch ${formatSi(cool_s, 's', units, 'hours')} after the fire is out${ranges.cool0 ? ', at the slow end' : ''}`;
  const limits = layers
    .filter(({ exceeds }) => exceeds)
    .map(
      ({ material, adverse_K, limit_K }) =>
        ` ${capital(shortName(material.name))} gets to ${formatSi(adverse_K, 'K', units)}, above its limit of ${formatSi(limit_K ?? 0, 'K', units)}.`,
    );
  const norange = outside_model.length > 0 ? ` No range: ${outside_model.join('; ')}.` : '';
  return `The shell peaks at ${show(peak)} ${when}. ${touch}.${limits.join('')}${norange}`;
}

function notesOf({ answer, asked, options, context: { units } }: Parts): readonly string[] {
  const { firing, model, layers, another_inch } = answer;
  const rows: (string | undefined)[] = [
    powerNote(firing.ramp_power_W, units),
    `Another inch of ${shortName(layers.at(-1)?.material.name ?? '')}: the shell peaks ${Math.round(firing.shell_peak_K - another_inch.shell_peak_K)} K lower and the wall stores ${percent(another_inch.stored_J / firing.stored_J - 1)} at fire out.`,
    `The side wall only: lid, floor, pot and metal take heat beside it.`,
    asked.finish.emissivity.typical < 0.6
      ? 'An infrared thermometer set to 0.95 reads this bright shell far too cold: give it a spot of black stove paint, or ask touch with reads=.'
      : undefined,
    options.damp && options.damp.si > 0
      ? 'Its water is taken to leave by the bore. Some goes outward instead and may keep the shell wet at 60 to 100 °C early on: do not trust a cool first hour.'
      : undefined,
    paintNote(answer, asked, units),
    model.question.lid_off_s > 0
      ? 'With the lid off the hot face cools fast: a rammed face likes that less than a closed, slow night.'
      : undefined,
  ];
  return rows.filter((one) => one !== undefined);
}

function powerNote(ramp_W: number, units: AnswerContext['units']): string {
  const power = (watts: number) => formatSi(watts, 'W', units);
  const needed = `Heating the side wall that fast takes ${power(ramp_W)} on average; a small burner or blown charcoal leaves about ${power(smallFire_W.low)} to ${power(smallFire_W.high)} in a furnace (from memory).`;
  return ramp_W > smallFire_W.high ? `${needed} It will be slower than that: give ramp= a longer time.` : needed;
}

function paintNote({ firing, ranges }: WallAnswer, { finish }: AskedWall, units: AnswerContext['units']) {
  const limit = findMaterial('painted-steel').properties.service_limit_K;
  const hottest_K = ranges.shell_peak?.high ?? firing.shell_peak_K;
  if (finish.touch !== 'painted-metal' || !limit || hottest_K <= limit.low) return undefined;
  return `The shell may pass ${formatSi(limit.low, 'K', units)}, where common paint starts to brown and smell; stove paint stands more.`;
}

const percent = (share: number): string => `${share >= 0 ? '+' : '−'}${Math.abs(share * 100).toFixed(0)} %`;

function sourcesOf({ answer, asked }: Parts): readonly string[] {
  const found = [
    'derived',
    ...answer.model.layers.flatMap(({ material: { conductivity_W_mK: k, heat_capacity_J_kgK: c, properties } }) =>
      [k?.source, c?.source, properties.density_kg_m3?.source, properties.service_limit_K?.source].filter(
        (one) => one !== undefined,
      ),
    ),
    asked.finish.emissivity.source,
    ...answer.steps().map(({ source }) => source),
  ];
  return [...new Set(found)];
}

/** Above this rate a damp lining is heated faster than any drying schedule allows, K/s: 50 K/h. */
const fastest_K_s = 50 / 3600;

function hazardsOf({ answer, asked, options }: Parts): NonNullable<Answer['hazards']> {
  const { firing, ranges, layers, model } = answer;
  const { hot_K, ramp_s } = model.question;
  const damp = options.damp !== undefined && options.damp.si > 0.01;
  const fast = (hot_K.typical - 293) / ramp_s > fastest_K_s;
  return {
    facts: [
      'hot-steel',
      ...asked.finish.hazards,
      ...layers.flatMap(({ material }) => material.hazards),
      ...(damp ? ['damp-lining', ...(fast ? ['fast-firing'] : [])] : []),
    ],
    numbers: {
      shell_K: ranges.shell_peak?.high ?? firing.shell_peak_K,
      hot_face_K: layers[0]?.adverse_K ?? hot_K.high,
      ...(layers[1] ? { interface_K: layers[1].adverse_K } : {}),
      ...(damp ? { lining_water: options.damp?.si ?? 0 } : {}),
    },
  };
}

function nextLines({ asked, answer, context: { commands, units } }: Parts): NonNullable<Answer['next']> {
  const has = (name: string) => commands.some((one) => one.name === name);
  const last = asked.layers.at(-1);
  const peak = formatSi(answer.ranges.shell_peak?.high ?? answer.firing.shell_peak_K, 'K', units);
  return [
    { label: 'another inch behind', line: `again ${thickerText(asked.layers, inch, units)}` },
    answer.model.question.lid_off_s > 0
      ? { label: 'with the lid on', line: 'again after=lid on' }
      : { label: 'with the lid off', line: 'again after=lid off' },
    ...(has('touch') ? [{ label: 'what that does to a hand', line: `touch ${peak}` }] : []),
    ...(last && has('stuff') ? [{ label: 'where it fails', line: `stuff ${last.material.id}` }] : []),
    { label: 'how that was worked out', line: 'why' },
  ];
}

const metres = (value: number): string => `${(value * 1000).toPrecision(6)} mm`;
const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
