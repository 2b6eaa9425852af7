import { parseArgs } from 'node:util';

export const usage = `npm run -s ask -- 'mix 1.1 cu ft'
  --json        the card as data, in SI units
  --png FILE    the answer as a picture; several go to FILE, FILE-plan and so on
  --svg FILE    the same as SVG
  --dark        pictures for a dark page
  --sheets DIR  full-size patterns as SVG pages, A4 or letter by units
  --help        this`;

export interface Flags {
  readonly kind: 'read';
  readonly line: string;
  readonly json: boolean;
  readonly help: boolean;
  readonly png?: string | undefined;
  readonly svg?: string | undefined;
  readonly dark: boolean;
  readonly sheets?: string | undefined;
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
        dark: { type: 'boolean', default: false },
        png: { type: 'string' },
        svg: { type: 'string' },
        sheets: { type: 'string' },
      },
    });
    const line = positionals.join(' ').trim();
    if (line === '' && !values.help) return { kind: 'refused', why: `A question is missing.\n${usage}` };
    return { kind: 'read', ...values, line };
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    if (!code.startsWith('ERR_PARSE_ARGS')) throw error;
    return { kind: 'refused', why: `${(error as Error).message.split('. ', 1)[0]}.\n${usage}` };
  }
}
