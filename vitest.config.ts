import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: [
      'core/**/*.test.ts',
      'commands/**/*.test.ts',
      'adapters/**/*.test.ts',
      'bot/**/*.test.ts',
      'test/**/*.test.ts',
    ],
    benchmark: { include: ['test/bench/**/*.bench.ts'] },
    // Both of two cores: the default leaves one of them idle.
    maxWorkers: 2,
    globalSetup: ['test/published/table.ts'],
    testTimeout: 30_000,
  },
});
