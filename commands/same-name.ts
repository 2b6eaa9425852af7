/** Names are matched without regard to case, spaces around them or how their accents are composed. */
export const sameName = (name: string): string => name.normalize('NFC').trim().toLowerCase();
