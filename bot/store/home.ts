import type { Db } from './schema.ts';

/** Where the tables live, and the little in which the two homes differ. */
export interface Home {
  readonly kind: 'sqlite' | 'postgres';
  readonly db: Db;
  /** Run first in the migration's transaction. */
  readonly lockForMigration: readonly string[];
}
