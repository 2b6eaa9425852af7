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

test('a token makes it a bot; shards are all, a number, or this process’s share', () => {
  const shards = (text: string) => readConfig({ DISCORD_TOKEN: 'T', TEEMER_SHARDS: text }).discord?.shards;
  expect(readConfig({ DISCORD_TOKEN: '' }).discord).toBeUndefined();
  expect(shards('auto')).toBeUndefined();
  expect(shards('4')).toBe(4);
  expect(shards('0,1/4')).toEqual({ ids: [0, 1], of: 4 });
  expect(shards('2-3/8')).toEqual({ ids: [2, 3], of: 8 });
  for (const bad of ['0', '4/4', '3-1/8', 'many']) expect(() => shards(bad)).toThrow(/TEEMER_SHARDS/);
});

test('a port is a number a port can have', () => {
  expect(readConfig({ TEEMER_PORT: '9464' }).port).toBe(9464);
  expect(readConfig({ TEEMER_PORT: '' }).port).toBeUndefined();
  for (const bad of ['x', '70000']) expect(() => readConfig({ TEEMER_PORT: bad })).toThrow(/TEEMER_PORT/);
});

test('a homeserver makes it a Matrix bot; it needs an account there', () => {
  const homeserver = 'https://matrix.example.org';
  const account = { MATRIX_HOMESERVER: homeserver, MATRIX_USER: 'teemer', MATRIX_PASSWORD: 'P' };
  expect(readConfig(account).matrix).toEqual({
    homeserver,
    user: 'teemer',
    password: 'P',
    allow: ['*'],
    prefix: '!teemer',
  });
  const token = { MATRIX_HOMESERVER: homeserver, MATRIX_TOKEN: 'T', MATRIX_ALLOW: 'example.org, @ann:b.org,' };
  expect(readConfig({ ...token, TEEMER_PREFIX: '!t' }).matrix).toEqual({
    homeserver,
    token: 'T',
    allow: ['example.org', '@ann:b.org'],
    prefix: '!t',
  });
  expect(readConfig({ MATRIX_HOMESERVER: '' }).matrix).toBeUndefined();
  expect(() => readConfig({ MATRIX_HOMESERVER: homeserver, MATRIX_USER: 'teemer' })).toThrow(/MATRIX_PASSWORD/);
  expect(() => readConfig({ ...account, MATRIX_HOMESERVER: 'matrix.example.org' })).toThrow(/MATRIX_HOMESERVER/);
  expect(() => readConfig({ ...account, TEEMER_PREFIX: 'two words' })).toThrow(/TEEMER_PREFIX/);
});
