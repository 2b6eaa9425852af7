import { once } from 'node:events';
import { createServer } from 'node:net';
import { threadId } from 'node:worker_threads';

/**
 * A port that a program may be told to listen at. Below those that systems give away by themselves, so that between this
 * look and the program's own nobody who takes any port takes this one; every test process begins its search elsewhere.
 */
export async function freePort(): Promise<number> {
  const first = 20_000 + ((process.pid * 7 + threadId) % 10_000);
  for (let port = first; port < first + 100; port++) if (await isFree(port)) return port;
  throw new Error(`no port is free from ${first} on`);
}

async function isFree(port: number): Promise<boolean> {
  const server = createServer();
  try {
    // At every address, as the program does.
    await once(server.listen(port), 'listening');
    return true;
  } catch {
    return false;
  } finally {
    server.close();
  }
}
