/** What decides which stages, lines and parts a build has. Closed lists: every `When` is checked against them. */
export const traitValues = {
  fuel: ['gas', 'charcoal', 'oil'],
  lining: ['rammed', 'cast'],
  /** Behind the lining. */
  fill: ['loose', 'blanket', 'none'],
  vessel: ['open', 'cylinder'],
  zinc: ['yes', 'no'],
  forms: ['mesh', 'card'],
} as const;

export type TraitName = keyof typeof traitValues;
export type Traits = { readonly [Name in TraitName]: (typeof traitValues)[Name][number] };

/** All parts given must hold, each by one of its values. */
export type When = { readonly [Name in TraitName]?: readonly Traits[Name][] };

export const applies = (when: When | undefined, traits: Traits): boolean =>
  Object.entries(when ?? {}).every(([name, values]) =>
    (values as readonly string[]).includes(traits[name as TraitName]),
  );

/** Every combination there can be: what holds for all of them holds for any build. */
export function everyTraits(): readonly Traits[] {
  return Object.entries(traitValues).reduce<readonly Record<string, string>[]>(
    (all, [name, values]) => all.flatMap((one) => values.map((value) => ({ ...one, [name]: value }))),
    [{}],
  ) as unknown as readonly Traits[];
}
