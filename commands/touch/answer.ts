import { contactTemperature_K, skin } from '../../core/heat/contact.ts';
import { bandOf, burnThreshold_K, contactAllowed_s, LONGEST_s, touchSurfaceOf } from '../../core/heat/touch.ts';
import type { Figure } from '../../core/quantity/figure.ts';
import { formatFigure, formatSi } from '../../core/quantity/format.ts';
import type { Step } from '../../core/step.ts';
import type { Assumption, Table } from '../card.ts';
import type { Answer, AnswerContext } from '../command.ts';
import { capital } from '../sentence.ts';
import type { TouchOptions } from './options.ts';
import type { TouchQuestion } from './question.ts';

interface Parts {
  readonly question: TouchQuestion;
  readonly options: TouchOptions;
  readonly units: AnswerContext['units'];
}

/** Below this an infrared thermometer set to 0.95 is far off. */
const SHINY = 0.6;
const BOILING_K = 373.15;
const CHARRING_K = 473.15;

export function touchAnswer(parts: Parts): Answer {
  const { touched, surface_K, sighted } = parts.question;
  const isMetal = touched.surface === 'metal' || touched.surface === 'painted-metal';
  const shiny = sighted !== undefined && isMetal && touched.emissivity.typical < SHINY;
  const { thresholds } = touchSurfaceOf(touched.surface);
  return {
    headline: headlineOf(parts),
    figures: figuresOf(parts),
    table: thresholdTable(parts),
    notes: notesOf(parts, shiny),
    assumed: assumptions(parts),
    doubt: sighted
      ? `how much of its own heat the surface radiates: emissivity ${touched.emissivity.low} to ${touched.emissivity.high}`
      : 'the thresholds themselves: remembered to about 3 °C (5 °F) below ten seconds',
    sources: [
      'iso-13732-1',
      ...new Set([
        ...thresholds.map(({ T_K }) => T_K.source).filter((source) => source !== 'iso-13732-1'),
        ...(touched.surface === 'metal' ? ['burn-institute-list'] : []),
        ...(sighted ? [touched.emissivity_source] : []),
      ]),
    ],
    working: workingOf(parts),
    hazards: {
      facts: [...touched.hazards, ...(isMetal ? ['hot-steel'] : []), ...(shiny ? ['infrared-gun'] : [])],
      numbers: { shell_K: surface_K.high },
    },
    next: nextLines(parts),
  };
}

function nextLines({ question, options, units }: Parts): NonNullable<Answer['next']> {
  const { touched, surface_K, sighted } = question;
  const degrees = formatSi(sighted?.reading_K ?? surface_K.typical, 'K', units);
  const asked = sighted ? `touch reads=${degrees}` : `touch ${degrees}`;
  return [
    touched.surface === 'metal'
      ? { label: 'the same, painted', line: `${asked} surface=painted` }
      : { label: 'the same, bare metal', line: `${asked} surface=bare metal` },
    ...(sighted || options.time
      ? []
      : [{ label: 'if an infrared thermometer says so', line: `touch reads=${degrees} surface=galvanised` }]),
    { label: 'how hot a shell gets', line: 'wall 1 in castable; 2.5 in perlite' },
  ];
}

function headlineOf({ question, options, units }: Parts): string {
  const { touched, surface_K, sighted } = question;
  const name = capital(touched.name);
  const [temperature] = temperatureFigures(question);
  const { lead, other, range } = formatFigure(temperature!, units);
  const at = range ? `${lead} (${range})` : `${lead}${other ? ` (${other})` : ''}`;
  const where = sighted
    ? `${name} that reads ${formatSi(sighted.reading_K, 'K', units)} is really about ${at}`
    : `${name} at ${at}`;
  const band = bandOf(surface_K.high, touched.surface).says;
  if (!options.time) return `${where}: ${band}. ${stayOf(question)}`;
  const { si: time_s, text } = options.time;
  return `${where}: ${band}. ${text} ${verdict(surface_K.high, time_s, question)}.`;
}

/** What the adverse end allows, in a sentence. */
function stayOf({ touched, surface_K }: TouchQuestion): string {
  const allowed_s = contactAllowed_s(surface_K.high, touched.surface);
  if (allowed_s === 0) return 'Even half a second may burn.';
  if (allowed_s >= LONGEST_s) return 'No burn is expected in a working day.';
  return `Count on a burn after ${formatSi(rounded_s(allowed_s), 's', 'metric')}.`;
}

/** Downwards to one digit: the thresholds bear no more, and the careful side is down. */
function rounded_s(time_s: number): number {
  if (time_s === 0) return 0;
  const unit = time_s < 60 ? 1 : time_s < 3600 ? 60 : 3600;
  const place = 10 ** Math.floor(Math.log10(time_s / unit));
  return Math.floor(time_s / unit / place + 1e-9) * place * unit;
}

function verdict(surface_K: number, time_s: number, { touched }: TouchQuestion): string {
  if (surface_K < burnThreshold_K(time_s, touched.surface, 'low')) return 'is not expected to burn';
  return surface_K > burnThreshold_K(time_s, touched.surface, 'high') ? 'burns' : 'may burn';
}

function temperatureFigures({ surface_K, sighted }: TouchQuestion): readonly Figure[] {
  const { low, typical, high } = surface_K;
  const base = { id: 'touch.temperature', label: 'the surface', value: typical, unit: 'K' } as const;
  if (!sighted) return [{ ...base, rangeBasis: 'none' }];
  return [
    { ...base, range: { low, high }, rangeBasis: 'judged' },
    { id: 'touch.reads', label: 'the thermometer reads', value: sighted.reading_K, unit: 'K', rangeBasis: 'none' },
  ];
}

