import { AskError } from '../../core/ask-error.ts';
import { findBlower } from '../../core/fire/data/blowers.ts';
import { corrugated_friction, type PipeKind, roughness_m } from '../../core/fire/data/fittings.ts';
import type { Spread } from '../../core/materials/spread.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { readQuantity } from '../../core/quantity/parse.ts';
import { partsOf, readLengths } from '../size/fields.ts';

/** A typed plate says what a maker's best fan did: from memory ±15 %. */
const PLATE = 0.15;

export interface TypedBlower {
  readonly name: string;
  readonly free_m3_s: Spread;
  readonly shut_Pa: Spread;
  readonly remark?: string;
  readonly source: string;
  /** Its motor needs the air it moves: surplus is bled off, not choked. */
  readonly bleed: boolean;
}

const around = (typical: number): Spread => ({
  low: typical * (1 - PLATE),
  typical,
  high: typical * (1 + PLATE),
});

/** `hair dryer`, or both ends of its curve: `35 cfm 2 inWC`. */
export function readBlower(text: string): TypedBlower {
  if (!/^[\d.,]/.test(text)) {
    const { id, name, free_flow_m3_s, shut_off_Pa, remark } = findBlower(text);
    return {
      name: `a ${name}`.replace(/^a (?=[aeiou])/, 'an '),
      free_m3_s: free_flow_m3_s,
      shut_Pa: shut_off_Pa,
      remark,
      source: free_flow_m3_s.source,
      bleed: id.includes('vacuum'),
    };
  }
  const ends = text
    .split(/\s*(?:,(?!\d)|;|@|\band\b|\bat\b)\s*|(?<=[a-z0-9/]) +(?=[\d.])/i)
    .map((part) => readQuantity(part, { dimensions: ['flow', 'pressure'], label: 'the blower' }));
  const flow = ends.find(({ dimension }) => dimension === 'flow');
  const pressure = ends.find(({ dimension }) => dimension === 'pressure');
  if (ends.length !== 2 || !flow || !pressure)
    throw new AskError({
      code: 'missing',
      what: `"${text}" says one end of the blower's curve`,
      expected: 'its flow blowing freely and its pressure shut off, or a kind of blower',
      example: flow ? `${text} 2 inWC` : pressure ? `35 cfm ${text}` : '35 cfm 2 inWC',
    });
  return {
    name: `a blower of ${text}`,
    free_m3_s: around(flow.si),
    shut_Pa: around(pressure.si),
    source: 'from-memory',
    bleed: false,
  };
}

export interface TypedPipe {
  readonly bore_m: number;
  readonly length_m: number;
  readonly kind: PipeKind | 'corrugated hose';
  readonly roughness_m: number;
  /** Of corrugated hose: its ribs set it. */
  readonly friction?: Spread;
}

const kinds: readonly (readonly [RegExp, TypedPipe['kind']])[] = [
  [/corrugated|hose|flex/i, 'corrugated hose'],
  [/rust/i, 'rusty steel pipe'],
  [/plastic|pvc/i, 'smooth plastic'],
  [/drawn|smooth|copper|alumin/i, 'drawn tube'],
  [/steel|iron|pipe/i, 'steel pipe'],
];

/** `1.5 in x 5 ft`, with what it is of behind: `steel`, `rusty`, `plastic`, `hose`. */
export function readPipe(text: string, units: UnitSystem): TypedPipe {
  const [, sizes = text, words = ''] =
    /^(.*?)(?:\s+((?:of )?(?!(?:mm|cm|m|in|ft|x|by)\b)[a-z][a-z ]{3,}))?$/i.exec(text) ?? [];
  const kind = words === '' ? 'steel pipe' : kinds.find(([pattern]) => pattern.test(words))?.[1];
  const parts = partsOf(sizes);
  if (kind === undefined || parts.length !== 2)
    throw new AskError({
      code: 'unreadable',
      what: kind === undefined ? `no pipe is made of "${words}"` : `"${text}" is not a bore and a length`,
      expected: 'bore x length, then steel, rusty, plastic, tube or hose',
      example: units === 'US' ? '1.5 in x 5 ft' : '40 mm x 1.5 m',
    });
  const [bore_m = 0, length_m = 0] = readLengths(
    parts,
    [
      { label: "the pipe's bore", min: 0.005, max: 0.5 },
      { label: "the pipe's length", min: 0.01, max: 100 },
    ],
    units,
  );
  if (kind === 'corrugated hose') return { bore_m, length_m, kind, roughness_m: 0, friction: corrugated_friction };
  return { bore_m, length_m, kind, roughness_m: roughness_m[kind].typical };
}
