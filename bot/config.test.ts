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
