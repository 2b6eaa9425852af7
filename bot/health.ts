import { fastify } from 'fastify';
import type { Metrics } from './metrics.ts';

export interface Health {
  readonly url: string;
  close(): Promise<void>;
}

/**
 * `/healthz`: the process lives. `/readyz`: it can answer, else 503 with what is missing. `/metrics`: for Prometheus.
 * Nothing of it is for the public; no log of requests is kept.
 */
export async function serveHealth({
  port,
  metrics,
  missing,
  host = '0.0.0.0',
}: {
  port: number;
  metrics: Metrics;
  /** What keeps the program from answering; empty where nothing does. */
  missing: () => readonly string[];
  host?: string;
}): Promise<Health> {
  const server = fastify({ logger: false });
  server.get('/healthz', () => ({ status: 'alive' }));
  server.get('/readyz', (_request, reply) => {
    const lacks = missing();
    return reply
      .code(lacks.length === 0 ? 200 : 503)
      .send({ status: lacks.length === 0 ? 'ready' : 'not ready', lacks });
  });
  server.get('/metrics', async (_request, reply) =>
    reply.type(metrics.registry.contentType).send(await metrics.registry.metrics()),
  );
  const url = await server.listen({ port, host });
  return { url, close: () => server.close() };
}
