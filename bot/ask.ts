import { enableCompileCache } from 'node:module';
import { leaveQuietly, stop } from './stop.ts';

// Before the rest is loaded, so that the rest is cached.
enableCompileCache();
leaveQuietly(process.stdout);

try {
  const { askOnce } = await import('./once.ts');
  process.exitCode = await askOnce(process.argv.slice(2));
} catch (error) {
  stop(error);
}
