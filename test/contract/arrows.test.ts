import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

/** The import rule of the house, held against a tree of one-line files that break it or keep it. */
const root = fileURLToPath(new URL('../..', import.meta.url));
const biome = join(root, 'node_modules/@biomejs/biome/bin/biome');

const refused = {
  'core/up.ts': '../commands/card.ts',
  'core/mix/up.ts': '../../commands/card.ts',
  'core/files.ts': 'node:fs',
  'core/log.ts': 'pino',
  'core/heat/adapter.ts': '../../adapters/terminal/text.ts',
  'core/wired.ts': '../bot/log.ts',
  'commands/mix/wired.ts': '../../bot/log.ts',
  'commands/adapter.ts': '../adapters/terminal/text.ts',
  'commands/files.ts': 'node:fs',
  'commands/units.ts': 'mathjs',
  'adapters/terminal/wired.ts': '../../bot/log.ts',
  'adapters/terminal/units.ts': 'mathjs',
};

const permitted = {
  'core/mix/beside.ts': '../quantity/figure.ts',
  'core/sources/schema.ts': 'zod',
  'commands/mix/down.ts': '../../core/step.ts',
  'adapters/terminal/down.ts': '../../commands/card.ts',
  'adapters/terminal/style.ts': 'node:util',
  'bot/down.ts': '../adapters/terminal/text.ts',
};

let house: string;
let report: string;

beforeAll(() => {
  house = mkdtempSync(join(tmpdir(), 'arrows-'));
  for (const file of ['biome.json', '.gitignore']) copyFileSync(join(root, file), join(house, file));
  for (const [file, from] of Object.entries({ ...refused, ...permitted })) {
    mkdirSync(dirname(join(house, file)), { recursive: true });
    writeFileSync(join(house, file), `import { x } from '${from}';\n\nexport const y = x;\n`);
  }
  const run = spawnSync(process.execPath, [biome, 'lint', '--reporter=github', '--max-diagnostics=none', '.'], {
    cwd: house,
    encoding: 'utf8',
  });
  report = run.stdout + run.stderr;
});

afterAll(() => rmSync(house, { recursive: true, force: true }));

const complaints = (file: string) =>
  report.split('\n').filter((line) => line.includes('noRestrictedImports') && line.includes(`/${file},`));

describe('arrows point adapters → commands → core', () => {
  test.each(Object.entries(refused))('%s may not import %s', (file) => {
    expect(complaints(file)).toHaveLength(1);
  });

  test.each(Object.entries(permitted))('%s may import %s', (file) => {
    expect(complaints(file)).toEqual([]);
  });
});
