import { defineConfig } from 'rolldown';

export default defineConfig({
  input: { ask: 'bot/ask.ts', main: 'bot/main.ts' },
  platform: 'node',
  output: { dir: 'dist', format: 'esm', minify: true, cleanDir: true },
});
