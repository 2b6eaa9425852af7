import type { Claimed, Comparison } from './claimed.ts';
import {
  compareOf,
  fuelOf,
  type Groups,
  mass,
  metalOf,
  more,
  name,
  number,
  type Pattern,
  power,
  q,
  read,
  system,
  time,
  typed,
  whole,
} from './words.ts';

/** What a melt burns, costs or takes. */
function melt(
  figure: 'fuel.mass' | 'fuel.time' | 'fuel.cost',
  { fuel, metal, amount, rate, limit, value }: Groups,
  otherwise: Comparison,
): Claimed {
  const kind = fuelOf(fuel);
  const alloy = metalOf(metal);
  const melted = read(amount, 'mass');
  const dimension = ({ 'fuel.mass': 'mass', 'fuel.time': 'time', 'fuel.cost': 'money' } as const)[figure];
  const claimed = read(value, dimension);
  const fired = rate === undefined ? undefined : read(rate, 'power');
  return {
    lines: [`fuel ${kind.id} amount=${typed(melted)} metal=${alloy}${fired ? ` rate=${typed(fired)}` : ''}`],
    figure,
    of: `${{ 'fuel.mass': 'the fuel burned', 'fuel.time': 'the time to the pour', 'fuel.cost': 'the cost of the fuel' }[figure]} for ${typed(melted)} of ${alloy} over ${kind.name}, from a cold furnace`,
    compare: compareOf(limit, otherwise),
    kind: 'value',
    value: claimed.si,
    unit: ({ 'fuel.mass': 'kg', 'fuel.time': 's', 'fuel.cost': 'USD' } as const)[figure],
    system: system(claimed, melted),
    assumed: [{ text: 'the usual small furnace of the fuel card', override: 'for=club furnace' }],
  };
}

export const meltClaims: readonly Pattern[] = [
  // Fuel of a melt.
  {
    pattern: whole(
      `${more}${q('value', mass)}(?: of)? ${name('fuel')} (?:melts|will melt|can melt|is enough (?:to melt|for)|does) ${q('amount', mass)}(?: of)? ${name('metal')}`,
    ),
    means: (groups) => melt('fuel.mass', groups, 'at most'),
  },
  {
    pattern: whole(
      `(?:it takes|you need) ${more}${q('value', mass)}(?: of)? ${name('fuel')} to melt ${q('amount', mass)}(?: of)? ${name('metal')}`,
    ),
    means: (groups) => melt('fuel.mass', groups, 'about'),
  },
  {
    pattern: whole(
      `(?:i|you|we) (?:can )?melt ${q('amount', mass)}(?: of)? ${name('metal')} (?:with|on|over) ${more}${q('value', mass)}(?: of)? ${name('fuel')}`,
    ),
    means: (groups) => melt('fuel.mass', groups, 'at most'),
  },
  {
    pattern: whole(
      `(?:melting )?${q('amount', mass)}(?: of)? ${name('metal')} (?:needs|takes|burns|uses) ${more}${q('value', mass)}(?: of)? ${name('fuel')}`,
    ),
    means: (groups) => melt('fuel.mass', groups, 'about'),
  },
  // Time of a melt.
  {
    pattern: whole(
      `${q('amount', mass)}(?: of)? ${name('metal')} melts in ${more}${q('value', time)} (?:over|with|on) ${name('fuel')}`,
    ),
    means: (groups) => melt('fuel.time', groups, 'at most'),
  },
  {
    pattern: whole(
      `(?:a )?${q('rate', power)} (?:of )?${name('fuel')} melts ${q('amount', mass)}(?: of)? ${name('metal')} in ${more}${q('value', time)}`,
    ),
    means: (groups) => melt('fuel.time', groups, 'at most'),
  },
  // Cost of a melt.
  {
    pattern: whole(
      `melting ${q('amount', mass)}(?: of)? ${name('metal')} (?:with|over|on) ${name('fuel')} costs ${more}(?<value>\\$ ?${number})`,
    ),
    means: (groups) => melt('fuel.cost', groups, 'about'),
  },
  {
    pattern: whole(
      `${name('fuel')} melts ${q('amount', mass)}(?: of)? ${name('metal')} for ${more}(?<value>\\$ ?${number})`,
    ),
    means: (groups) => melt('fuel.cost', groups, 'at most'),
  },
  // Heat of a melt.
  {
    pattern: whole(
      `(?:melting )?${q('amount', mass)}(?: of)? ${name('metal')} (?:needs|takes) ${more}${q('value', 'mj|kj|kwh|btu')}(?: of heat)?`,
    ),
    means: ({ amount, metal, limit, value }) => {
      const melted = read(amount, 'mass');
      const claimed = read(value, 'energy');
      return {
        lines: [`melt ${typed(melted)} ${metalOf(metal)}`],
        figure: 'melt.heat',
        of: `the heat in ${typed(melted)} of ${metalOf(metal)} at its pour, without furnace and crucible`,
        compare: compareOf(limit, 'about'),
        kind: 'value',
        value: claimed.si,
        unit: 'J',
        system: system(melted),
        assumed: [],
      };
    },
  },
];
