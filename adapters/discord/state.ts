import { randomUUID } from 'node:crypto';
import { z } from 'zod';

/** What a message's buttons stand for. */
const stateSchema = z.object({
  asker: z.string(),
  /** The question the message answers. */
  ask: z.object({ command: z.string(), options: z.record(z.string(), z.string()) }),
  /** Whether it was answered: then what is pressed becomes the presser's last question. */
  answered: z.boolean(),
  /** A mistake in a question to be answered for everybody: told to its asker alone, but what mends it is for all again. */
  open: z.boolean().optional(),
  next: z.array(z.string()),
});
export type ButtonState = z.infer<typeof stateSchema>;

/** Kept where it outlives the process; see bot/store. */
export interface States {
  put(id: string, value: unknown, given: { now: Date; keep_s: number; asker?: string }): Promise<void>;
  get(id: string, now: Date): Promise<unknown>;
}

/** Buttons older than this say that they are. */
export const keep_s = 180 * 86_400;

/** Of a pool of random bytes, so that not every answer waits for some. */
export const newStateId = (): string => randomUUID().replaceAll('-', '');

/** Undefined where nothing is kept any more, or what is kept is of another version. */
export async function readState(states: States, id: string, now: Date): Promise<ButtonState | undefined> {
  return stateSchema.safeParse(await states.get(id, now)).data;
}
