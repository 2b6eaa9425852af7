import type { Owner } from '../../commands/memory.ts';
import type { OwnerColumns } from './schema.ts';

/** Text that every database keeps as it is: PostgreSQL refuses NUL, and half a surrogate pair is no UTF-8. */
export const plain = (text: string): string => text.toWellFormed().replaceAll('\0', '\ufffd');

/** Names are matched without regard to case, spaces around them or how their accents are composed. */
export const nameKey = (name: string): string => plain(name.normalize('NFC').trim().toLowerCase());

export const ownerColumns = (owner: Owner): OwnerColumns =>
  'asker' in owner
    ? { owner_kind: 'asker', owner: plain(owner.asker) }
    : { owner_kind: 'place', owner: plain(owner.place) };
