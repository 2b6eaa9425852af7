import { AskError } from '../../core/ask-error.ts';
import { daysBetween, readDay } from '../../core/dry/calendar.ts';
import type { Weighing } from '../../core/dry/weighing.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { readQuantity } from '../../core/quantity/parse.ts';

const most = 12;
const example = '31.2 kg day 7; 30.9 kg day 10';

/**
 * `31.2 kg day 7; 30.9 kg on 2026-03-11`: a mass and its day, counted from the day it was rammed or by the calendar.
 * @throws AskError about `weighed`.
 */
export function readWeighings(text: string, { from, system }: { from: Date; system: UnitSystem }): readonly Weighing[] {
  const parts = text
    .split(/[;\n]/)
    .map((part) => part.trim())
    .filter((part) => part !== '');
  if (parts.length > most) throw wrong(`${parts.length} weighings`, `at most ${most}: the last ones say it all`);
  return parts.map((part) => {
    const [, mass, day, date] =
      /^(.+?)\s*,?\s+(?:day\s*(\d+(?:\.\d+)?)|(?:on\s+)?(\d{4}-\d{1,2}-\d{1,2}))$/i.exec(part) ?? [];
    if (mass === undefined) throw wrong(`"${part.slice(0, 40)}"`, 'a mass, then its day');
    const { si } = readQuantity(mass, {
      dimensions: ['mass'],
      label: 'mass',
      system,
      plainUnit: { metric: 'kg', US: 'lb' },
      min: 0.05,
      max: 5000,
    });
    return { mass_kg: si, day: date === undefined ? Number(day) : daysBetween(from, readDay(date)) };
  });
}

const wrong = (what: string, expected: string) =>
  new AskError({
    code: 'unreadable',
    what: `${what} can't be read as weighings`,
    expected,
    example,
    option: 'weighed',
  });
