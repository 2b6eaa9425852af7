import { type ChildProcess, execFileSync, spawn, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { makeBot } from './matrix-bot.ts';
import { startSynapse } from './synapse.ts';
import { answerTo, openAsker } from './synapse-asker.ts';

/**
 * Pictures of what somebody sees in nheko, a client for the desktop: `node test/peers/matrix-shots.ts` asks the real
 * program on a homeserver of its own and writes them to test/end-to-end/pictures/matrix. It takes Debian's nheko, xvfb,
 * xdotool, imagemagick and fonts-noto-color-emoji, and its pngquant to make them small.
 */
const folder = fileURLToPath(new URL('../end-to-end/pictures/matrix/', import.meta.url));
const shots: Readonly<Record<string, readonly string[]>> = {
  mix: ['mix 1.1 cu ft'],
  wall: ['wall 1 in castable; 2.5 in perlite hot=1000 °C'],
  size: ['size can 20 gal crucible=6 in x 8 in'],
};
const display = ':77';
const window = { width: 900, height: 1800 };
/** Left of the messages, and nothing to see there. */
const roomList_px = 223;
const patience_ms = 120_000;

const names = process.argv.slice(2);
mkdirSync(folder, { recursive: true });
const home = mkdtempSync(join(tmpdir(), 'teemer-shots-'));
const synapse = await startSynapse({ openMedia: true });
const bot = await makeBot(synapse, { env: { TEEMER_DATA: join(home, 'bot') } });
const screen = spawn('Xvfb', [display, '-screen', '0', `${window.width}x${window.height}x24`], { stdio: 'ignore' });
try {
  await bot.start();
  for (const [name, lines] of Object.entries(shots)) {
    if (names.length > 0 && !names.includes(name)) continue;
    // A client of its own for each: one that finds another's keys wants to know where they are.
    const mo = await openAsker(synapse, `mo-${name}`);
    const room = await mo.room([bot.userId], { name: 'Millpond casters' });
    for (const line of lines) await mo.hear(answerTo(bot.userId, await mo.say(room, line)), patience_ms);
    // The picture comes after the words.
    await sleep(8000);
    await photograph(name, room, mo.client.getAccessToken() ?? '', mo.client.getDeviceId() ?? '', mo.userId);
    mo.leave();
  }
} finally {
  await bot.stop('SIGKILL');
  await synapse.remove();
  screen.kill();
  rmSync(home, { recursive: true, force: true });
}
process.exit();

async function photograph(name: string, room: string, token: string, device: string, user: string): Promise<void> {
  const own = join(home, name);
  mkdirSync(join(own, 'nheko'), { recursive: true });
  const settings = [
    '[General]',
    'run_without_secure_secrets_service=true',
    '',
    '[auth]',
    `access_token=${token}`,
    `device_id=${device}`,
    `home_server=${synapse.url}`,
    `user_id=${user}`,
    '',
    '[user]',
    'theme=light',
    'animate_images_on_hover=false',
    'decrypt_sidebar=true',
    '',
  ];
  writeFileSync(join(own, 'nheko', 'nheko.conf'), settings.join('\n'));
  const env = {
    ...process.env,
    DISPLAY: display,
    HOME: own,
    XDG_CONFIG_HOME: own,
    XDG_DATA_HOME: join(own, 'data'),
    XDG_CACHE_HOME: join(own, 'cache'),
    QT_QUICK_BACKEND: 'software',
    QT_SCALE_FACTOR: '1',
  };
  const client: ChildProcess = spawn('nheko', [], { env, stdio: 'ignore' });
  try {
    await sleep(Number(process.env.TEEMER_SHOT_WAIT_MS ?? 30_000));
    const x = (...typed: readonly (string | number)[]) => spawnSync('xdotool', typed.map(String), { env });
    const windows = x('search', '--name', '^nheko$').stdout.toString().trim().split('\n');
    for (const id of windows) x('windowsize', id, window.width, window.height);
    await sleep(5000);
    // It wants to set up encryption, and asks again until it may; then it shows a recovery key.
    x('mousemove', 747, 1761, 'click', 1);
    await sleep(6000);
    for (const y of [925, 935, 945, 960]) x('mousemove', 843, y, 'click', 1);
    await sleep(2000);
    // The first room of the list.
    x('mousemove', 120, 73, 'click', 1);
    await sleep(10_000);
    x('mousemove', 600, 5);
    const file = `${folder}${name}.png`;
    execFileSync('import', ['-window', 'root', '-crop', `+${roomList_px}+0`, '+repage', file], { env });
    spawnSync('pngquant', ['--force', '--ext', '.png', '--speed', '1', '--nofs', '24', file]);
    process.stdout.write(`${file} ${room}\n`);
  } finally {
    client.kill('SIGKILL');
  }
}