function figuresOf({ question, options }: Parts): readonly Figure[] {
  const { touched, surface_K } = question;
  const allowed_s = contactAllowed_s(surface_K.high, touched.surface);
  const time_s = options.time?.si;
  return [
    ...temperatureFigures(question),
    {
      id: 'touch.stay',
      label: 'a hand may stay',
      value: rounded_s(allowed_s),
      unit: 's',
      rangeBasis: 'none',
      note: allowed_s === 0 ? 'half a second may burn already' : 'adverse end',
    },
    ...(time_s === undefined
      ? []
      : [
          {
            id: 'touch.limit',
            label: `hottest for ${options.time?.text}`,
            value: burnThreshold_K(time_s, touched.surface, 'typical'),
            unit: 'K' as const,
            ...rangeOf(
              burnThreshold_K(time_s, touched.surface, 'low'),
              burnThreshold_K(time_s, touched.surface, 'high'),
            ),
          },
        ]),
    {
      id: 'touch.skin',
      label: 'skin on a thick piece goes to',
      value: skinOn(question),
      unit: 'K',
      rangeBasis: 'none',
      note: 'at once; thin sheet cools under the hand',
    },
  ];
}

const rangeOf = (low: number, high: number) =>
  low < high ? ({ range: { low, high }, rangeBasis: 'judged' } as const) : ({ rangeBasis: 'none' } as const);

const skinOn = ({ touched, surface_K }: TouchQuestion): number =>
  contactTemperature_K({ T_K: surface_K.high, effusivity: touchSurfaceOf(touched.surface).effusivity }, skin);

function thresholdTable({ question, units }: Parts): Table {
  const { touched, surface_K } = question;
  return {
    columns: ['touched for', 'burns from', formatSi(surface_K.high, 'K', units), 'standing'],
    rows: touchSurfaceOf(touched.surface).thresholds.map(({ time_s, T_K }) => {
      const { lead, range } = formatFigure(
        { id: 'T', label: 'T', value: T_K.typical, unit: 'K', ...rangeOf(T_K.low, T_K.high) },
        units,
      );
      return [
        time_s < 1 ? 'half a second' : formatSi(time_s, 's', 'metric'),
        range ? `${lead} (${range})` : lead,
        verdict(surface_K.high, time_s, question),
        T_K.standing,
      ];
    }),
  };
}

function notesOf({ question, units }: Parts, shiny: boolean): readonly string[] {
  const { surface_K, sighted } = question;
  return [
    'Healthy adult skin and a small contact. Children, old or wet skin, a grip or a fall against it: count on less.',
    'After ISO 13732-1 as remembered, not opened: thresholds where a burn starts, no limits of comfort. Skin hurts from about 44 °C (111 °F).',
    ...(shiny
      ? [
          'Bright metal mirrors the room. A spot of black paint or tape on it reads true at 0.95; so does a thermocouple pressed on.',
        ]
      : sighted
        ? ['A second reading on a spot of black paint or tape tells whether the surface or the setting is off.']
        : []),
    ...(surface_K.high > CHARRING_K
      ? [`Above about ${formatSi(CHARRING_K, 'K', units)} paper and wood brown on it, and paint burns off.`]
      : surface_K.high > BOILING_K
        ? [`Above ${formatSi(BOILING_K, 'K', units)}: a drop of water hisses.`]
        : []),
  ];
}

function assumptions({ question, options, units }: Parts): readonly Assumption[] {
  const { touched, sighted } = question;
  const air = formatSi(sighted?.surroundings_K ?? 0, 'K', units);
  return [
    ...(options.surface === undefined ? [{ text: touched.name, override: 'surface=painted' }] : []),
    ...(sighted && !options.set ? [{ text: 'thermometer set to 0.95', override: 'set=0.95' }] : []),
    ...(sighted && !options.air ? [{ text: `air and surroundings at ${air}`, override: `air=${air}` }] : []),
  ];
}

function workingOf({ question, options }: Parts): readonly Step[] {
  const { touched, surface_K, sighted } = question;
  const time_s = options.time?.si;
  return [
    ...(sighted
      ? [
          {
            formula:
              'signal(surface) = (set × signal(reading) − (set − emissivity) × signal(surroundings)) ÷ emissivity, of a black body, 8 to 14 µm',
            inputs: { ...sighted, emissivity: touched.emissivity.typical },
            gives: { surface_K: surface_K.typical, adverse_surface_K: surface_K.high },
            source: touched.emissivity_source,
          },
        ]
      : []),
    {
      formula: 'time between thresholds: straight in temperature over the logarithm of time, adverse end',
      inputs: { surface_K: surface_K.high },
      gives: { allowed_s: contactAllowed_s(surface_K.high, touched.surface) },
      source: 'iso-13732-1',
    },
    ...(time_s === undefined
      ? []
      : [
          {
            formula: 'threshold at this time, adverse end, on the same line',
            inputs: { touched_s: time_s },
            gives: { threshold_K: burnThreshold_K(time_s, touched.surface) },
            source: 'iso-13732-1',
          },
        ]),
    {
      formula: 'skin = (e surface × surface + e skin × skin) ÷ (e surface + e skin), e = √(k ρ c)',
      inputs: { surface_K: surface_K.high, skin_K: skin.T_K },
      gives: { skin_K: skinOn(question) },
      source: 'derived',
    },
  ];
}
