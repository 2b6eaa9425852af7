import type { Caution } from '../../core/hazard/caution.ts';
import { type Look, paint, section, wrap } from './text.ts';

const styles = { danger: 'red', caution: 'yellow', note: 'dim' } as const;

/** The reason stands beside a danger, and beside everything where the working is asked for. */
const sayIt =
  (withReasons: boolean) =>
  ({ severity, text, reason, standing }: Caution): string =>
    [
      severity === 'danger' ? `Danger: ${text}` : text,
      ...(withReasons || severity === 'danger' ? [reason] : []),
      ...(standing === 'from memory' ? ['(from memory)'] : []),
    ].join(' ');

/** A danger that this very question triggers stands above the answer. */
export const leadingLines = (cautions: readonly Caution[], look: Look): readonly string[] =>
  cautions
    .filter(({ leads }) => leads)
    .flatMap((caution) => wrap(sayIt(true)(caution), look.width).map((line) => paint(['bold', 'red'], line, look)));

export function cautionLines(cautions: readonly Caution[], look: Look, withReasons = false): readonly string[] {
  const rest = cautions.filter(({ leads }) => !leads);
  if (rest.length === 0) return [];
  return section('What can hurt', rest.map(sayIt(withReasons)), look, (at) => styles[rest[at]?.severity ?? 'note']);
}
