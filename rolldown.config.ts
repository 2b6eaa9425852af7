import { defineConfig } from 'rolldown';

export default defineConfig({
  input: { ask: 'bot/ask.ts', main: 'bot/main.ts', work: 'bot/work/worker.ts' },
  // Native code: it stays in node_modules, as the fonts do.
  external: ['@resvg/resvg-js'],
  platform: 'node',
  output: { dir: 'dist', format: 'esm', minify: true, cleanDir: true },
});
