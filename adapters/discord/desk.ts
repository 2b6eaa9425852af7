import { randomUUID } from 'node:crypto';
import type { APIInteraction } from 'discord.js';
import type { Card, Reply } from '../../commands/card.ts';
import type { Ask, Command } from '../../commands/command.ts';
import type { Memory } from '../../commands/memory.ts';
import type { Caution } from '../../core/hazard/caution.ts';
import { type Door, type First, refusesBody } from './door.ts';
import { tokenLife_ms, defer_ms as usualDefer_ms, early_ms as usualEarly_ms } from './limits.ts';
import { saying } from './message/error.ts';
import type { FileOut, Message } from './message/payload.ts';
import type { AnswerPlan, Outcome, Plan } from './plan.ts';
import { answerPress } from './press.ts';
import { type Request, readRequest, type Who } from './request.ts';
import { answerCommand, answerMessage, complete } from './slash.ts';
import type { States } from './state.ts';
import { within } from './within.ts';

/** How often somebody may ask. */
export interface Budget {
  /** Takes one; else says after how many seconds there is one again. */
  take(who: Who, now: Date): { readonly wait_s: number };
}

export interface Log {
  info(about: object, what: string): void;
  warn(about: object, what: string): void;
  error(about: object, what: string): void;
}

export interface Told {
  readonly kind: Request['kind'];
  readonly command: string;
  readonly outcome: 'answered' | 'deferred' | 'refused' | 'failed';
  readonly took_s: number;
}

interface Telling {
  kind?: Told['kind'];
  command: string;
  outcome?: Told['outcome'];
}

export interface DeskParts {
  readonly door: Door;
  readonly commands: readonly Command[];
  /** `early` hears typical values while the ranges of a slow answer are worked out. */
  readonly answer: (ask: Ask, who: Who, early?: (card: Card) => void) => Promise<Reply>;
  /** The first picture of a card, if there is one to show. */
  readonly picture: (reply: Extract<Reply, { kind: 'card' }>) => Promise<FileOut | undefined>;
  readonly memory: Memory;
  readonly states: States;
  readonly handled: { first(id: string, given: { now: Date; keep_s: number }): Promise<boolean> };
  readonly budget: Budget;
  readonly now: () => Date;
  readonly log: Log;
  readonly tell?: (what: Told) => void;
  readonly defer_ms?: number;
  /** How long a whole answer is waited for before an early one is shown. */
  readonly early_ms?: number;
}

/** How long the store may take before the answer goes without it. */
const store_ms = 500;
/** Longer than any event is delivered again. */
const handledKeep_s = 3600;

