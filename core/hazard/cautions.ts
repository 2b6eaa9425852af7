import type { Caution, Severity, Situation } from './caution.ts';
import type { Fact } from './facts.ts';
import type { Rule } from './rule.ts';
import { rules } from './rules/rules.ts';

const rank: Readonly<Record<Severity, number>> = { danger: 0, caution: 1, note: 2 };

/** The last line of everything hot. */
export const localRules: Caution = Object.freeze({
  id: 'local-rules',
  severity: 'note',
  text: 'Local fire and gas rules, and licensed trades, come first.',
  reason: 'Burn bans, gas codes and insurers differ by place, and they know yours.',
  source: 'common-practice',
  standing: 'common practice',
  leads: false,
});

/** A number that could not be computed counts as exceeded: silence must mean safe. */
const exceeds = (value: number | undefined, limit: number) => value !== undefined && !(value <= limit);

function fires({ when }: Rule, facts: ReadonlySet<string>, numbers: Situation['numbers'] = {}): boolean {
  const holds = (fact: Fact) => facts.has(fact);
  return (
    (when.any?.some(holds) ?? true) &&
    (when.all?.every(holds) ?? true) &&
    !when.none?.some(holds) &&
    Object.entries(when.above ?? {}).every(([name, limit]) => exceeds(numbers[name], limit))
  );
}

/** Most severe first, what leads before what does not, then the order of the rules (the sort is stable). */
const byWeight = (a: Rule, b: Rule) =>
  rank[a.severity] - rank[b.severity] || Number(b.headline ?? false) - Number(a.headline ?? false);

const asCaution = ({ id, severity, text, reason, source, standing, headline = false }: Rule): Caution =>
  Object.freeze({ id, severity, text, reason, source, standing, leads: headline });

/** What can hurt in this situation: each topic once, the gravest first, and for hot work the closing line. */
export function cautionsFor(situation: Situation): readonly Caution[] {
  const facts = new Set(situation.facts);
  const fired = rules.filter((rule) => fires(rule, facts, situation.numbers));
  const byTopic = Map.groupBy(fired.toSorted(byWeight), ({ id, topic }) => topic ?? id);
  const shown = [...byTopic.values()].map(([gravest]) => asCaution(gravest!));
  const isHot = facts.has('hot-work') || fired.some(({ hotWork }) => hotWork);
  return Object.freeze(isHot ? [...shown, localRules] : shown);
}

/** The cautions of several answers that stand on one card: each once, in the order of one list. */
export function mergeCautions(lists: readonly (readonly Caution[])[]): readonly Caution[] {
  const once = [...new Map(lists.flat().map((one) => [one.id, one])).values()];
  const last = once.filter(({ id }) => id === localRules.id);
  const sorted = once
    .filter(({ id }) => id !== localRules.id)
    .toSorted((a, b) => rank[a.severity] - rank[b.severity] || Number(b.leads) - Number(a.leads));
  return Object.freeze([...sorted, ...last]);
}
