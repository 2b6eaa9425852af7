import type { UnitSystem } from '../core/quantity/figure.ts';
import type { Ask } from './command.ts';
import { inProcessWeeks } from './in-process-weeks.ts';
import type { KeptWeeks, WeeksMemory } from './memory-weeks.ts';
import { sameName as same } from './same-name.ts';
import { shareCode } from './share-code.ts';

/** Who asks and where. Ids are the platform's own with its name before them: `discord:81…`, `matrix:@ann:…`, `me`. */
export interface Key {
  readonly asker: string;
  readonly place: string;
}

/** Whose a setting is. A person's own goes before their place's. */
export type Owner = { readonly asker: string } | { readonly place: string };

/** A question kept under a name, as it was read, never as message text. Each save of the same name is a revision. */
export interface Build {
  readonly name: string;
  readonly revision: number;
  readonly ask: Pick<Ask, 'command' | 'options'>;
  readonly savedAt: Date;
}

/** What someone pays for a bag, a bottle or a litre. */
export interface Price {
  /** Id of a material or a fuel. */
  readonly item: string;
  readonly amount: { readonly mass_kg: number } | { readonly volume_m3: number };
  readonly price: number;
  /** ISO 4217: `USD`, `EUR`. */
  readonly currency: string;
  readonly setAt: Date;
  readonly owner: 'asker' | 'place';
}

/** Everything that is kept of a person, in plain data, for them to read. */
export interface Kept extends KeptWeeks {
  readonly asker: string;
  readonly units?: UnitSystem;
  readonly lastAsks: readonly (Pick<Ask, 'command' | 'options'> & { readonly place: string })[];
  readonly builds: readonly Build[];
  readonly shared: readonly { readonly code: string; readonly name: string }[];
  readonly prices: readonly Omit<Price, 'owner'>[];
}

/**
 * What is remembered between questions: a port, implemented in bot/store; in process where there is no store.
 * Names of builds and items are matched without regard to case. A promise that resolves has been kept.
 */
export interface Memory extends WeeksMemory {
  /** One a person and place. */
  lastAsk(key: Key): Promise<Ask | undefined>;
  rememberAsk(ask: Ask): Promise<void>;

  /** The person's, else the place's. */
  units(key: Key): Promise<UnitSystem | undefined>;
  setUnits(owner: Owner, units: UnitSystem | undefined): Promise<void>;

  /** Given an id, a revision is added once: the same once more changes nothing. */
  saveBuild(asker: string, build: Pick<Build, 'name' | 'ask'> & { readonly id?: string }, now: Date): Promise<Build>;
  /** The newest revision, or the one asked for. */
  build(asker: string, name: string, revision?: number): Promise<Build | undefined>;
  /** Newest revisions, last saved first. */
  builds(asker: string): Promise<readonly Build[]>;
  /** Newest first. */
  revisions(asker: string, name: string): Promise<readonly Build[]>;
  /** False where there was none. */
  dropBuild(asker: string, name: string): Promise<boolean>;
  /** A short code under which anyone can copy this build as it is now; the same code for the same revision. */
  shareBuild(asker: string, name: string): Promise<string | undefined>;
  sharedBuild(code: string): Promise<Build | undefined>;

  /** The person's, then those of the place for items the person has none of. */
  prices(key: Key): Promise<readonly Price[]>;
  setPrice(owner: Owner, price: Omit<Price, 'owner' | 'setAt'>, now: Date): Promise<void>;
  dropPrice(owner: Owner, item: string): Promise<boolean>;

  kept(asker: string): Promise<Kept>;
  /** Everything of a person, shares included. */
  forget(asker: string): Promise<void>;
}

const idOf = (owner: Owner): string => JSON.stringify(owner);
const newest = (revisions: readonly Build[]): Build | undefined => revisions.at(-1);

