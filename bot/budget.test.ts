import { expect, test } from 'vitest';
import { createBudget } from './budget.ts';

const at = (seconds: number) => new Date(1_000_000 + seconds * 1000);
const rates = { person: { burst: 3, per_minute: 6 }, guild: { burst: 5, per_minute: 60 } };

test('as many as the burst at once, then one every ten seconds', () => {
  const { take } = createBudget(rates);
  const waits = [0, 0, 0, 0].map(() => take({ asker: 'ann' }, at(0)).wait_s);
  expect(waits).toEqual([0, 0, 0, 10]);
  expect(take({ asker: 'ann' }, at(9)).wait_s).toBeCloseTo(1);
  expect(take({ asker: 'ann' }, at(10)).wait_s).toBe(0);
  expect(take({ asker: 'ann' }, at(10)).wait_s).toBeCloseTo(10);
});

test('one who asks too much leaves others alone, until the guild has had enough', () => {
  const { take } = createBudget(rates);
  for (let time = 0; time < 8; time++) take({ asker: 'ann', guild: 'club' }, at(0));
  expect(take({ asker: 'bob', guild: 'club' }, at(0)).wait_s).toBe(0);
  expect(take({ asker: 'bob', guild: 'club' }, at(0)).wait_s).toBe(0);
  expect(take({ asker: 'bob', guild: 'club' }, at(0)).wait_s).toBeCloseTo(1);
  expect(take({ asker: 'bob', guild: 'other' }, at(0)).wait_s).toBe(0);
});

test('a clock set back gives nothing', () => {
  const { take } = createBudget(rates);
  for (let time = 0; time < 3; time++) take({ asker: 'ann' }, at(100));
  expect(take({ asker: 'ann' }, at(0)).wait_s).toBe(10);
});
