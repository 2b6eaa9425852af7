import type { Config } from './config.ts';
import { type Health, serveHealth } from './health.ts';
import { openLog } from './log.ts';
import { createMetrics, type Metrics } from './metrics.ts';

/** A chat bot that has been opened. */
export interface Running {
  /** What keeps it from answering as it should; empty where nothing does. */
  missing(): readonly string[];
  stop(): Promise<void>;
}

export interface Platform {
  /** As people call it. */
  readonly name: string;
  /** Resolves once it is connected; rejects where it never can be. */
  open(metrics: Metrics): Promise<Running>;
}

/**
 * Every platform that is configured, side by side, with one place to ask for health and metrics. That is there before
 * any of them is connected, and says which are not. Where one cannot be opened the others are stopped, and it rejects.
 * A failure that nobody waited for is logged, and everybody else is answered on.
 */
export async function serve(
  { port, log: level }: Pick<Config, 'port' | 'log'>,
  platforms: readonly Platform[],
): Promise<{ readonly health?: Health; stop(): Promise<void> }> {
  const log = await openLog({ log: level });
  const stray = (err: unknown) => log.error({ err }, 'something failed that nobody waited for');
  const metrics = createMetrics();
  const running = new Map<Platform, Running>();
  const missing = () =>
    platforms.flatMap((platform) => running.get(platform)?.missing() ?? [`a connection to ${platform.name}`]);
  const health = port === undefined ? undefined : await serveHealth({ port, metrics, missing });
  process.on('unhandledRejection', stray);
  let stopped = false;
  const stop = async () => {
    stopped = true;
    await Promise.all([...running.values()].map((one) => one.stop()));
    await health?.close();
    process.off('unhandledRejection', stray);
  };
  const opened = async (platform: Platform) => {
    const one = await platform.open(metrics);
    if (stopped) await one.stop();
    else running.set(platform, one);
  };
  try {
    await Promise.all(platforms.map(opened));
  } catch (error) {
    await stop();
    throw error;
  }
  return { stop, ...(health ? { health } : {}) };
}