/** Forgets at exit. */
export function inProcessMemory(): Memory {
  const last = new Map<string, Ask>();
  const units = new Map<string, UnitSystem>();
  const builds = new Map<string, Map<string, Build[]>>();
  const buildIds = new WeakMap<Build, string>();
  const shares = new Map<string, { readonly asker: string; readonly build: Build }>();
  const prices = new Map<string, Map<string, Omit<Price, 'owner'>>>();
  const { keptWeeks, forgetWeeks, ...weeks } = inProcessWeeks();
  const keyOf = ({ asker, place }: Key) => JSON.stringify([asker, place]);
  const revisionsOf = (asker: string, name: string) => builds.get(asker)?.get(same(name)) ?? [];
  const pricesOf = (owner: Owner) => [...(prices.get(idOf(owner))?.values() ?? [])];
  const newestOf = (asker: string) =>
    [...(builds.get(asker)?.values() ?? [])]
      .flatMap((all) => newest(all) ?? [])
      .toSorted((a, b) => b.savedAt.getTime() - a.savedAt.getTime());
  const sharesOf = (asker: string) => [...shares].filter(([, one]) => one.asker === asker);

  return {
    ...weeks,

    lastAsk: async (key) => last.get(keyOf(key)),
    rememberAsk: async (ask) => void last.set(keyOf(ask), ask),

    units: async ({ asker, place }) => units.get(idOf({ asker })) ?? units.get(idOf({ place })),
    setUnits: async (owner, system) =>
      void (system === undefined ? units.delete(idOf(owner)) : units.set(idOf(owner), system)),

    async saveBuild(asker, { id, name, ask }, savedAt) {
      const own = builds.get(asker) ?? new Map<string, Build[]>();
      const before = own.get(same(name)) ?? [];
      const known = [...own.values()].flat().find((one) => id !== undefined && buildIds.get(one) === id);
      if (known) return known;
      const { command, options } = ask;
      const build = { name, ask: { command, options }, revision: (newest(before)?.revision ?? 0) + 1, savedAt };
      own.set(same(name), [...before, build]);
      builds.set(asker, own);
      if (id !== undefined) buildIds.set(build, id);
      return build;
    },
    build: async (asker, name, revision) =>
      revision === undefined
        ? newest(revisionsOf(asker, name))
        : revisionsOf(asker, name).find((one) => one.revision === revision),
    builds: async (asker) => newestOf(asker),
    revisions: async (asker, name) => revisionsOf(asker, name).toReversed(),
    dropBuild: async (asker, name) => builds.get(asker)?.delete(same(name)) ?? false,
    async shareBuild(asker, name) {
      const build = newest(revisionsOf(asker, name));
      if (!build) return undefined;
      const known = sharesOf(asker).find(([, one]) => one.build === build)?.[0];
      const code = known ?? shareCode();
      shares.set(code, { asker, build });
      return code;
    },
    sharedBuild: async (code) => shares.get(code.trim().toUpperCase())?.build,

    async prices({ asker, place }) {
      const own = pricesOf({ asker }).map((one): Price => ({ ...one, owner: 'asker' }));
      const placed = pricesOf({ place }).map((one): Price => ({ ...one, owner: 'place' }));
      return [...own, ...placed.filter(({ item }) => !own.some((mine) => same(mine.item) === same(item)))];
    },
    async setPrice(owner, price, setAt) {
      const own = prices.get(idOf(owner)) ?? new Map<string, Omit<Price, 'owner'>>();
      own.set(same(price.item), { ...price, setAt });
      prices.set(idOf(owner), own);
    },
    dropPrice: async (owner, item) => prices.get(idOf(owner))?.delete(same(item)) ?? false,

    async kept(asker) {
      const system = units.get(idOf({ asker }));
      return {
        asker,
        ...(system === undefined ? {} : { units: system }),
        lastAsks: [...last.values()]
          .filter((ask) => ask.asker === asker)
          .map(({ command, options, place }) => ({ command, options, place })),
        builds: [...(builds.get(asker)?.values() ?? [])].flat(),
        shared: sharesOf(asker).map(([code, { build }]) => ({ code, name: build.name })),
        prices: pricesOf({ asker }),
        ...keptWeeks(asker),
      };
    },
    async forget(asker) {
      for (const [key, ask] of last) if (ask.asker === asker) last.delete(key);
      for (const [code] of sharesOf(asker)) shares.delete(code);
      units.delete(idOf({ asker }));
      prices.delete(idOf({ asker }));
      builds.delete(asker);
      forgetWeeks(asker);
    },
  };
}
