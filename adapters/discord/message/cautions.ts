import type { Caution, Severity } from '../../../core/hazard/caution.ts';
import { escapedTo } from '../escape.ts';
import { limits } from '../limits.ts';
import { fieldsOf, listed } from './chunks.ts';

/** Which cautions say why: where everything does not fit, their reasons go before any of them does. */
export type Reasons = 'all' | 'dangers' | 'leads' | 'none';

/** By the gravest; without any, the colour of warm clay. */
export const colourOf = (cautions: readonly Caution[]): number =>
  colours[(['danger', 'caution', 'note'] as const).find((one) => cautions.some((c) => c.severity === one)) ?? 'none'];

export const colours: Readonly<Record<Severity | 'none', number>> = {
  danger: 0xb3261e,
  caution: 0xc77700,
  note: 0x5f6b76,
  none: 0x8a5a3c,
};

/** What this very question triggers stands first, then by weight as the rules have it. */
export function cautionLines(cautions: readonly Caution[], reasons: Reasons): readonly string[] {
  const ordered = [...cautions.filter(({ leads }) => leads), ...cautions.filter(({ leads }) => !leads)];
  return ordered.map((caution) => lineOf(caution, reasons));
}

export const whatCanHurt = 'What can hurt';
export const cautionFields = (cautions: readonly Caution[], reasons: Reasons) =>
  fieldsOf(whatCanHurt, cautionLines(cautions, reasons));

function lineOf({ severity, text, reason, standing, leads }: Caution, reasons: Reasons): string {
  const why = reasons === 'all' || (reasons === 'dangers' && severity === 'danger') || (reasons === 'leads' && leads);
  const said = [text, ...(why ? [reason] : []), ...(standing === 'from memory' ? ['(from memory)'] : [])].join(' ');
  const before = listed(severity === 'danger' ? '**Danger:** ' : '');
  return `${before}${escapedTo(said, limits.fieldValue - before.length)}`;
}
