import type { UnitSystem } from '../../core/quantity/figure.ts';

interface Reader {
  readonly zone: string;
  readonly units: UnitSystem;
}

/** `Saturday 28 November 2026, 9:00`: the month in letters, since 3/4 is two days. US readers get am and pm. */
export const dayAndHour = (at: Date, reader: Reader): string => `${dayIn(at, reader.zone)}, ${hourIn(at, reader)}`;

export const dayIn = (at: Date, zone: string): string =>
  format(at, { timeZone: zone, weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' }).replace(/,/g, '');

export function hourIn(at: Date, { zone, units }: Reader): string {
  const hour12 = units === 'US';
  const hour = format(at, { timeZone: zone, hour: 'numeric', minute: '2-digit', hour12 });
  return hour12 ? hour : hour.replace(/^0(?=\d:)/, '').replace(/^24:/, '0:');
}

/** Days between two dates of a zone, whatever the hours. */
export function daysBetween(from: Date, to: Date, zone: string): number {
  const midnight = (at: Date) => {
    const [year = 0, month = 1, day = 1] = format(at, {
      timeZone: zone,
      year: 'numeric',
      month: '2-digit',
      day: '2-digit',
    })
      .split('/')
      .map(Number)
      .toReversed();
    return Date.UTC(year, month - 1, day);
  };
  return Math.round((midnight(to) - midnight(from)) / 86_400_000);
}

/** `today`, `tomorrow`, `in 12 days`, `yesterday`, `12 days ago`. */
export function fromNow(at: Date, now: Date, zone: string): string {
  const days = daysBetween(now, at, zone);
  if (days === 0) return 'today';
  if (Math.abs(days) === 1) return days > 0 ? 'tomorrow' : 'yesterday';
  return days > 0 ? `in ${days} days` : `${-days} days ago`;
}

const formats = new Map<string, Intl.DateTimeFormat>();

/** Making one takes a hundred times as long as using it. */
function format(at: Date, options: Intl.DateTimeFormatOptions): string {
  const key = JSON.stringify(options);
  const known = formats.get(key) ?? new Intl.DateTimeFormat('en-GB', options);
  if (formats.size < 2000) formats.set(key, known);
  return known.format(at);
}
