import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { pathToFileURL } from 'node:url';

/** Debian's Chromium, if it is on this machine. */
export function findChromium(): string | undefined {
  return (process.env.PATH ?? '')
    .split(delimiter)
    .map((folder) => join(folder, 'chromium'))
    .find((file) => existsSync(file));
}

/**
 * Photographs the whole of a page by headless Chromium; an error where there is none.
 * As a program: `node test/peers/discord/shoot.ts page.html picture.png`.
 */
export function shoot(html: string, picture: string, width_px = 700): void {
  const chromium = findChromium();
  if (chromium === undefined) throw new Error('There is no chromium on this machine.');
  const folder = mkdtempSync(join(tmpdir(), 'teemer-page-'));
  const page = join(folder, 'page.html');
  const run = (...flags: readonly string[]) => {
    const always = ['--headless', '--no-sandbox', '--hide-scrollbars', '--disable-lcd-text'];
    const ran = spawnSync(chromium, [...always, ...flags, pathToFileURL(page).href], { encoding: 'utf8' });
    if (ran.status !== 0) throw new Error(`Chromium ended with ${ran.status}: ${ran.stderr}`);
    return ran.stdout;
  };
  try {
    // The window must be as high as the page before the picture is taken, so the page is asked first.
    const ask = '<script>document.documentElement.dataset.height = document.documentElement.scrollHeight</script>';
    writeFileSync(page, html.replace('</main>', `</main>${ask}`));
    const asked = run('--dump-dom', `--window-size=${width_px},100`);
    const height_px = Number(/data-height="(\d+)"/.exec(asked)?.[1] ?? 1000);
    writeFileSync(page, html);
    run(`--window-size=${width_px},${height_px}`, `--screenshot=${picture}`);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

if (import.meta.main) {
  const [page, picture] = process.argv.slice(2);
  if (page === undefined || picture === undefined) throw new Error('Give a page and where its picture goes.');
  shoot(readFileSync(page, 'utf8'), picture);
}
