import { AskError } from '../../core/ask-error.ts';
import type { AskedLayer } from '../../core/heat/wall-layers.ts';
import { findMaterial } from '../../core/materials/catalogue.ts';
import type { Material } from '../../core/materials/material.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { formatSi } from '../../core/quantity/format.ts';
import { type Quantity, readQuantity, type Wanted } from '../../core/quantity/parse.ts';

export interface TypedLayer extends AskedLayer {
  readonly thickness: Quantity;
}

/** Layers as one typed size: its thickness in all, and the units most of it was typed in. */
export interface TypedStack extends Quantity {
  readonly layers: readonly TypedLayer[];
}

const longest = 5;
const mostLetters = 200;
const thickest_m = 1;
const example = '1 in castable; 2.5 in perlite';

/**
 * Layers as people type them, hot side first: `1 in castable; 2.5 in perlite`. A thickness and a material each, in
 * either order; a plain number is in the reader's unit.
 * @throws AskError, the option to be filled in by the caller.
 */
export function readLayers(text: string, system: UnitSystem): readonly TypedLayer[] {
  if (text.length > mostLetters) throw tooLong(text);
  const parts = text.split(/[;\n]/).map((part) => part.trim());
  if (parts.at(-1) === '') parts.pop();
  if (parts.length === 0 || parts.some((part) => part === '')) throw unreadable(text);
  return parts.map((part, index) => {
    try {
      return readLayer(part, system);
    } catch (error) {
      // Only this layer is wrong: the line that is offered keeps the others.
      const mended = error instanceof AskError && error.example !== example ? error.example : undefined;
      throw mended === undefined ? error : (error as AskError).with({ example: parts.with(index, mended).join('; ') });
    }
  });
}

/** The same as a quantity: so that the units typed in it count among the others. */
export function readStack(text: string, system: UnitSystem): TypedStack {
  const layers = readLayers(text, system);
  const count = (one: UnitSystem) => layers.filter(({ thickness }) => thickness.system === one).length;
  return {
    dimension: 'length',
    si: layers.reduce((sum, { thickness_m }) => sum + thickness_m, 0),
    text,
    system: count('US') > count('metric') ? 'US' : count('metric') > 0 ? 'metric' : undefined,
    layers,
  };
}

