import { enableCompileCache } from 'node:module';
import { leaveQuietly, stop } from './stop.ts';

// Before the rest is loaded, so that the rest is cached.
enableCompileCache();
leaveQuietly(process.stdout);

let serving = false;
try {
  const { readConfig } = await import('./config.ts');
  const config = readConfig(process.env);
  const { discord, matrix } = config;
  serving = Boolean(discord ?? matrix);
  const running: { stop(): Promise<void> }[] = [];
  if (discord) running.push(await (await import('./discord.ts')).openDiscord({ ...config, discord }));
  if (matrix) running.push(await (await import('./matrix.ts')).openMatrix({ ...config, matrix }));
  if (!serving) {
    const { openTerminal } = await import('./terminal.ts');
    await openTerminal();
  }
  const leave = async () => {
    await Promise.all(running.map((one) => one.stop())).catch(stop);
    // Timers of a platform's library would hold the process for hours.
    process.exit();
  };
  if (serving) for (const signal of ['SIGTERM', 'SIGINT'] as const) process.once(signal, leave);
} catch (error) {
  stop(error);
  // Whatever was connected before would hold the process.
  if (serving) process.exit();
}
