import { enableCompileCache } from 'node:module';
import { leaveQuietly, stop } from './stop.ts';

// Before the rest is loaded, so that the rest is cached.
enableCompileCache();
leaveQuietly(process.stdout);

try {
  const { readConfig } = await import('./config.ts');
  const config = readConfig(process.env);
  const { discord } = config;
  if (discord) {
    const { openDiscord } = await import('./discord.ts');
    const running = await openDiscord({ ...config, discord });
    const leave = () => void running.stop().catch(stop);
    for (const signal of ['SIGTERM', 'SIGINT'] as const) process.once(signal, leave);
  } else {
    const { openTerminal } = await import('./terminal.ts');
    await openTerminal();
  }
} catch (error) {
  stop(error);
}
