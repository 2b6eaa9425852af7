import pino from 'pino';
import { expect, test } from 'vitest';
import { redaction } from './log.ts';

test('secrets and what people wrote are struck out, at three depths', () => {
  const lines: string[] = [];
  const log = pino({ redact: redaction }, { write: (line: string) => void lines.push(line) });
  const secrets = {
    token: 'S1',
    password: 'S2',
    access_token: 'S3',
    authorization: 'S4',
    recoveryKey: 'S5',
    text: 'S6',
  };
  log.error({ ...secrets, headers: secrets, event: { content: secrets }, kept: 'visible' }, 'a fault');
  const written = lines.join('');
  expect(written).not.toMatch(/S\d/);
  expect(written).toContain('visible');
});

test('of what a platform refused neither the answer nor the token in its address is written', () => {
  const lines: string[] = [];
  const log = pino({ redact: redaction }, { write: (line: string) => void lines.push(line) });
  const sent = {
    url: 'https://chat.example/interactions/1/S1/callback',
    requestBody: { json: { data: 'S2' }, files: [] },
  };
  log.warn({ err: Object.assign(new Error('already acknowledged'), sent) }, 'an answer could not be delivered');
  expect(lines.join('')).not.toMatch(/S\d/);
  expect(lines.join('')).toContain('already acknowledged');
});
