import type { Store } from '../../bot/store/open.ts';

/** What the writer does for each person, in this order. */
const steps = [
  'asked',
  'units',
  'saved',
  'shared',
  'priced',
  'queued',
  'claimed',
  'sent',
  'handled',
  'forgotten',
] as const;
export type Step = (typeof steps)[number];

export const stepsOf = (n: number): readonly Step[] =>
  n % 2 === 0 ? steps : steps.filter((one) => one !== 'forgotten');

export const askerOf = (n: number): string => `person ${n}`;
/** Long enough to fill pages, and known to the last letter. */
export const askOf = (n: number) => ({ command: 'mix', options: { amount: `${n} L`, note: `${n};`.repeat(500) } });
export const priceOf = (n: number) => ({ item: 'sand', amount: { mass_kg: n + 0.25 }, price: n, currency: 'USD' });

/** Which steps of which person were acknowledged, of one or more writers. */
export type Ledger = Map<number, Set<Step>>;

export function record(ledger: Ledger, said: string): number {
  // The last line may be cut short.
  const lines = said.split('\n').slice(0, -1);
  for (const line of lines) {
    const [number, step] = line.split(' ') as [string, Step];
    const n = Number(number);
    ledger.set(n, (ledger.get(n) ?? new Set()).add(step));
  }
  return lines.length;
}

/** What of the ledger is not in the store, and what is there in part. Both are to be empty. */
export async function audit(store: Store, ledger: Ledger): Promise<{ lost: string[]; halves: string[] }> {
  const lost: string[] = [];
  const halves: string[] = [];
  const last = Math.max(0, ...ledger.keys());
  // One further than what was acknowledged: the write that was under way.
  for (let n = Math.min(last, ...ledger.keys()); n <= last + 1; n++) {
    const said = ledger.get(n) ?? new Set<Step>();
    const found = await foundOf(store, n);
    const kept = [...found.whole, ...found.torn];
    if (found.torn.length > 0) halves.push(`${n}: ${found.torn} are not what was written`);
    if (said.has('forgotten')) {
      if (kept.length > 0) lost.push(`${n}: forgotten, yet ${kept} are there`);
      continue;
    }
    const missing = personal.filter((step) => said.has(step) && !kept.includes(step));
    // A forgetting that was under way may be done: then nothing of the person is there.
    const underWay = stepsOf(n).includes('forgotten') && said.has('handled');
    if (underWay && kept.length > 0 && missing.length > 0) halves.push(`${n}: half forgotten, ${kept} are there`);
    else if (missing.length > 0 && !(underWay && kept.length === 0)) lost.push(`${n}: ${missing}`);
  }
  const waiting = await store.outbox.claim('soak', { now: new Date(1e12), lease_s: 0, limit: 1e6 });
  for (const { key, body } of waiting) {
    const n = Number(key.slice('key '.length));
    if (ledger.get(n)?.has('sent')) lost.push(`${key}: sent, and to be sent again`);
    if (JSON.stringify(body) !== JSON.stringify(askOf(n))) halves.push(`${key}: not what was queued`);
  }
  const keys = new Set(waiting.map(({ key }) => key));
  for (const [n, said] of ledger) {
    // Claimed and not known to be sent: its sending, or the forgetting of its person, may have been under way.
    const waits = said.has('queued') && !said.has('claimed');
    if (waits && !keys.has(`key ${n}`)) lost.push(`key ${n}: queued`);
    if (said.has('handled') && (await store.handled.first(`event ${n}`, { now: new Date(n), keep_s: 1e6 }))) {
      lost.push(`event ${n}: handled`);
    }
  }
  return { lost, halves };
}

const personal = ['asked', 'units', 'saved', 'shared', 'priced'] as const;

async function foundOf({ memory }: Store, n: number): Promise<{ whole: Step[]; torn: Step[] }> {
  const { lastAsks, units, builds, shared, prices } = await memory.kept(askerOf(n));
  const whole: Step[] = [];
  const torn: Step[] = [];
  const look = (step: Step, found: unknown, written: unknown) => {
    if (found === undefined) return;
    (JSON.stringify(found) === JSON.stringify(written) ? whole : torn).push(step);
  };
  look('asked', lastAsks[0], { ...askOf(n), place: 'shed' });
  look('units', units, 'US');
  look('saved', builds[0]?.ask, askOf(n));
  look('shared', shared[0] && (await memory.sharedBuild(shared[0].code))?.ask, askOf(n));
  look('priced', prices[0], { ...priceOf(n), setAt: new Date(n) });
  return { whole, torn };
}
