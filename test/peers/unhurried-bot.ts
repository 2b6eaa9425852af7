import { setTimeout as pause } from 'node:timers/promises';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { readConfig } from '../../bot/config.ts';
import { openMatrix } from '../../bot/matrix.ts';

/**
 * The program as `bot/main.ts` starts it on Matrix, but with no limit to how fast anybody may ask. On `SIGUSR2` it says
 * what it holds in memory, garbage apart.
 */
const config = readConfig(process.env);
if (!config.matrix) throw new Error('MATRIX_HOMESERVER is not set');
setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;
process.on('SIGUSR2', () => {
  collect();
  process.stderr.write(`holds ${JSON.stringify(process.memoryUsage())}\n`);
});

const budget = { take: () => ({ wait_s: 0 }) };
const opened = openMatrix({ ...config, matrix: config.matrix }, { budget });
// Before it says that it is connected: whoever waits for that may end it at once.
process.once('SIGTERM', async () => {
  await (await Promise.race([opened, pause(1000)]))?.stop();
  process.exit();
});
await opened;
