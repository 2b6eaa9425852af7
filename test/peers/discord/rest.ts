import { createServer, type IncomingMessage, type Server } from 'node:http';
import { isRecord, type SentFile } from './judge-message.ts';
import type { Limits } from './limits.ts';
import { type Court, Refusal, refuse } from './refusal.ts';

/** A request that came in, read whole. */
export interface Asked {
  readonly method: string;
  /** The path behind `/v10`, cut at its slashes. */
  readonly path: readonly string[];
  readonly query: URLSearchParams;
  readonly body: unknown;
  readonly files: readonly SentFile[];
  /** What is answered will not arrive: who asked does not know that it was done. */
  readonly unheard: boolean;
}

export interface Answered {
  readonly status: number;
  readonly body?: unknown;
  readonly bytes?: { readonly type: string; readonly data: Uint8Array };
}

/** A route's pattern is its method and path; `:name` is any one part, and handed on in order. */
export type Routes = Readonly<Record<string, (asked: Asked, ...parts: string[]) => Answered>>;

export interface Rest {
  readonly server: Server;
  /** The next requests fail on the server's side. */
  failNext(count: number): void;
  /** The next requests are taken, and their answers lost. */
  loseNext(count: number): void;
}

export function openRest(given: {
  readonly token: string;
  readonly court: Court;
  readonly limits: Limits;
  readonly routes: Routes;
  readonly file: (path: readonly string[]) => Answered['bytes'];
}): Rest {
  const { court, limits } = given;
  let failing = 0;
  let losing = 0;
  const patterns = Object.entries(given.routes).map(([pattern, handle]) => {
    const [method, path = ''] = pattern.split(' ');
    return { method, parts: path.split('/').slice(1), path, handle };
  });

  const server = createServer((request, response) => {
    handle(request).then(
      ({ answered, headers }) => {
        const data = answered.bytes?.data ?? (answered.body === undefined ? '' : JSON.stringify(answered.body));
        response.writeHead(answered.status, {
          ...headers,
          ...(data.length > 0 ? { 'Content-Type': answered.bytes?.type ?? 'application/json' } : {}),
        });
        response.end(data);
      },
      (error) => {
        court.note(`the peer itself failed: ${error instanceof Error ? error.stack : error}`);
        response.writeHead(500).end();
      },
    );
  });

  async function handle(request: IncomingMessage): Promise<{ answered: Answered; headers: Record<string, string> }> {
    const raw = await wholeBody(request);
    const url = new URL(request.url ?? '/', 'http://peer');
    const [root, version, ...path] = url.pathname.slice(1).split('/').map(decodeURIComponent);
    const method = request.method ?? 'GET';
    if (root === 'files') {
      const bytes = given.file([version ?? '', ...path]);
      return { answered: bytes ? { status: 200, bytes } : { status: 404 }, headers: {} };
    }
    const route = patterns.find((each) => each.method === method && fits(each.parts, path));
    const open = path[0] === 'interactions' || path[0] === 'webhooks';
    const bucket = `${method} ${route?.path ?? url.pathname} ${majorOf(path)}`;
    const verdict = limits.count({ bucket, exempt: path[0] === 'interactions' });
    const answered = await answer();
    if ([401, 403, 429].includes(answered.status)) limits.invalid();
    return { answered, headers: verdict.headers };

    async function answer(): Promise<Answered> {
      if (verdict.retryAfter_s !== undefined) {
        const body = {
          message: 'You are being rate limited.',
          retry_after: verdict.retryAfter_s,
          global: verdict.global,
        };
        return { status: 429, body };
      }
      if (failing > 0) {
        failing -= 1;
        return badGateway;
      }
      const unheard = losing > 0;
      if (unheard) losing -= 1;
      try {
        if (version !== 'v10') court.demand(`${method} ${url.pathname}`, ['not version 10 of the interface']);
        if (!open && request.headers.authorization !== `Bot ${given.token}`) {
          court.note(`${method} ${url.pathname}: without the bot's token`);
          throw refuse.unauthorized();
        }
        if (route === undefined) {
          court.note(`${method} ${url.pathname}: no such address here`);
          throw refuse.notFound();
        }
        const { body, files } = await read(raw, request.headers['content-type']);
        const parts = path.filter((_, index) => route.parts[index]?.startsWith(':'));
        const taken = route.handle({ method, path, query: url.searchParams, body, files, unheard }, ...parts);
        return unheard ? badGateway : taken;
      } catch (error) {
        if (error instanceof Refusal) return { status: error.status, body: error.body() };
        throw error;
      }
    }
  }

  async function read(raw: Buffer, type = ''): Promise<{ body: unknown; files: readonly SentFile[] }> {
    if (raw.length === 0) return { body: undefined, files: [] };
    if (type.startsWith('application/json')) return { body: parsed(raw.toString('utf8')), files: [] };
    if (!type.startsWith('multipart/form-data')) court.demand('body', [`content type ${type || 'missing'}`]);
    const form = await new Response(new Uint8Array(raw), { headers: { 'content-type': type } }).formData();
    const files: SentFile[] = [];
    for (const [key, part] of form) {
      const index = /^files\[(\d+)\]$/.exec(key)?.[1];
      if (typeof part === 'string' || index === undefined) {
        if (key !== 'payload_json') court.demand('multipart', [`a part called ${key}`]);
        continue;
      }
      const bytes = new Uint8Array(await part.arrayBuffer());
      files.push({ index: Number(index), name: part.name, contentType: part.type, bytes });
    }
    const payload = form.get('payload_json');
    return { body: typeof payload === 'string' ? parsed(payload) : {}, files };
  }

  function parsed(text: string): unknown {
    try {
      const value: unknown = JSON.parse(text);
      if (isRecord(value) || Array.isArray(value)) return value;
    } catch {
      // Said below, as for any other body that is no object.
    }
    court.demand('body', ['not a JSON object or list']);
    return undefined;
  }

  return {
    server,
    failNext(count) {
      failing = count;
    },
    loseNext(count) {
      losing = count;
    },
  };
}

const badGateway: Answered = { status: 502, body: { message: '502: Bad Gateway', code: 0 } };

const fits = (parts: readonly string[], path: readonly string[]) =>
  parts.length === path.length && parts.every((part, index) => part.startsWith(':') || part === path[index]);

/** The part of an address that has limits of its own. */
const majorOf = (path: readonly string[]) =>
  path[0] === 'webhooks' ? `${path[1]}/${path[2]}` : path[0] === 'channels' || path[0] === 'guilds' ? path[1] : '';

async function wholeBody(request: IncomingMessage): Promise<Buffer> {
  const chunks: Buffer[] = [];
  for await (const chunk of request) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks);
}
