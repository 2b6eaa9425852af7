import { ConnectionError, MatrixError, safeGetRetryAfterMs, TokenRefreshLogoutError } from 'matrix-js-sdk';

/** Not now, but perhaps later: the server is away or busy. */
export class Later extends Error {
  override readonly name: string = 'Later';
  readonly wait_s: number | undefined;

  constructor(why: string, wait_s?: number) {
    super(why);
    this.wait_s = wait_s;
  }
}

/** Too much at once: the homeserver says when there may be more. */
export class Limited extends Later {
  override readonly name = 'Limited';
}

/** The key of a message is not here, and may never come: nothing else waits for it. */
export class Keyless extends Later {
  override readonly name = 'Keyless';
}

/** What passes by itself is `Later`; the rest is as it was. */
export function laterOf(error: unknown): unknown {
  if (error instanceof ConnectionError || (error instanceof Error && error.name === 'AbortError')) {
    return new Later('the homeserver is not there');
  }
  if (error instanceof TokenRefreshLogoutError) return new Later('the session has ended');
  if (!(error instanceof MatrixError)) return error;
  const { httpStatus = 0, errcode } = error;
  if (error.isRateLimitError()) return new Limited('too much at once', safeGetRetryAfterMs(error, 2000) / 1000);
  if (httpStatus >= 500 || httpStatus === 408 || httpStatus === 401) return new Later(`${httpStatus} ${errcode ?? ''}`);
  return error;
}
