import { AskError } from '../../core/ask-error.ts';
import { findLining, type Lining } from '../../core/dry/kind.ts';
import { findMaterial } from '../../core/materials/catalogue.ts';
import type { Material } from '../../core/materials/material.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { type Quantity, readQuantity } from '../../core/quantity/parse.ts';

/** What stands behind the hot face: laid wet and drying through it, or put in dry. */
export interface Behind {
  readonly material: Material;
  readonly thickness_m: number;
  readonly wet: boolean;
}

/** A lining as typed, `1.5 in clay-sand; 2 in vermiculite`: its face is what dries, and what is laid wet behind it. */
export interface TypedFace extends Quantity {
  readonly face: Lining;
  /** Nothing where only the lining was named. */
  readonly thickness?: Quantity;
  readonly behind: readonly Behind[];
}

const longest = 5;
const example = '1.5 in clay-sand';

/** @throws AskError, the option to be filled in by the caller. */
export function readFace(text: string, system: UnitSystem): TypedFace {
  if (text.length > 200) throw tooLong(text);
  const [first = '', ...others] = text
    .split(/[;\n]/)
    .map((part) => part.trim())
    .filter((part) => part !== '');
  const { thickness, name } = parted(first, system);
  if (name === '') throw unreadable(text);
  const behind = others.map((part): Behind => {
    const layer = parted(part, system);
    const material = findMaterial(layer.name);
    if (!layer.thickness) throw unreadable(part);
    return { material, thickness_m: layer.thickness.si, wet: material.properties.mixing_water !== undefined };
  });
  const face = named(name, thickness?.text);
  return {
    dimension: 'length',
    si: thickness?.si ?? 0,
    text,
    system: thickness?.system,
    face,
    ...(thickness ? { thickness } : {}),
    behind,
  };
}

/** The longest beginning that is a size, and the rest. */
function parted(part: string, system: UnitSystem): { thickness?: Quantity; name: string } {
  const words = part
    .replace(/(?<=\d\s?)(["″”'′])\s*/g, '$1 ')
    .trim()
    .split(/\s+/);
  if (!/\d|[½¼¾⅛⅜⅝⅞]/.test(words[0] ?? '')) return { name: part };
  for (let count = Math.min(longest, words.length - 1); count >= 1; count--) {
    try {
      const thickness = readQuantity(words.slice(0, count).join(' '), {
        dimensions: ['length'],
        label: 'thickness',
        system,
        plainUnit: { metric: 'mm', US: 'in' },
      });
      return {
        thickness,
        name: words
          .slice(count)
          .join(' ')
          .replace(/^of\s+/i, ''),
      };
    } catch (error) {
      if (!(error instanceof AskError)) throw error;
      if (error.code === 'ambiguous' || error.code === 'out-of-range') throw error.with({ example });
    }
  }
  throw unreadable(part);
}

function named(name: string, size: string | undefined): Lining {
  try {
    return findLining(name);
  } catch (error) {
    if (!(error instanceof AskError) || error.code !== 'unknown-name') throw error;
    throw error.with({ example: `${size ?? '1.5 in'} ${error.example}` });
  }
}

const unreadable = (part: string) =>
  new AskError({
    code: 'unreadable',
    what: `"${part.slice(0, 60)}" is no lining`,
    expected: 'a thickness and what it is made of, hot side first',
    example,
  });

const tooLong = (text: string) =>
  new AskError({
    code: 'too-long',
    what: `the lining has ${text.length} characters`,
    expected: 'at most 200',
    example,
  });
