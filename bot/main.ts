import { enableCompileCache } from 'node:module';
import { leaveQuietly, stop } from './stop.ts';

// Before the rest is loaded, so that the rest is cached.
enableCompileCache();
leaveQuietly(process.stdout);

try {
  const { readConfig } = await import('./config.ts');
  const config = readConfig(process.env);
  const { discord, matrix } = config;
  const running: { stop(): Promise<void> }[] = [];
  if (discord) running.push(await (await import('./discord.ts')).openDiscord({ ...config, discord }));
  if (matrix) running.push(await (await import('./matrix.ts')).openMatrix({ ...config, matrix }));
  if (running.length === 0) {
    const { openTerminal } = await import('./terminal.ts');
    await openTerminal();
  }
  const leave = async () => {
    await Promise.all(running.map((one) => one.stop())).catch(stop);
    // Timers of a platform's library would hold the process for hours.
    process.exit();
  };
  if (running.length > 0) for (const signal of ['SIGTERM', 'SIGINT'] as const) process.once(signal, leave);
} catch (error) {
  stop(error);
  // What was connected before the fault, or half connected, would hold the process.
  if (process.env.MATRIX_HOMESERVER) process.exit();
}
