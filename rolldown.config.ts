import { cpSync } from 'node:fs';
import { defineConfig } from 'rolldown';

/** Our own fonts stand beside the bundle as they do beside the source. */
const fonts = {
  name: 'fonts',
  writeBundle: () => cpSync('adapters/picture/fonts', 'dist/fonts', { recursive: true }),
};

export default defineConfig({
  input: { ask: 'bot/ask.ts', main: 'bot/main.ts', register: 'bot/register.ts', work: 'bot/work/worker.ts' },
  // Native code and WebAssembly: they stay in node_modules, as the whole fonts do.
  external: ['@resvg/resvg-js', '@matrix-org/matrix-sdk-crypto-wasm'],
  platform: 'node',
  plugins: [fonts],
  output: { dir: 'dist', format: 'esm', minify: true, cleanDir: true },
});
