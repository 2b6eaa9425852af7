import { createClient, MatrixError } from 'matrix-js-sdk';
import type { Logger } from 'matrix-js-sdk/lib/logger.js';
import { readSecret, writeSecret } from './files.ts';
import { laterOf } from './later.ts';

export interface Session {
  readonly userId: string;
  readonly deviceId: string;
  readonly accessToken: string;
}

export interface Credentials {
  readonly homeserver: string;
  /** `@teemer:example.org` or only `teemer`. */
  readonly user?: string | undefined;
  readonly password?: string | undefined;
  readonly token?: string | undefined;
}

/** The homeserver will not let the bot in; the message says what to see to. */
export class MatrixLoginError extends Error {
  override readonly name = 'MatrixLoginError';
}

/**
 * A token as it was given, else the session that was kept while it still holds, else a login by password: under the
 * device of before where one is known, so that its keys stay of use.
 * @throws MatrixLoginError
 */
export async function openSession(
  { homeserver, user, password, token }: Credentials,
  { file, usable, logger }: { file: string | undefined; usable: boolean; logger: Logger },
): Promise<Session> {
  const found = file === undefined || !usable ? undefined : parse(readSecret(file));
  const kept = found && (user === undefined || isOf(found, user)) ? found : undefined;
  const known = token ?? kept?.accessToken;
  if (known !== undefined) {
    const session = await whoIs(homeserver, known, logger);
    if (session) return keep(session, file);
    if (password === undefined) throw new MatrixLoginError(`${homeserver} no longer takes the token: give a new one`);
  }
  if (user === undefined || password === undefined)
    throw new MatrixLoginError('a user with a password, or a token, is needed');
  const client = createClient({ baseUrl: homeserver, logger });
  try {
    const { user_id, device_id, access_token } = await client.loginRequest({
      type: 'm.login.password',
      identifier: { type: 'm.id.user', user },
      password,
      initial_device_display_name: 'Teemer',
      ...(kept ? { device_id: kept.deviceId } : {}),
    });
    return keep({ userId: user_id, deviceId: device_id, accessToken: access_token }, file);
  } catch (error) {
    if (!(error instanceof MatrixError) || laterOf(error) !== error) throw error;
    throw new MatrixLoginError(`${homeserver} refuses ${user}: ${error.data.error ?? error.errcode}`);
  }
}

/** `teemer` or `@teemer:example.org`. */
const isOf = ({ userId }: Session, user: string): boolean =>
  userId === user || userId.startsWith(`@${user.replace(/^@/, '')}:`);

async function whoIs(homeserver: string, accessToken: string, logger: Logger): Promise<Session | undefined> {
  try {
    const { user_id, device_id } = await createClient({ baseUrl: homeserver, accessToken, logger }).whoami();
    if (device_id === undefined) throw new MatrixLoginError('the token belongs to no device: take one from a login');
    return { userId: user_id, deviceId: device_id, accessToken };
  } catch (error) {
    if (error instanceof MatrixError && error.errcode === 'M_UNKNOWN_TOKEN') return undefined;
    throw error;
  }
}

function keep(session: Session, file: string | undefined): Session {
  if (file !== undefined) writeSecret(file, JSON.stringify(session));
  return session;
}

const parse = (bytes: Buffer | undefined): Session | undefined =>
  bytes && (JSON.parse(bytes.toString('utf8')) as Session);
