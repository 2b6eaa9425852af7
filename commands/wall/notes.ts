import { burnThreshold_K } from '../../core/heat/touch.ts';
import { temperatureAt } from '../../core/heat/transient/crossings.ts';
import type { WallAnswer } from '../../core/heat/wall-answer.ts';
import { latestBelow } from '../../core/heat/wall-curves.ts';
import { smallFire_W } from '../../core/heat/wall-fuel.ts';
import { findMaterial } from '../../core/materials/catalogue.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { formatSi } from '../../core/quantity/format.ts';
import { modelErrorNote } from '../model-error.ts';
import { shiny } from './figures.ts';
import type { AskedWall } from './question.ts';
import { hottestShell_K, waitFor } from './words.ts';

/** What belongs to the numbers and is none itself. */
export function wallNotes(answer: WallAnswer, { finish, vessel }: AskedWall, units: UnitSystem): readonly string[] {
  const rows: (string | undefined)[] = [
    touchNote(answer, finish, units),
    pathNote(answer, units),
    powerNote(answer, units),
    lidNote(answer, units),
    vessel
      ? 'A layer counts as that thick all the way up: where it tapers, give the thinnest place, as size hands it over.'
      : undefined,
    finish.emissivity.typical < shiny
      ? `Do not trust an infrared reading of a shiny shell: a spot of black stove paint reads true, or correct it: touch reads=… surface=${finish.id}.`
      : undefined,
    modelErrorNote(['wall.shell_peak', 'wall.stored'], units),
    dryingNote(answer, units),
    paintNote(answer, finish, units),
    answer.model.question.lid_off_s > 0
      ? 'An open bore cools its face fast, which cracks it sooner than a closed night.'
      : undefined,
  ];
  return rows.filter((one) => one !== undefined);
}

/** Two touches of a hand on this very finish, each with when it is harmless, by the adverse end. */
function touchNote({ curves, model }: WallAnswer, finish: AskedWall['finish'], units: UnitSystem): string {
  const touches = [
    { time_s: 1, says: 'a touch of a second' },
    { time_s: 60, says: 'a minute' },
  ].map(({ time_s, says }) => {
    const level_K = burnThreshold_K(time_s, finish.touch);
    const below_s = latestBelow(curves.time_s, curves.shell, level_K);
    const when =
      below_s === undefined
        ? 'later than shown'
        : below_s <= model.fire_out_s
          ? 'at once'
          : `${waitFor(below_s - model.fire_out_s)} after fire out`;
    return `${says} (${formatSi(level_K, 'K', units)}) ${when}`;
  });
  return `No burn on this finish, ${finish.name}: ${touches.join(', ')}.`;
}

/** Once it has been held long: what the whole furnace loses but the gas, each path with its share. */
function pathNote({ paths }: WallAnswer, units: UnitSystem): string {
  const shares = paths.paths.map(({ path, share }) => `${path} ${(share * 100).toFixed(0)} %`).join(', ');
  return `All that is the side wall's; pot and metal take heat besides. Held for long, ${formatSi(Number(paths.total_W.toPrecision(2)), 'W', units)} leave it: ${shares}.`;
}

function powerNote({ firing: { ramp_power_W } }: WallAnswer, units: UnitSystem): string {
  const power = (watts: number) => formatSi(Number(watts.toPrecision(2)), 'W', units);
  const needed = `Heating up takes ${power(ramp_power_W)} of the ${power(smallFire_W.low)} to ${power(smallFire_W.high)} that a small fire leaves in a furnace (from memory)`;
  return ramp_power_W > smallFire_W.high
    ? `${needed}: it will be slower than that, ramp= a longer time.`
    : `${needed}.`;
}

/** Both bounds of what the steam of a damp lining does. */
function dryingNote({ drying }: WallAnswer, units: UnitSystem): string | undefined {
  if (!drying) return undefined;
  const { dry_s, dried, shell_K, condensing_K } = drying;
  const [cool, wet] = [shell_K, condensing_K].map((T) => formatSi(T, 'K', units));
  const when = `${waitFor(dry_s)} after lighting`;
  const state = dried ? `The lining is dry ${when}` : `The lining is not yet dry when the fire goes out, ${when}`;
  return `${state}. If all its steam leaves by the bore the shell is at ${cool} then; if all condenses on the shell, that has been up to ${wet} and dripping. The truth lies between: a cool first hour proves nothing.`;
}

function lidNote({ run }: WallAnswer, units: UnitSystem): string {
  const end_s = run.time_s.at(-1) ?? 0;
  return `When the shell is cool the bore is still at ${formatSi(temperatureAt(run, 'face', end_s), 'K', units)}. The can's own steel lid stays off for about a day after a melt (common practice, no source).`;
}

function paintNote(answer: WallAnswer, finish: AskedWall['finish'], units: UnitSystem): string | undefined {
  const limit = findMaterial('painted-steel').properties.service_limit_K;
  if (finish.touch !== 'painted-metal' || !limit || hottestShell_K(answer) <= limit.low) return undefined;
  return `The shell may pass ${formatSi(limit.low, 'K', units)}, where common paint starts to brown and smell; stove paint stands more.`;
}
