import { parseArgs } from 'node:util';

export const usage = `npm run -s ask -- 'mix 1.1 cu ft'
  --json        the card as data, in SI units
  --svg FILE    the answer as a picture
  --help        this`;

export interface Flags {
  readonly kind: 'read';
  readonly line: string;
  readonly json: boolean;
  readonly help: boolean;
  readonly picture?: string;
}

export interface RefusedFlags {
  readonly kind: 'refused';
  readonly why: string;
}

export function readFlags(typed: readonly string[]): Flags | RefusedFlags {
  try {
    const { values, positionals } = parseArgs({
      args: [...typed],
      allowPositionals: true,
      options: {
        json: { type: 'boolean', default: false },
        help: { type: 'boolean', short: 'h', default: false },
        svg: { type: 'string' },
      },
    });
    const line = positionals.join(' ').trim();
    if (line === '' && !values.help) return { kind: 'refused', why: `A question is missing.\n${usage}` };
    return {
      kind: 'read',
      line,
      json: values.json,
      help: values.help,
      ...(values.svg === undefined ? {} : { picture: values.svg }),
    };
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    if (!code.startsWith('ERR_PARSE_ARGS')) throw error;
    return { kind: 'refused', why: `${(error as Error).message.split('. ', 1)[0]}.\n${usage}` };
  }
}
