import { execFileSync } from 'node:child_process';
import { chownSync, cpSync, mkdirSync, mkdtempSync, readFileSync, realpathSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join, matchesGlob } from 'node:path';

/** What an engine would make of the Dockerfile: the files of its last stage, and how they are started. */
export interface Image {
  /** The last stage's own root. */
  readonly root: string;
  readonly workdir: string;
  readonly env: Readonly<Record<string, string>>;
  readonly cmd: readonly string[];
  readonly health: readonly string[];
  /** Who runs it: of the user the file names, where this process may become another. */
  readonly as: { readonly uid?: number; readonly gid?: number };
  /** The version of Node it stands on. */
  readonly node: string;
  remove(): void;
}

interface Stage {
  readonly root: string;
  readonly node: string;
  readonly env: Record<string, string>;
  workdir: string;
  cmd: readonly string[];
  health: readonly string[];
  as: Image['as'];
}

const repository = realpathSync(join(import.meta.dirname, '../..'));
/** The user `node` of the base image. */
const nodeUser = { uid: 1000, gid: 1000 };

/**
 * Takes the steps of the Dockerfile in a clean folder, without an engine: only what the file copies is there, each stage in
 * a root of its own, its absolute paths inside that root. As a program: `node test/image/build.ts` prints the root.
 */
export function buildImage(file = join(repository, 'Dockerfile')): Image {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'teemer-image-')));
  execFileSync('chmod', ['755', folder]);
  const stages = new Map<string, Stage>();
  let stage: Stage | undefined;
  for (const [word, rest] of instructions(readFileSync(file, 'utf8'))) {
    if (word === 'FROM') {
      const [, version = '', name = String(stages.size)] = /^node:(\d+\.\d+\.\d+)\S*(?: AS (\S+))?$/.exec(rest) ?? [];
      if (version === '') throw new Error(`no base image of Node in: FROM ${rest}`);
      stage = begun(join(folder, name), version);
      stages.set(name, stage);
    } else if (!stage) throw new Error(`${word} before FROM`);
    else take(stage, word, rest, stages);
  }
  if (!stage) throw new Error('no stage');
  return { ...stage, remove: () => rmSync(folder, { recursive: true, force: true }) };
}

function begun(root: string, node: string): Stage {
  const home = join(root, 'home/node');
  mkdirSync(home, { recursive: true });
  if (isRoot()) chownSync(home, nodeUser.uid, nodeUser.gid);
  return { root, node, env: {}, workdir: root, cmd: [], health: [], as: {} };
}

/** How this machine reaches a registry: an engine has the same from its host. */
const network = Object.fromEntries(
  Object.entries(process.env).filter(([name]) => /^(HOME|npm_config_.*|.*_proxy|.*_CERTS?|SSL_CERT_.*)$/i.test(name)),
);

function take(stage: Stage, word: string, rest: string, stages: ReadonlyMap<string, Stage>): void {
  switch (word) {
    case 'WORKDIR':
      stage.workdir = inside(stage, rest);
      mkdirSync(stage.workdir, { recursive: true });
      return;
    case 'ENV':
      for (const [, name = '', value = ''] of rest.matchAll(/(\w+)=(\S+)/g)) stage.env[name] = inside(stage, value);
      return;
    case 'COPY':
      copy(stage, rest, stages);
      return;
    case 'RUN':
      execFileSync('sh', ['-c', inside(stage, rest)], {
        cwd: stage.workdir,
        env: { ...network, PATH: `${dirname(process.execPath)}:${process.env.PATH}`, ...stage.env },
        stdio: ['ignore', 'ignore', 'inherit'],
        ...stage.as,
      });
      return;
    case 'USER':
      if (rest !== 'node') throw new Error(`the base image has no user ${rest}`);
      stage.as = isRoot() ? nodeUser : {};
      return;
    case 'HEALTHCHECK':
      stage.health = JSON.parse(rest.replace(/^.*?CMD /s, ''));
      return;
    case 'CMD':
      stage.cmd = JSON.parse(rest);
      return;
    case 'VOLUME':
    case 'EXPOSE':
      return;
    default:
      throw new Error(`no step is known for ${word}`);
  }
}

function copy(stage: Stage, rest: string, stages: ReadonlyMap<string, Stage>): void {
  const [, from, paths = ''] = /^(?:--from=(\S+) )?(.+)$/.exec(rest) ?? [];
  const sources = paths.split(' ');
  const to = sources.pop() ?? '.';
  const many = sources.length > 1 || to.endsWith('/');
  const source = from === undefined ? undefined : stages.get(from);
  if (from !== undefined && !source) throw new Error(`no stage ${from}`);
  for (const path of sources) {
    const here = source ? inside(source, path) : join(repository, path);
    const target = join(stage.workdir, to);
    const folder = statSync(here).isDirectory();
    cpSync(here, folder || !many ? target : join(target, basename(path)), {
      recursive: true,
      ...(source ? {} : { filter: (file) => !isIgnored(file.slice(repository.length + 1)) }),
    });
  }
}

/** Rules of .dockerignore: the last that fits a file or a folder round it decides. */
const rules = readFileSync(join(repository, '.dockerignore'), 'utf8')
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'))
  .map((line) => ({ keeps: line.startsWith('!'), glob: line.replace(/^!/, '') }));

function isIgnored(path: string): boolean {
  if (path === '') return false;
  const round = path.split('/').map((_, at, parts) => parts.slice(0, at + 1).join('/'));
  return rules.findLast(({ glob }) => round.some((one) => matchesGlob(one, glob)))?.keeps === false;
}

/** Lines that go on are one; comments are none. */
const instructions = (text: string): readonly (readonly [string, string])[] =>
  text
    .replaceAll(/\\\n\s*/g, '')
    .split('\n')
    .filter((line) => line.trim() !== '' && !line.startsWith('#'))
    .map((line) => [line.slice(0, line.indexOf(' ')), line.slice(line.indexOf(' ') + 1)] as const);

/** The file's absolute paths, in the stage's own root. */
const inside = ({ root }: Pick<Stage, 'root'>, text: string): string =>
  text.replaceAll(/(^|[\s='"])\/(?=(?:app|build|home\/node)\b)/g, `$1${root}/`);

const isRoot = (): boolean => process.getuid?.() === 0;

if (import.meta.main) process.stdout.write(`${buildImage().root}\n`);
