import { once } from 'node:events';
import { type ClientRequest, createServer, request } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Synapse } from './synapse.ts';

/** A request to put something into a room, and what became of it. */
export interface Put {
  readonly began_ms: number;
  readonly ended_ms: number;
  readonly status: number;
  /** The client's own name for it. */
  readonly txn: string;
  /** What the homeserver asked for with a refusal. */
  readonly retry_after_s: number | undefined;
}

/** Stands between a client and the homeserver, and notes what the client puts into rooms. */
export async function watchSynapse(
  synapse: Synapse,
): Promise<{ synapse: Synapse; puts: readonly Put[]; close(): void }> {
  const puts: Put[] = [];
  const { hostname, port } = new URL(synapse.url);
  const server = createServer((from, to) => {
    const began_ms = performance.now();
    const { method, url = '', headers } = from;
    const on: ClientRequest = request({ hostname, port, method, path: url, headers }, (answer) => {
      const { statusCode: status = 0 } = answer;
      const after = answer.headers['retry-after'];
      to.writeHead(status, answer.headers);
      answer.pipe(to);
      if (method !== 'PUT' || !/\/(?:send|redact)\//.test(url)) return;
      const retry_after_s = after === undefined ? undefined : Number(after);
      const txn = decodeURIComponent(url.slice(url.lastIndexOf('/') + 1));
      answer.once('end', () => puts.push({ began_ms, ended_ms: performance.now(), status, txn, retry_after_s }));
    });
    on.once('error', () => to.destroy());
    from.once('aborted', () => on.destroy());
    from.pipe(on);
  });
  await once(server.listen(0, '127.0.0.1'), 'listening');
  const { port: own } = server.address() as AddressInfo;
  return {
    synapse: { ...synapse, url: `http://127.0.0.1:${own}` },
    puts,
    close() {
      server.closeAllConnections();
      server.close();
    },
  };
}
