import type { SiUnit } from './figure.ts';

/** Unit suffixes of the keys in a Step, and the SI unit each stands for. */
const SUFFIXES: Readonly<Record<string, SiUnit>> = {
  _m: 'm',
  _m2: 'm2',
  _m3: 'm3',
  _kg: 'kg',
  _s: 's',
  _K: 'K',
  _dK: 'dK',
  _Pa: 'Pa',
  _W: 'W',
  _J: 'J',
  _kg_m3: 'kg/m3',
  _W_mK: 'W/(m K)',
  _J_kgK: 'J/(kg K)',
  _J_kg: 'J/kg',
  _m_s: 'm/s',
  _m3_s: 'm3/s',
  _kg_s: 'kg/s',
  _W_m2: 'W/m2',
  _W_m2K: 'W/(m2 K)',
  _per_K: '1/K',
  _count: 'count',
  _USD: 'USD',
};

const longestFirst = Object.keys(SUFFIXES).sort((a, b) => b.length - a.length);

/** `dry_density_kg_m3` → `dry density` in kg/m3; a key without a unit is a plain share of 1. */
export function readKey(key: string): { label: string; unit: SiUnit } {
  const suffix = longestFirst.find((end) => key.length > end.length && key.endsWith(end));
  const words = suffix ? key.slice(0, -suffix.length) : key;
  return { label: words.replaceAll('_', ' '), unit: suffix ? SUFFIXES[suffix]! : '1' };
}
