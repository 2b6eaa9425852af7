import { enableCompileCache } from 'node:module';
import { leaveQuietly, stop } from './stop.ts';

// Before the rest is loaded, so that the rest is cached.
enableCompileCache();
leaveQuietly(process.stdout);

try {
  const { openTerminal } = await import('./terminal.ts');
  await openTerminal();
} catch (error) {
  stop(error);
}