/** Takes interactions, however they came in, and answers each once. Never throws: what fails is said and logged. */
export function createDesk(parts: DeskParts) {
  const { door, handled, now, log, defer_ms = usualDefer_ms, early_ms = usualEarly_ms } = parts;
  const seen = new Set<string>();

  return { handle };

  async function handle(raw: APIInteraction): Promise<void> {
    const started = performance.now();
    const told: Telling = { command: '' };
    let request: Request | undefined;
    try {
      request = readRequest(raw);
      if (!request || !(await isFirst(request.id))) return;
      told.kind = request.kind;
      await answered(request, told, started);
    } catch (error) {
      // The way back itself failed: nothing more can be said to the asker.
      told.outcome = 'failed';
      log.warn({ err: error, interaction: raw.id, kind: request?.kind }, 'an answer could not be delivered');
    }
    if (request && told.kind) {
      const { kind, command, outcome = 'answered' } = told;
      parts.tell?.({ kind, command, outcome, took_s: (performance.now() - started) / 1000 });
    }
  }

  /** Delivered again after a dropped connection, perhaps to another process: answered once. */
  async function isFirst(id: string): Promise<boolean> {
    if (seen.has(id)) return false;
    seen.add(id);
    if (seen.size > 5000) for (const old of [...seen].slice(0, 2500)) seen.delete(old);
    try {
      return await within(handled.first(`discord:${id}`, { now: now(), keep_s: handledKeep_s }), store_ms, true);
    } catch (error) {
      log.warn({ err: error }, 'the store could not say whether an interaction was handled');
      return true;
    }
  }

  async function answered(request: Request, told: Telling, started: number): Promise<void> {
    if (request.kind === 'autocomplete') {
      const choices = await within(complete(request, parts), 1500, []).catch((error) => {
        log.error({ err: error }, 'nothing could be suggested');
        return [];
      });
      return door.first(request, { kind: 'choices', choices });
    }
    const plan = await planOf(request);
    told.command = plan.command;
    if (plan.kind === 'modal') return door.first(request, { kind: 'modal', modal: plan.modal });
    const begun = now();
    // Only a message of its own can be there before it is whole.
    const early = plan.into === 'new' ? Promise.withResolvers<Message>() : undefined;
    const outcome = plan.work(early?.resolve).catch((error) => {
      told.outcome = 'failed';
      return faulty(error, request, plan.cautions());
    });
    const left = (until_ms: number) => Math.max(0, until_ms - (performance.now() - started));
    const quick =
      plan.into === 'private'
        ? undefined
        : await within(outcome, left(early ? Math.min(early_ms, defer_ms) : defer_ms), undefined);
    const first = quick ?? (early && (await within(Promise.race([outcome, early.promise]), left(defer_ms), undefined)));
    if (first && 'message' in first) {
      if (first.refused) told.outcome ??= 'refused';
      const { message, ephemeral } = first;
      const sent: First = takesItsPlace(first, plan)
        ? { kind: 'update', message }
        : { kind: 'message', message, ephemeral };
      return orPlainly(
        request,
        plan,
        told,
        () => door.first(request, sent),
        (plain) => door.first(request, { kind: 'message', message: plain, ephemeral: true }),
      );
    }
    const stands = await meanwhile(request, plan, first, early && Promise.race([outcome, early.promise]));
    const late = await outcome;
    told.outcome ??= 'deferred';
    if (now().getTime() - begun.getTime() > tokenLife_ms) {
      told.outcome = 'failed';
      log.warn({ interaction: request.id, command: plan.command }, 'an answer came after its time to be delivered');
      return saysGone(request, plan, late);
    }
    await orPlainly(
      request,
      plan,
      told,
      () => (stands ? door.edit(request, late.message) : delivered(request, late, plan)),
      (plain) => door.edit(request, plain),
    );
  }

  /**
   * In the channel, where the bot may write there anyway and the answer was for everybody; else in direct messages, which
   * need no permission either. Where these are closed to it there is no way left, and asking for further permissions for
   * so rare a case would be too much: then the log alone says it.
   */
  async function saysGone({ who, id }: Request, { command, ephemeral, cautions }: AnswerPlan, late: Outcome) {
    const open = who.alone || (who.writes && !ephemeral && !late.ephemeral);
    const message = saying(gone(command), cautions());
    await door.call(who.asker, open ? who.channel : undefined, message).catch((error) => {
      log.warn({ err: error, interaction: id }, 'nor could it be said that it is gone');
    });
  }

  async function planOf(request: Exclude<Request, { kind: 'autocomplete' }>): Promise<Plan> {
    if (request.kind === 'command') return answerCommand(request, parts);
    if (request.kind === 'message') return answerMessage(request, parts);
    return answerPress(request, parts);
  }

  /** What stands until the answer is there: typical values if there are any. Says whether it does, and not just a deferral. */
  async function meanwhile(
    request: Request,
    { into, ephemeral }: AnswerPlan,
    early: Message | undefined,
    next: Promise<Outcome | Message> | undefined,
  ): Promise<boolean> {
    if (early && (await showed(() => door.first(request, { kind: 'message', message: early, ephemeral })))) return true;
    await door.first(request, into === 'new' ? { kind: 'defer', ephemeral } : { kind: 'defer-update' });
    const later = early ? undefined : await next;
    if (!later || 'message' in later) return false;
    return showed(() => door.edit(request, later));
  }

  /** A message for the moment may be refused: the answer is still to come. */
  async function showed(send: () => Promise<void>): Promise<boolean> {
    try {
      await send();
      return true;
    } catch (error) {
      if (!refusesBody(error)) throw error;
      log.error({ err: error }, 'an early answer was refused');
      return false;
    }
  }

  /** Into the place that the deferral made; a private word takes the place of a public one. */
  async function delivered(request: Request, outcome: Outcome, plan: AnswerPlan) {
    const { message, ephemeral } = outcome;
    const { into, ephemeral: quiet } = plan;
    const removes = into === 'private' || (into === 'new' && ephemeral && !quiet);
    if (into === 'same' ? takesItsPlace(outcome, plan) : !removes) return door.edit(request, message);
    if (removes) await door.remove(request);
    await door.followUp(request, message, true);
  }

  /** A message that the platform will not have is our fault: the asker gets a plain one with its id instead of silence. */
  async function orPlainly(
    request: Request,
    { cautions }: AnswerPlan,
    told: Telling,
    send: () => Promise<void>,
    sendPlain: (message: Outcome['message']) => Promise<void>,
  ): Promise<void> {
    try {
      await send();
    } catch (error) {
      if (!refusesBody(error)) throw error;
      told.outcome = 'failed';
      await sendPlain((await faulty(error, request, cautions())).message);
    }
  }

  async function faulty(error: unknown, request: Request, cautions: readonly Caution[]): Promise<Outcome> {
    const id = randomUUID().slice(0, 8);
    log.error({ err: error, fault: id, kind: request.kind }, 'a question could not be answered');
    const message = saying(
      `That went wrong here, not with you. It is logged as ${id}; the next question is answered as usual.`,
      cautions,
    );
    return { message, ephemeral: true, refused: true };
  }
}

const gone = (command: string): string =>
  `An answer of mine (${command}) took longer than the fifteen minutes in which it can be delivered. Ask it again.`;

/** An answer that was turned stands where it did, as private as it was; what went wrong stands beside it. */
const takesItsPlace = ({ ephemeral, refused }: Outcome, { into, ephemeral: quiet }: AnswerPlan): boolean =>
  into === 'same' && ephemeral === quiet && !refused;
