import { nameOf } from './currency.ts';
import type { Shown, SiUnit, UnitSystem } from './figure.ts';
import { meaningOf } from './units.ts';

/** One way to print an SI value: `printed = (si − offset) / factor`. */
export interface Scale {
  readonly name: string;
  /** SI in one of these. */
  readonly factor: number;
  /** K at zero of the scale, else 0. */
  readonly offset: number;
  /** Most decimals ever printed. */
  readonly most: number;
}

const known = new Map<string, Scale[]>();

/** Looked up once: a card asks for dozens. */
function listed(name: string, most = 6): Scale {
  const found = known.get(name)?.[most];
  if (found) return found;
  const { factor, offset } = meaningOf(name, [])!;
  const made = { name, factor, offset, most };
  const of = known.get(name) ?? [];
  of[most] = made;
  known.set(name, of);
  return made;
}

const scale = (name: string, factor: number, most = 6): Scale => ({ name, factor, offset: 0, most });

const inch = listed('in', 2);
const foot = listed('ft', 2);
const pound = listed('lb').factor;
const btu = listed('Btu').factor;
/** K in one degree Fahrenheit. */
const DEGREE_F_K = 5 / 9;
const hour = 3600;
const ft2 = foot.factor ** 2;

/** The scale of a size: the first whose least value (in its own unit) it reaches. */
function bySize(value: number, ...steps: readonly (readonly [least: number, scale: Scale])[]): Scale {
  const size = Math.abs(value);
  // A hair of slack, so that 1 lb converted to kg and back is still a pound.
  const found = steps.find(([least, { factor }]) => size >= least * factor * (1 - 1e-9));
  return (found ?? steps.at(-1)!)[1];
}

function ofLength(value: number, system: UnitSystem, shown: Shown | undefined): Scale {
  if (shown === 'sheet') return system === 'US' ? listed('in', 3) : listed('mm', 2);
  if (system === 'US') return bySize(value, [10, foot], [0, inch]);
  return bySize(value, [10, listed('m', 2)], [10, listed('mm', 0)], [0, listed('mm', 1)]);
}

function ofVolume(value: number, system: UnitSystem, shown: Shown | undefined): Scale {
  if (system === 'metric') return bySize(value, [10, listed('m3')], [0.1, listed('L')], [0, listed('ml')]);
  if (shown === 'liquid') return bySize(value, [1, listed('gal')], [0.25, listed('qt')], [0, listed('fl oz')]);
  return bySize(value, [0.05, listed('cu ft')], [0, listed('cu in')]);
}

function ofTime(value: number, shown: Shown | undefined): Scale {
  const days = (name: string) => scale(name, 86_400);
  if (shown === 'days') return days(value === 86_400 ? 'day' : 'days');
  if (shown === 'hours') return listed('h');
  if (shown === 'minutes') return listed('min');
  return bySize(value, [2, days('days')], [2, listed('h')], [2, listed('min')], [0, listed('s')]);
}

/** The scale a value is printed on for a reader of one system. */
export function scaleOf(value: number, unit: SiUnit, system: UnitSystem, shown?: Shown): Scale {
  const US = system === 'US';
  switch (unit) {
    case 'm':
      return ofLength(value, system, shown);
    case 'm2':
      if (US) return bySize(value, [0.5, scale('sq ft', ft2)], [0, scale('sq in', inch.factor ** 2)]);
      return bySize(value, [0.1, scale('m2', 1)], [0, scale('cm2', 1e-4)]);
    case 'm3':
      return ofVolume(value, system, shown);
    case 'kg':
      if (US) return bySize(value, [1, listed('lb')], [0, listed('oz')]);
      return bySize(value, [1, listed('kg')], [0, listed('g')]);
    case 's':
      return ofTime(value, shown);
    case 'K':
      return listed(US ? '°F' : '°C', 1);
    case 'dK':
      return scale(US ? '°F' : '°C', US ? DEGREE_F_K : 1, 1);
    case 'Pa':
      if (US) return bySize(value, [1, listed('psi')], [0, listed('inWC')]);
      return bySize(value, [1, listed('kPa')], [0, listed('Pa')]);
    case 'W':
      if (US) return listed('Btu/h', 0);
      return bySize(value, [1, listed('kW')], [0, listed('W')]);
    case 'J':
      if (US) return listed('Btu');
      return bySize(value, [1, listed('MJ')], [0, listed('kJ')]);
    case 'kg/m3':
      return listed(US ? 'lb/ft3' : 'kg/m3');
    case 'W/(m K)':
      if (US) return scale('Btu in/(h ft2 °F)', (btu / hour / ft2 / DEGREE_F_K) * inch.factor);
      return scale('W/(m K)', 1);
    case 'J/(kg K)':
      return US ? scale('Btu/(lb °F)', btu / pound / DEGREE_F_K) : scale('kJ/(kg K)', 1e3);
    case 'J/kg':
      return US ? scale('Btu/lb', btu / pound) : scale('kJ/kg', 1e3);
    case 'm/s':
      return listed(US ? 'ft/s' : 'm/s');
    case 'm3/s':
      return listed(US ? 'cfm' : 'm3/h');
    case 'kg/s':
      return listed(US ? 'lb/h' : 'kg/h');
    case 'W/m2':
      return US ? scale('Btu/(h ft2)', btu / hour / ft2) : scale('W/m2', 1);
    case 'W/(m2 K)':
      return US ? scale('Btu/(h ft2 °F)', btu / hour / ft2 / DEGREE_F_K) : scale('W/(m2 K)', 1);
    case '1/K':
      return US ? scale('millionths per °F', 1e-6 / DEGREE_F_K) : scale('millionths per °C', 1e-6);
    case '1':
      return scale('%', 0.01);
    case 'count':
      return scale('', 1);
    default:
      return scale(nameOf(unit), 1, 2);
  }
}
