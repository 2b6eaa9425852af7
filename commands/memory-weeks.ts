import type { Ask } from './command.ts';
import type { Key } from './memory.ts';

/** A word at its time: what it says, and what must hold before anybody does it. Plain data, it outlives the program. */
export interface Reminder {
  readonly id: string;
  readonly asker: string;
  readonly place: string;
  readonly dueAt: Date;
  /** IANA name of the asker's zone when it was set. */
  readonly zone: string;
  /** What to do, in one sentence. */
  readonly what: string;
  /** What must be true before, each in one sentence. */
  readonly holds: readonly string[];
  /** Hazard facts whose cautions go with it, see `core/hazard`. */
  readonly facts: readonly string[];
  /** A question for then, ready to send. */
  readonly next?: string;
  /** Reminders of one plan are replaced together. */
  readonly plan?: string;
}

/** Given an id, it is added once: the same once more changes nothing. */
export type Added<Kept extends { readonly id: string }> = Omit<Kept, 'id'> & Partial<Pick<Kept, 'id'>>;

export type NewReminder = Added<Omit<Reminder, 'asker'>>;

export interface Tick {
  readonly item: string;
  /** Empty where that person has been forgotten. */
  readonly by: string;
  readonly at: Date;
}

/** A build's checklist in a place, ticked by whoever is there. */
export interface Checklist {
  readonly id: string;
  readonly place: string;
  readonly name: string;
  /** Whose build it was made of. */
  readonly owner: string;
  readonly ask: Pick<Ask, 'command' | 'options'>;
  readonly startedAt: Date;
  /** First ticked first. */
  readonly ticks: readonly Tick[];
}

/** What was done or measured on one build. */
export interface LogEntry {
  readonly id: string;
  readonly build: string;
  /** `burn`, `drying` … : the command that writes it knows. */
  readonly kind: string;
  readonly at: Date;
  /** SI, the unit in the key. */
  readonly data: Readonly<Record<string, number | string>>;
}

/** What a build of several weeks needs remembered. Names are matched without regard to case. */
export interface WeeksMemory {
  /** IANA name. */
  zone(asker: string): Promise<string | undefined>;
  setZone(asker: string, zone: string | undefined): Promise<void>;

  /** The dialogue that was begun and not finished, one a person and place. */
  draft(key: Key): Promise<Ask | undefined>;
  keepDraft(key: Key, ask: Ask | undefined): Promise<void>;

  /** All or none of them; those still waiting of the same `plan` go in the same moment. */
  setReminders(asker: string, reminders: readonly NewReminder[], plan?: string): Promise<readonly Reminder[]>;
  /** Those that wait, soonest first. */
  reminders(asker: string): Promise<readonly Reminder[]>;
  /** How many were called off; without `which`, all. */
  dropReminders(asker: string, which?: { readonly id: string } | { readonly plan: string }): Promise<number>;

  /** The one of that name in the place as it is, its question renewed; else a new one. */
  openChecklist(key: Key, list: Pick<Checklist, 'name' | 'ask'>, now: Date): Promise<Checklist>;
  /** Of that name; without one the newest of the place. */
  checklist(place: string, name?: string): Promise<Checklist | undefined>;
  /** Newest first. */
  checklists(place: string): Promise<readonly Checklist[]>;
  /** False where it was ticked before, or there is no such list. */
  tick(id: string, item: string, given: { readonly by: string; readonly now: Date }): Promise<boolean>;
  untick(id: string, item: string): Promise<boolean>;
  dropChecklist(id: string): Promise<boolean>;

  addEntry(asker: string, entry: Added<LogEntry>): Promise<LogEntry>;
  /** Oldest first; without a name those of all builds. */
  entries(asker: string, build?: string): Promise<readonly LogEntry[]>;
  dropEntry(asker: string, id: string): Promise<boolean>;
}

/** A person's part of it. */
export interface KeptWeeks {
  readonly zone?: string;
  readonly drafts: readonly (Pick<Ask, 'command' | 'options'> & { readonly place: string })[];
  readonly reminders: readonly Reminder[];
  readonly checklists: readonly Checklist[];
  readonly entries: readonly LogEntry[];
}
