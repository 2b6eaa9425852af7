import { expect, test } from 'vitest';
import { ConfigError, readConfig } from './config.ts';

test('nothing needs to be set', () => {
  expect(readConfig({})).toEqual({ log: 'warn', color: true });
});

test('an empty NO_COLOR is not set, any other switches colour off', () => {
  expect(readConfig({ NO_COLOR: '' }).color).toBe(true);
  expect(readConfig({ NO_COLOR: '0' }).color).toBe(false);
});

test('every fault is named at once', () => {
  const read = () => readConfig({ TEEMER_LOG: 'loud', TEEMER_WIDTH: 'wide' });
  expect(read).toThrow(ConfigError);
  expect(read).toThrow(/TEEMER_LOG[\s\S]*TEEMER_WIDTH/);
});

test('a folder or a database to remember in', () => {
  const databaseUrl = 'postgres://teemer:secret@db/teemer';
  expect(readConfig({ TEEMER_DATA: '/var/lib/teemer', DATABASE_URL: databaseUrl })).toMatchObject({
    data: '/var/lib/teemer',
    databaseUrl,
  });
  expect(readConfig({ TEEMER_DATA: '', DATABASE_URL: '' })).toEqual(readConfig({}));
});

test('a database of another kind is refused, and its password is not said', () => {
  const read = () => readConfig({ DATABASE_URL: 'mysql://teemer:secret@db/teemer' });
  expect(read).toThrow(/DATABASE_URL: begins with postgres/);
  expect(read).not.toThrow(/secret/);
});
