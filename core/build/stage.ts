import type { Fact } from '../hazard/facts.ts';
import type { Spread } from '../materials/spread.ts';
import type { SourceId, Standing } from '../sources/source.ts';
import { applies, type Traits, type When } from './traits.ts';

/** Words that always stand there, or only for builds of a kind. */
export type Line = string | { readonly when: When; readonly text: string };

/** One thing to tick. Ids of stages and items are one namespace: either can be held to. */
export interface Item {
  readonly id: string;
  readonly text: string;
  readonly when?: When;
  /** Beside those of its stage. */
  readonly holds?: readonly string[];
}

/** One stage of a build: pure data. Its items rest on its holds; it is done when all of them are. */
export interface Stage {
  readonly id: string;
  readonly name: string;
  readonly when?: When;
  readonly do: readonly Line[];
  /** What done looks like. */
  readonly done: readonly Line[];
  readonly wrong: readonly Line[];
  /** From beginning to end, waiting included. */
  readonly time_s: Spread;
  /** Stages and items that must be done before anything here can be ticked. */
  readonly holds: readonly string[];
  readonly items: readonly Item[];
  readonly facts: readonly (Fact | { readonly when: When; readonly fact: Fact })[];
  /** Of what is being built: its vessel, lining, fill and metal bring facts of their own. */
  readonly takes?: readonly BuildPart[];
  /** A log entry of this kind counts as the whole stage. */
  readonly logged?: string;
  readonly source: SourceId;
  readonly standing: Standing;
}

export type BuildPart = 'vessel' | 'lining' | 'fill' | 'metal';

/** What a build is, as far as its stages ask: its traits, and the hazards of what it is made of. */
export interface BuildKind {
  readonly traits: Traits;
  readonly facts: Readonly<Record<BuildPart, readonly string[]>>;
}

export const words = (lines: readonly Line[], traits: Traits): string =>
  lines
    .flatMap((line) => (typeof line === 'string' ? [line] : applies(line.when, traits) ? [line.text] : []))
    .join(' ');

export const itemsOf = (stage: Stage, traits: Traits): readonly Item[] =>
  stage.items.filter(({ when }) => applies(when, traits));

/** Hazard facts of a stage in this very build. */
export const factsOf = (stage: Stage, { traits, facts }: BuildKind): readonly string[] => [
  ...new Set([
    ...stage.facts.flatMap((one) => (typeof one === 'string' ? [one] : applies(one.when, traits) ? [one.fact] : [])),
    ...(stage.takes ?? []).flatMap((part) => facts[part]),
  ]),
];
