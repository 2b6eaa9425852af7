import { enableCompileCache } from 'node:module';
import { setTimeout as pause } from 'node:timers/promises';
import type { Platform } from './serve.ts';
import { leaveQuietly, stop } from './stop.ts';

// Before the rest is loaded, so that the rest is cached.
enableCompileCache();
leaveQuietly(process.stdout);

/** How long one that is just being started is waited for before it is told to leave. */
const ready_ms = 1000;

let serving = false;
try {
  const { readConfig } = await import('./config.ts');
  const config = readConfig(process.env);
  const { discord, matrix } = config;
  const platforms: Platform[] = [];
  if (discord) {
    const { openDiscord } = await import('./discord.ts');
    platforms.push({ name: 'Discord', open: (metrics) => openDiscord({ ...config, discord }, { metrics }) });
  }
  if (matrix) {
    const { openMatrix } = await import('./matrix.ts');
    platforms.push({ name: 'Matrix', open: (metrics) => openMatrix({ ...config, matrix }, { metrics }) });
  }
  serving = platforms.length > 0;
  if (serving) {
    const { serve } = await import('./serve.ts');
    const started = serve(config, platforms);
    const leave = async () => {
      // Told to go the moment it is there it still leaves in order; while it waits for its turn there is nothing to end.
      const running = await Promise.race([started, pause(ready_ms)]).catch(() => undefined);
      await running?.stop().catch(stop);
      // Timers of a platform's library would hold the process for hours.
      process.exit();
    };
    for (const signal of ['SIGTERM', 'SIGINT'] as const) process.once(signal, leave);
    await started;
  } else {
    const { openTerminal } = await import('./terminal.ts');
    await openTerminal();
  }
} catch (error) {
  stop(error);
  // Whatever was connected before would hold the process.
  if (serving) process.exit();
}
