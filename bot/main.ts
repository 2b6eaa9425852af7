import { enableCompileCache } from 'node:module';
import type { Platform } from './serve.ts';
import { leaveQuietly, stop } from './stop.ts';

// Before the rest is loaded, so that the rest is cached.
enableCompileCache();
leaveQuietly(process.stdout);

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
    const running = await serve(config, platforms);
    const leave = async () => {
      await running.stop().catch(stop);
      // Timers of a platform's library would hold the process for hours.
      process.exit();
    };
    for (const signal of ['SIGTERM', 'SIGINT'] as const) process.once(signal, leave);
  } else {
    const { openTerminal } = await import('./terminal.ts');
    await openTerminal();
  }
} catch (error) {
  stop(error);
  // Whatever was connected before would hold the process.
  if (serving) process.exit();
}