function readLayer(part: string, system: UnitSystem): TypedLayer {
  // An inch or foot mark may touch the word behind it.
  const words = part
    .replace(/(?<=\d\s?)(["″”'′])\s*/g, '$1 ')
    .trim()
    .split(/\s+/);
  let twoWays: AskError | undefined;
  for (const [size, rest] of splits(words)) {
    const thickness = tryThickness(size, system);
    if (thickness instanceof AskError) twoWays ??= thickness.with({ example: `${thickness.example} ${rest}` });
    if (thickness === undefined || thickness instanceof AskError) continue;
    if (thickness.si > thickest_m) throw tooThick(size, rest);
    return { material: materialOf(size, tidied(rest)), thickness_m: thickness.si, thickness };
  }
  if (twoWays) throw twoWays;
  throw /\d/.test(part) ? unreadable(part) : noThickness(part, system);
}

/** Every way to take some words for the size and the others for the material, the longest size first. */
function* splits(words: readonly string[]): Generator<readonly [size: string, rest: string]> {
  const most = Math.min(longest, words.length - 1);
  for (let count = most; count >= 1; count--) {
    yield [words.slice(0, count).join(' '), words.slice(count).join(' ')];
  }
  for (let count = most; count >= 1; count--) {
    yield [words.slice(-count).join(' '), words.slice(0, -count).join(' ')];
  }
}

function materialOf(size: string, name: string) {
  try {
    return findMaterial(name);
  } catch (error) {
    if (!(error instanceof AskError)) throw error;
    if (/\s\d/.test(name)) throw noSemicolon(`${size} ${name}`);
    throw error.with({ example: `${size} ${error.example}` });
  }
}

const tidied = (name: string): string => name.replace(/^of\s+/i, '').replace(/\s+thick$/i, '');

/** Nothing where the text is no size; the error where it can be read as two, with the one that may be a layer. */
function tryThickness(text: string, system: UnitSystem): Quantity | AskError | undefined {
  if (!/\d|[½¼¾⅛⅜⅝⅞]/.test(text)) return undefined;
  const wanted: Wanted = {
    dimensions: ['length'],
    label: 'thickness',
    system,
    plainUnit: { metric: 'mm', US: 'in' },
  };
  try {
    return readQuantity(text, wanted);
  } catch (error) {
    if (!(error instanceof AskError)) throw error;
    if (error.code !== 'ambiguous') return undefined;
    try {
      const { si } = readQuantity(text, { ...wanted, max: thickest_m });
      return error.with({ example: `${Number((si * 1000).toPrecision(6))} mm` });
    } catch {
      return error;
    }
  }
}

const rank: Readonly<Record<NonNullable<Material['hotFace']>['fit'], number>> = {
  yes: 3,
  'within limits': 2,
  'backup only': 1,
  never: 0,
};

const rankOf = ({ hotFace, kind }: Material): number =>
  hotFace ? rank[hotFace.fit] : kind === 'metal shell' ? 0 : rank['backup only'];

/** Backing first and a hot face behind it: most likely the wall was told from outside in. */
export function refuseInsideOut(layers: readonly TypedLayer[]): void {
  const [first, ...behind] = layers;
  const better = behind.find(({ material }) => first && rankOf(material) >= 2 && rankOf(first.material) <= 1);
  if (!first || !better) return;
  throw new AskError({
    code: 'ambiguous',
    what: `${first.material.name} stands first, on the hot side, and ${better.material.name} behind it. ${first.material.hotFace?.why ?? ''}`.trim(),
    expected: 'layers hot side first: what faces the fire, then what stands behind it',
    example: layers.toReversed().map(layerText).join('; '),
  });
}

/** As it would be typed. */
export const layerText = ({ material, thickness }: TypedLayer): string =>
  `${thickness.text}${thickness.assumedUnit === undefined ? '' : ` ${thickness.assumedUnit}`} ${material.id}`;

/** The same wall with its last layer thicker, as it would be typed. */
export function thickerText(layers: readonly TypedLayer[], more_m: number, system: UnitSystem): string {
  const last = layers.at(-1);
  if (!last) return '';
  const thickness = formatSi(last.thickness_m + more_m, 'm', system).replace(/ \(.*\)$/, '');
  return [...layers.slice(0, -1).map(layerText), `${thickness} ${last.material.id}`].join('; ');
}

const tooThick = (size: string, rest: string) =>
  new AskError({
    code: 'out-of-range',
    what: `a layer ${size} thick is no furnace wall`,
    expected: 'at most 1 m (39 in) a layer',
    example: `50 mm ${rest}`,
  });

const noSemicolon = (part: string) =>
  new AskError({
    code: 'unreadable',
    what: `"${part.slice(0, 60)}" holds more than one layer, or a material that is not in the catalogue`,
    expected: '";" between layers, hot side first',
    example: part.replace(/(?<=[\p{L})])\s*(?:[,+&/|]|\b(?:vs\.?|and|then|plus)\b)?\s*(?=\d)/giu, '; '),
  });

const tooLong = (text: string) =>
  new AskError({
    code: 'too-long',
    what: `the layers have ${text.length} characters`,
    expected: `at most ${mostLetters}`,
    example,
  });

const unreadable = (text: string) =>
  new AskError({
    code: 'unreadable',
    what: `"${text.slice(0, 60)}" is not a layer: no thickness could be read in it, or no material is left beside it`,
    expected: 'a thickness and a material for each layer, ";" between layers, hot side first',
    example,
  });

const noThickness = (part: string, system: UnitSystem) =>
  new AskError({
    code: 'missing',
    what: `"${part.slice(0, 60)}" has no thickness`,
    expected: 'a thickness and a material for each layer, ";" between layers, hot side first',
    example: `${system === 'US' ? '1 in' : '25 mm'} ${part.slice(0, 60)}`,
  });
