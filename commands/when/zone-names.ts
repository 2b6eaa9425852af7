import { AskError } from '../../core/ask-error.ts';
import { nearest } from '../../core/materials/nearest.ts';

/** Every zone that a city is named for, by its IANA name. */
function zones(): readonly string[] {
  known ??= Intl.supportedValuesOf('timeZone').filter((one) => one.includes('/'));
  return known;
}
let known: readonly string[] | undefined;

const areas = ['Africa', 'America', 'Antarctica', 'Asia', 'Atlantic', 'Australia', 'Europe', 'Indian', 'Pacific'];
const cityOf = (zone: string): string => zone.slice(zone.lastIndexOf('/') + 1);
const worded = (name: string): string => name.toLowerCase().replaceAll('_', ' ');

/**
 * The IANA name of a zone from what was typed: `Europe/Berlin`, `berlin`, `New York`. Offsets and abbreviations are
 * refused: they are one half of a year only, and a reminder across the change of clocks would be an hour off.
 * @throws AskError
 */
export function zoneNamed(typed: string): string {
  const name = typed.normalize('NFC').trim().replace(/\s+/g, '_');
  if (/^utc$/i.test(name)) return 'UTC';
  const short = name.toLowerCase();
  if (/^(?:etc\/)?(?:utc|gmt)?[_]?[+\-−±]?\d/i.test(name) || /^etc\//i.test(name)) throw offset(typed);
  if (Object.hasOwn(abbreviations, short)) throw abbreviation(typed, abbreviations[short] ?? 'Europe/Berlin');
  const exact = name.includes('/') ? accepted(name) : undefined;
  if (exact !== undefined) return exact;
  const city = worded(cityOf(name));
  const named = zones().filter((zone) => worded(cityOf(zone)) === city);
  const found = named.length > 0 || name === '' ? named : areas.flatMap((area) => accepted(`${area}/${name}`) ?? []);
  if (found.length > 1) throw several(typed, found);
  const [only] = found;
  if (only !== undefined && !name.includes('/')) return only;
  throw unknown(typed, only === undefined ? likely(name) : [only]);
}

/** As it is written, whatever the case it was typed in; a name that replaces an older one stays the new one. */
function accepted(name: string): string | undefined {
  try {
    const { timeZone } = new Intl.DateTimeFormat('en', { timeZone: name }).resolvedOptions();
    if (timeZone.toLowerCase() === name.toLowerCase()) return timeZone;
    return name.toLowerCase().replace(/(?<=^|[/_-])\p{L}/gu, (letter) => letter.toUpperCase());
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

function likely(name: string): readonly string[] {
  const cities = nearest(
    cityOf(name).replaceAll('_', ' '),
    zones().map((zone) => worded(cityOf(zone))),
  );
  return cities.flatMap((city) => zones().filter((zone) => worded(cityOf(zone)) === city)).slice(0, 3);
}

const example = 'Europe/Berlin';

const unknown = (typed: string, near: readonly string[]) =>
  new AskError({
    code: 'unknown-name',
    what: `I know no time zone "${typed.slice(0, 40)}"`,
    expected: `a large city whose clocks are yours, such as ${near.join(', ') || example}`,
    example: near[0] ?? example,
  });

const several = (typed: string, found: readonly string[]) =>
  new AskError({
    code: 'ambiguous',
    what: `there is more than one ${typed.slice(0, 40)}`,
    expected: `one of ${found.join(', ')}`,
    example: found[0] ?? example,
  });

const offset = (typed: string) =>
  new AskError({
    code: 'refused',
    what: `"${typed.slice(0, 40)}" is an offset, and an offset knows no summer time: half the year you would be called an hour off`,
    expected: 'a city whose clocks are yours, such as Europe/Berlin or America/Chicago',
    example,
  });

const abbreviation = (typed: string, city: string) =>
  new AskError({
    code: 'refused',
    what: `"${typed.slice(0, 40)}" holds for half the year only, and means different hours in different countries`,
    expected: `a city whose clocks are yours, such as ${city}`,
    example: city,
  });

/** What people type for their clocks, and a city where they may mean it. */
const abbreviations: Readonly<Record<string, string>> = {
  gmt: 'Europe/London',
  bst: 'Europe/London',
  wet: 'Europe/Lisbon',
  west: 'Europe/Lisbon',
  cet: 'Europe/Berlin',
  cest: 'Europe/Berlin',
  met: 'Europe/Berlin',
  mez: 'Europe/Berlin',
  mesz: 'Europe/Berlin',
  eet: 'Europe/Helsinki',
  eest: 'Europe/Helsinki',
  msk: 'Europe/Moscow',
  ist: 'Asia/Kolkata',
  jst: 'Asia/Tokyo',
  aest: 'Australia/Sydney',
  aedt: 'Australia/Sydney',
  nzst: 'Pacific/Auckland',
  est: 'America/New_York',
  edt: 'America/New_York',
  et: 'America/New_York',
  est5edt: 'America/New_York',
  cst: 'America/Chicago',
  cdt: 'America/Chicago',
  ct: 'America/Chicago',
  cst6cdt: 'America/Chicago',
  mst: 'America/Denver',
  mdt: 'America/Denver',
  mt: 'America/Denver',
  mst7mdt: 'America/Denver',
  pst: 'America/Los_Angeles',
  pdt: 'America/Los_Angeles',
  pt: 'America/Los_Angeles',
  pst8pdt: 'America/Los_Angeles',
  hst: 'Pacific/Honolulu',
};
