import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';

/**
 * The published schemas of the platform's API, refusing keys they do not know.
 *
 * As shipped they build themselves when they are imported, so that the package's own switch to strict objects comes too late.
 * Its text is therefore copied with the switch thrown, beside this file and ignored by git.
 */
export type SchemaName =
  | 'ApplicationCommandCreateRequest'
  | 'ApplicationCommandUpdateRequest'
  | 'ApplicationCommandPatchRequestPartial'
  | 'ApplicationCommandAutocompleteCallbackRequest'
  | 'CreateMessageInteractionCallbackRequest'
  | 'UpdateMessageInteractionCallbackRequest'
  | 'ModalInteractionCallbackRequest'
  | 'IncomingWebhookUpdateRequestPartial'
  | 'IncomingWebhookRequestPartial'
  | 'MessageCreateRequest'
  | 'MessageEditRequestPartial'
  | 'CreatePrivateChannelRequest'
  // What the peer itself answers.
  | 'ApplicationCommandResponse'
  | 'GatewayBotResponse'
  | 'InteractionCallbackResponse'
  | 'MessageResponse'
  | 'PrivateChannelResponse';

interface Issue {
  readonly code: string;
  readonly message: string;
  readonly path: readonly PropertyKey[];
  readonly keys?: readonly string[];
  readonly maximum?: number;
  readonly minimum?: number;
  readonly errors?: readonly (readonly Issue[])[];
}

interface Schema {
  safeParse(value: unknown): { readonly success: boolean; readonly error?: { readonly issues: readonly Issue[] } };
}

const switched = 'let zObject = z.strictObject';
const schemas = (await import(/* @vite-ignore */ generate())) as Record<string, Schema>;

/** What the schema has against a body, in words; nothing if it is right. `body` is judged as it goes over the wire. */
export function schemaFaults(name: SchemaName, body: unknown): readonly string[] {
  const schema = schemas[`${name}Schema`];
  if (schema === undefined) throw new Error(`discord-api-spec has no ${name}`);
  const wire: unknown = body === undefined ? undefined : JSON.parse(JSON.stringify(body));
  return inWords(schema.safeParse(wire).error?.issues ?? [], []);
}

function inWords(issues: readonly Issue[], above: readonly PropertyKey[]): readonly string[] {
  return issues.flatMap((issue) => {
    const path = [...above, ...issue.path];
    const meant = closest(issue.errors ?? []);
    if (meant) return inWords(meant, path);
    return [`${path.map(String).join('.') || 'body'}: ${complaint(issue)}`];
  });
}

function complaint({ code, message, keys, maximum, minimum }: Issue): string {
  if (keys) return `unknown key ${keys.join(', ')}`;
  if (code === 'too_big') return `more than ${maximum}`;
  if (code === 'too_small') return `less than ${minimum}`;
  return `${message} (${code})`;
}

/** Of a union's branches the one that was meant: it complains neither of the whole nor of the type, and of little else. */
function closest(branches: readonly (readonly Issue[])[]): readonly Issue[] | undefined {
  const strange = ({ path, keys }: Issue) => (path.length === 0 && !keys) || (path.length === 1 && path[0] === 'type');
  const cost = (branch: readonly Issue[]) => branch.length + (branch.some(strange) ? 100 : 0);
  return branches.toSorted((a, b) => cost(a) - cost(b))[0];
}

function generate(): string {
  const text = readFileSync(fileURLToPath(import.meta.resolve('discord-api-spec/zod')), 'utf8');
  const strict = text.replace('let zObject = z.object', switched);
  if (!strict.includes(switched)) throw new Error('discord-api-spec no longer builds its schemas by zObject');
  const folder = new URL('.strict/', import.meta.url);
  const file = fileURLToPath(new URL('discord-api-spec.js', folder));
  mkdirSync(folder, { recursive: true });
  // Several test processes may write it at once: each writes its own and puts it in place whole.
  if (readIfThere(file) !== strict) {
    writeFileSync(`${file}.${process.pid}`, strict);
    renameSync(`${file}.${process.pid}`, file);
  }
  return pathToFileURL(file).href;
}

function readIfThere(file: string): string | undefined {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return undefined;
  }
}
