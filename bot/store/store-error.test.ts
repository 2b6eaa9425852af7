import { expect, test } from 'vitest';
import { StoreError, type StoreTrouble, storeErrorOf } from './store-error.ts';

const withCode = (code: string) => Object.assign(new Error('x'), { code });
const withResult = (errcode: number) => Object.assign(new Error('x'), { code: 'ERR_SQLITE_ERROR', errcode });

/** SQLSTATEs: PostgreSQL's manual, appendix A. Result codes: sqlite.org/rescode.html. */
const cases: readonly (readonly [string, unknown, StoreTrouble])[] = [
  ['disk_full', withCode('53100'), 'full'],
  ['lock_not_available', withCode('55P03'), 'locked'],
  ['query_canceled', withCode('57014'), 'locked'],
  ['admin_shutdown', withCode('57P01'), 'gone'],
  ['cannot_connect_now', withCode('57P03'), 'gone'],
  ['connection_failure', withCode('08006'), 'gone'],
  ['too_many_connections', withCode('53300'), 'gone'],
  ['invalid_password', withCode('28P01'), 'denied'],
  ['invalid_catalog_name', withCode('3D000'), 'denied'],
  ['read_only_sql_transaction', withCode('25006'), 'denied'],
  ['data_corrupted', withCode('XX001'), 'damaged'],
  ['unique_violation', withCode('23505'), 'fault'],
  ['undefined_table', withCode('42P01'), 'fault'],
  ['host not found', withCode('ENOTFOUND'), 'gone'],
  ['read-only disk', withCode('EROFS'), 'denied'],
  ['connection lost without a code', new Error('Connection terminated unexpectedly'), 'gone'],
  ['no connection in time', new Error('timeout exceeded when trying to connect'), 'gone'],
  ['SQLITE_BUSY', withResult(5), 'locked'],
  ['SQLITE_BUSY_SNAPSHOT', withResult(517), 'locked'],
  ['SQLITE_FULL', withResult(13), 'full'],
  ['SQLITE_IOERR_WRITE', withResult(778), 'gone'],
  ['SQLITE_CORRUPT', withResult(11), 'damaged'],
  ['SQLITE_NOTADB', withResult(26), 'damaged'],
  ['SQLITE_READONLY_DBMOVED', withResult(1032), 'denied'],
  ['SQLITE_CONSTRAINT', withResult(19), 'fault'],
  ['not even an error', 'x', 'fault'],
];

test.each(cases)('%s', (_, cause, trouble) => {
  const error = storeErrorOf(cause);
  expect(error).toMatchObject({ name: 'StoreError', code: trouble, cause });
  expect(error.message).toMatch(/^[^:]+: .+/);
});

test('one that is told already stays as it is', () => {
  const error = new StoreError({ code: 'newer', what: 'a', remedy: 'b' });
  expect(storeErrorOf(error)).toBe(error);
});
