import { readConfig } from '../../bot/config.ts';
import { openMatrix } from '../../bot/matrix.ts';

/** The program as `bot/main.ts` starts it on Matrix, but with no limit to how fast anybody may ask. */
const config = readConfig(process.env);
if (!config.matrix) throw new Error('MATRIX_HOMESERVER is not set');
const budget = { take: () => ({ wait_s: 0 }) };
const { stop } = await openMatrix({ ...config, matrix: config.matrix }, { budget });
process.once('SIGTERM', async () => {
  await stop();
  process.exit();
});
