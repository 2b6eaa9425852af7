import type { Owner } from '../../commands/memory.ts';
import { sameName } from '../../commands/same-name.ts';
import type { OwnerColumns } from './schema.ts';

/** Text that every database keeps as it is: PostgreSQL refuses NUL, and half a surrogate pair is no UTF-8. */
export const plain = (text: string): string => text.toWellFormed().replaceAll('\0', '\ufffd');

/** As it is matched, see `sameName`. */
export const nameKey = (name: string): string => plain(sameName(name));

export const ownerColumns = (owner: Owner): OwnerColumns =>
  'asker' in owner
    ? { owner_kind: 'asker', owner: plain(owner.asker) }
    : { owner_kind: 'place', owner: plain(owner.place) };
