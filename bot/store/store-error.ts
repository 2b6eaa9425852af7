/** What kept something from being remembered. Stable: callers and tests match on it. */
export type StoreTrouble = 'full' | 'locked' | 'gone' | 'newer' | 'damaged' | 'denied' | 'fault';

/** Says to whoever runs the program what happened and what to do. What was to be written was not acknowledged. */
export class StoreError extends Error {
  override readonly name = 'StoreError';
  readonly code: StoreTrouble;

  constructor({
    code,
    what,
    remedy,
    cause,
  }: {
    code: StoreTrouble;
    what: string;
    remedy: string;
    cause?: unknown;
  }) {
    super(`${what}: ${remedy}`, cause === undefined ? {} : { cause });
    this.code = code;
  }
}

type Said = Readonly<{ what: string; remedy: string }>;

const said: Readonly<Record<Exclude<StoreTrouble, 'newer' | 'fault'>, Said>> = {
  full: { what: 'the disk of the store is full', remedy: 'make room, then ask again; what was kept before is safe' },
  locked: {
    what: 'another process has held the store for too long',
    remedy: 'end it if it hangs, then ask again',
  },
  gone: {
    what: 'the store cannot be reached',
    remedy: 'see that its disk or its server is there; the program goes on by itself once it is back',
  },
  damaged: {
    what: 'the file of the store is damaged, or is no store',
    remedy: 'put back a copy of it, or move it away to begin anew',
  },
  denied: {
    what: 'the store may not be opened or written',
    remedy: 'see to the permissions of its folder, or to the name, password and database in DATABASE_URL',
  },
};

/** Result codes of SQLite, without their extension (sqlite.org/rescode.html). */
const bySqlite: Readonly<Record<number, keyof typeof said>> = {
  3: 'denied',
  5: 'locked',
  6: 'locked',
  8: 'denied',
  10: 'gone',
  11: 'damaged',
  13: 'full',
  14: 'gone',
  26: 'damaged',
};

/** SQLSTATE of PostgreSQL, whole or its class (its manual, appendix A), and errors of the system. */
const byCode: Readonly<Record<string, keyof typeof said>> = {
  '08': 'gone',
  '28': 'denied',
  '3D': 'denied',
  '42501': 'denied',
  '25006': 'denied',
  '53100': 'full',
  '53300': 'gone',
  '55P03': 'locked',
  '57014': 'locked',
  '57P': 'gone',
  '58': 'gone',
  XX001: 'damaged',
  XX002: 'damaged',
  EACCES: 'denied',
  EPERM: 'denied',
  EROFS: 'denied',
  EEXIST: 'denied',
  ENOTDIR: 'denied',
  ENOSPC: 'full',
  EDQUOT: 'full',
  ECONNREFUSED: 'gone',
  ECONNRESET: 'gone',
  ENOTFOUND: 'gone',
  ENOENT: 'gone',
  EAI_AGAIN: 'gone',
  EHOSTUNREACH: 'gone',
  ENETUNREACH: 'gone',
  ETIMEDOUT: 'gone',
  EPIPE: 'gone',
};

/** What a broken or slow connection is called where it has no code. */
const broken = /connection|timeout|not queryable/i;

export function storeErrorOf(error: unknown): StoreError {
  if (error instanceof StoreError) return error;
  const { errcode, code, message } = error as { errcode?: unknown; code?: unknown; message?: unknown };
  const trouble =
    typeof errcode === 'number'
      ? bySqlite[errcode & 0xff]
      : typeof code === 'string'
        ? (byCode[code] ?? byCode[code.slice(0, 3)] ?? byCode[code.slice(0, 2)])
        : broken.test(String(message))
          ? 'gone'
          : undefined;
  if (trouble) return new StoreError({ code: trouble, ...said[trouble], cause: error });
  return new StoreError({
    code: 'fault',
    what: 'the store did not do what was asked of it',
    remedy: 'this is a fault of the program; please report it',
    cause: error,
  });
}

/** The same piece, every failure of it a StoreError. */
export function reporting<Piece extends object>(piece: Piece): Piece {
  const wrapped = Object.entries(piece).map(([name, call]) => [
    name,
    async (...args: readonly unknown[]) => {
      try {
        return await call(...args);
      } catch (error) {
        throw storeErrorOf(error);
      }
    },
  ]);
  return Object.fromEntries(wrapped) as Piece;
}
