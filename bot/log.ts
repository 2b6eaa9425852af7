import type { Logger } from 'pino';
import type { Config } from './config.ts';

/** Keys that are never written, at any of three depths: secrets, and what people wrote. */
const unlogged = [
  'token',
  'access_token',
  'accessToken',
  'password',
  'authorization',
  'recovery_key',
  'recoveryKey',
  'text',
  'body',
  'formatted_body',
  'content',
  'line',
  // Of what a platform refused: the answer, and a token in its address.
  'requestBody',
  'url',
].flatMap((key) => [key, `*.${key}`, `*.*.${key}`]);

export const redaction = { paths: unlogged, censor: '[not logged]' };

let made: Promise<Logger> | undefined;

/** The log, on standard error. Made at its first use: an answer without a fault never waits for it. */
export function openLog({ log }: Pick<Config, 'log'>): Promise<Logger> {
  made ??= import('pino').then(({ pino, destination }) =>
    pino({ level: log, redact: redaction }, destination({ dest: 2, sync: true })),
  );
  return made;
}

export async function logFault(config: Pick<Config, 'log'>, err: unknown, fault: string): Promise<void> {
  (await openLog(config)).error({ err, fault }, 'a question could not be answered');
}
