import type { Generated, Kysely } from 'kysely';
import type { UnitSystem } from '../../core/quantity/figure.ts';

/** The tables of the newest schema. Columns ending in `_at` and `until` are milliseconds since 1970, UTC; options and bodies are JSON. */
export interface Tables {
  readonly last_asks: {
    readonly asker: string;
    readonly place: string;
    readonly command: string;
    readonly options: string;
  };
  readonly unit_choices: OwnerColumns & { readonly units: UnitSystem };
  readonly builds: BuildColumns & {
    /** Never used twice, so that a share knows the build it was made of. */
    readonly id: string;
    readonly name_key: string;
  };
  readonly shares: BuildColumns & { readonly code: string; readonly build_id: string };
  readonly prices: OwnerColumns & {
    readonly item_key: string;
    readonly item: string;
    readonly mass_kg: number | null;
    readonly volume_m3: number | null;
    readonly price: number;
    readonly currency: string;
    readonly set_at: number;
  };
  readonly handled_events: { readonly id: string; readonly expires_at: number };
  readonly outbox: {
    readonly id: Generated<number>;
    readonly key: string;
    readonly channel: string;
    readonly asker: string | null;
    readonly body: string;
    readonly due_at: number;
    readonly attempts: number;
    readonly leased_until: number | null;
    readonly sent_at: number | null;
    readonly given_up_at: number | null;
    readonly fault: string | null;
  };
  readonly component_states: {
    readonly id: string;
    readonly asker: string | null;
    readonly value: string;
    readonly expires_at: number;
  };
  readonly zones: { readonly asker: string; readonly zone: string };
  readonly drafts: Tables['last_asks'];
  readonly checklists: {
    readonly id: string;
    readonly place: string;
    readonly name_key: string;
    readonly name: string;
    readonly asker: string;
    readonly command: string;
    readonly options: string;
    readonly started_at: number;
  };
  /** The asker is empty where that person has been forgotten. */
  readonly ticks: { readonly list: string; readonly item: string; readonly asker: string; readonly ticked_at: number };
  readonly log_entries: {
    readonly id: string;
    readonly asker: string;
    readonly build_key: string;
    readonly build: string;
    readonly kind: string;
    readonly done_at: number;
    readonly data: string;
  };
  readonly leases: { readonly name: string; readonly holder: string; readonly until: number };
}

/** Whose a setting is: a person's or a place's. */
export interface OwnerColumns {
  readonly owner_kind: 'asker' | 'place';
  readonly owner: string;
}

interface BuildColumns {
  readonly asker: string;
  readonly name: string;
  readonly revision: number;
  readonly command: string;
  readonly options: string;
  readonly saved_at: number;
}

export type Db = Kysely<Tables>;
