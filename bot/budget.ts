/** Tokens that refill evenly: `burst` at once, `per_minute` in the long run. */
export interface Rate {
  readonly burst: number;
  readonly per_minute: number;
}

interface Bucket {
  tokens: number;
  at_ms: number;
}

/** One person's questions, and those of everybody in one guild: slow ones take a whole thread for a while. */
export const rates: { readonly person: Rate; readonly guild: Rate } = {
  person: { burst: 10, per_minute: 20 },
  guild: { burst: 40, per_minute: 120 },
};

interface Asking {
  readonly asker: string;
  readonly guild?: string;
}

/** Who asks faster than can be answered waits; nobody else does. A clock that is set back gives nothing and takes nothing. */
export function createBudget({ person, guild } = rates) {
  const people = new Map<string, Bucket>();
  const guilds = new Map<string, Bucket>();

  return {
    /** Takes one from each budget, or none from either and says how long until there is one. */
    take(who: Asking, now: Date): { readonly wait_s: number } {
      const own = bucketOf(people, who.asker, person, now);
      const shared = who.guild === undefined ? undefined : bucketOf(guilds, who.guild, guild, now);
      const wait_s = Math.max(waitFor(own, person), shared ? waitFor(shared, guild) : 0);
      if (wait_s > 0) return { wait_s };
      own.tokens -= 1;
      if (shared) shared.tokens -= 1;
      return { wait_s: 0 };
    },
  };
}

/** One token, less what adding up fractions of one loses. */
const whole = 1 - 1e-9;

const waitFor = ({ tokens }: Bucket, { per_minute }: Rate): number =>
  tokens >= whole ? 0 : ((1 - tokens) * 60) / per_minute;

function bucketOf(buckets: Map<string, Bucket>, key: string, { burst, per_minute }: Rate, now: Date): Bucket {
  const at_ms = now.getTime();
  const bucket = buckets.get(key) ?? { tokens: burst, at_ms };
  bucket.tokens = Math.min(burst, bucket.tokens + (Math.max(0, at_ms - bucket.at_ms) / 60_000) * per_minute);
  bucket.at_ms = at_ms;
  // The least recently used stand first; a full bucket says nothing, so forgetting one gives nobody more.
  buckets.delete(key);
  buckets.set(key, bucket);
  if (buckets.size > most) for (const old of [...buckets.keys()].slice(0, most / 2)) buckets.delete(old);
  return bucket;
}

const most = 20_000;
