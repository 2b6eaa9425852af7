import type { Claimed } from './claimed.ts';
import {
  compareOf,
  degrees,
  fuelOf,
  type Groups,
  more,
  name,
  number,
  type Pattern,
  q,
  read,
  system,
  typed,
  whole,
} from './words.ts';

function flames(
  one: string,
  other: string,
  of: string,
  { by, way }: Groups,
  assumed: Claimed['assumed'] = [],
): Claimed {
  const difference = read(by, 'temperature-difference');
  const cooler = way === 'cooler' || way === 'colder';
  return {
    lines: cooler ? [other, one] : [one, other],
    figure: 'flame.temperature',
    of,
    compare: 'at least',
    kind: 'difference',
    value: difference.si,
    unit: 'dK',
    system: system(difference),
    assumed: [{ text: 'flames at their upper bound, both as far below it in fact' }, ...assumed],
  };
}

export const flameClaims: readonly Pattern[] = [
  // Flames.
  {
    pattern: whole(
      `${name('fuel')} burns (?:at )?(?:least )?${q('by', degrees)} (?<way>hotter|cooler|colder) than ${name('other')}`,
    ),
    means: (groups) => {
      const [one, other] = [fuelOf(groups.fuel), fuelOf(groups.other)];
      return flames(
        `flame ${one.id}`,
        `flame ${other.id}`,
        `the flame of ${one.name}, less or more than that of ${other.name}`,
        groups,
      );
    },
  },
  {
    // What lump is held against in every such talk; of other fuels it would be a guess.
    pattern: whole(`(?<fuel>lump(?: charcoal)?) burns ${q('by', degrees)} (?<way>hotter)`),
    means: (groups) =>
      flames(
        'flame lump-charcoal',
        'flame charcoal-briquettes',
        'the flame of lump charcoal over that of briquettes',
        groups,
        [
          {
            text: 'hotter than briquettes, which lump is held against',
            override: 'lump burns 300 °F hotter than propane',
          },
        ],
      ),
  },
  {
    pattern: whole(
      `(?:preheating|warming|heating) the (?:blast|air) to ${q('air', degrees)} makes ${name('fuel')} burn ${q('by', degrees)} (?<way>hotter)`,
    ),
    means: (groups) => {
      const fuel = fuelOf(groups.fuel);
      return flames(
        `flame ${fuel.id} air=${typed(read(groups.air, 'temperature'))}`,
        `flame ${fuel.id}`,
        `the flame of ${fuel.name} in warmed air over that in air from outside`,
        groups,
      );
    },
  },
  {
    pattern: whole(
      `(?<excess>${number} ?%) (?:of )?excess air makes ${name('fuel')} burn ${q('by', degrees)} (?<way>cooler|colder|hotter)`,
    ),
    means: (groups) => {
      const fuel = fuelOf(groups.fuel);
      return flames(
        `flame ${fuel.id} excess=${typed(read(groups.excess, 'fraction'))}`,
        `flame ${fuel.id} excess=0%`,
        `the flame of ${fuel.name} with that excess, beside one with just enough air`,
        groups,
      );
    },
  },
  {
    pattern: whole(`${name('fuel')} (?:burns at|reaches|gets to) ${more}${q('value', degrees)}`),
    means: ({ fuel, limit, value }) => {
      const kind = fuelOf(fuel);
      const claimed = read(value, 'temperature');
      return {
        lines: [`flame ${kind.id}`],
        figure: 'flame.temperature',
        of: `the flame of ${kind.name} at its upper bound`,
        compare: compareOf(limit, 'at least'),
        kind: 'value',
        value: claimed.si,
        unit: 'K',
        system: system(claimed),
        assumed: [{ text: 'an upper bound: a real flame stays 100 to 400 K below' }],
      };
    },
  },
];
