import type { Court } from './refusal.ts';

/**
 * The rate limits of the REST interface (topics/rate-limits). They run by the machine's time, because the client waits by it.
 * The real buckets are nobody's to know; these are small ones.
 */
export interface Limits {
  /** Headers to send, and for how long to refuse if this request is one too many. */
  count(request: { readonly bucket: string; readonly exempt: boolean }): Verdict;
  /** The next requests are refused, whatever their bucket says. */
  refuseNext(count: number): void;
  /** What came back was 401, 403 or 429: ten thousand of them in ten minutes close the door. */
  invalid(): void;
}

export interface Verdict {
  readonly headers: Record<string, string>;
  readonly retryAfter_s?: number;
  readonly global?: boolean;
}

const bucket_s = 1;
const requestsABucket = 5;
const requestsASecond = 50;

export function keepLimits(court: Court, { unlimited = false } = {}): Limits {
  const buckets = new Map<string, { used: number; until: number }>();
  const shut = new Map<string, { from: number; until: number }>();
  let everything = { used: 0, until: 0 };
  let refusing = 0;
  let refused: number[] = [];

  /** Who was told to wait and comes back early has not read the answer. A little later it may still have been under way. */
  function judgeReturn(bucket: string, now: number): void {
    const closed = shut.get(bucket);
    if (closed && now > closed.from + 250 && now < closed.until - 50) {
      court.note(`${bucket}: sent again ${Math.round(closed.until - now)} ms before Retry-After was over`);
    }
  }

  return {
    count({ bucket, exempt }) {
      const now = performance.now();
      judgeReturn(bucket, now);
      if (refusing > 0) {
        refusing -= 1;
        return deny(bucket, now, 0.5, false);
      }
      if (exempt || unlimited) return { headers: {} };
      if (everything.until <= now) everything = { used: 0, until: now + 1000 };
      everything.used += 1;
      if (everything.used > requestsASecond) return deny(bucket, now, (everything.until - now) / 1000, true);
      const entry = buckets.get(bucket);
      const open = entry && entry.until > now ? entry : { used: 0, until: now + bucket_s * 1000 };
      buckets.set(bucket, open);
      open.used += 1;
      const left_s = (open.until - now) / 1000;
      if (open.used > requestsABucket) return deny(bucket, now, left_s, false);
      return { headers: headersOf(bucket, requestsABucket - open.used, left_s) };
    },
    refuseNext(count) {
      refusing = count;
    },
    invalid() {
      const now = performance.now();
      refused = [...refused.filter((at) => now - at < 600_000), now];
      if (refused.length === 10_000) court.note('10,000 invalid requests within ten minutes');
    },
  };

  function deny(bucket: string, now: number, retryAfter_s: number, global: boolean): Verdict {
    const closed = shut.get(bucket);
    const from = closed && closed.until > now ? closed.from : now;
    shut.set(bucket, { from, until: now + retryAfter_s * 1000 });
    const scope = {
      'X-RateLimit-Scope': global ? 'global' : 'user',
      ...(global ? { 'X-RateLimit-Global': 'true' } : {}),
    };
    const wait = { 'Retry-After': retryAfter_s.toFixed(3) };
    return { headers: { ...headersOf(bucket, 0, retryAfter_s), ...scope, ...wait }, retryAfter_s, global };
  }
}

function headersOf(bucket: string, remaining: number, reset_s: number): Record<string, string> {
  return {
    'X-RateLimit-Limit': String(requestsABucket),
    'X-RateLimit-Remaining': String(remaining),
    'X-RateLimit-Reset': (Date.now() / 1000 + reset_s).toFixed(3),
    'X-RateLimit-Reset-After': reset_s.toFixed(3),
    'X-RateLimit-Bucket': Buffer.from(bucket.split(' ').slice(0, 2).join(' ')).toString('base64url'),
  };
}
