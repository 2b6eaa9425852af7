import type { Card, Reply } from '../../commands/card.ts';
import type { Ask, Command } from '../../commands/command.ts';
import { parseLine } from '../../commands/grammar.ts';
import { isOptional, metaOf } from '../../commands/options.ts';
import { AskError } from '../../core/ask-error.ts';
import type { Caution } from '../../core/hazard/caution.ts';
import { cautionsFor } from '../../core/hazard/cautions.ts';
import { factsIn } from '../../core/hazard/words.ts';
import { lineId } from './component-id.ts';
import type { DeskParts } from './desk.ts';
import { slashLine, spokenHere } from './manner.ts';
import { cardButtons, errorButtons, nextOf, offersAll } from './message/buttons.ts';
import { messageOf } from './message/card.ts';
import { errorMessage } from './message/error.ts';
import type { Message } from './message/payload.ts';
import type { AnswerPlan, Outcome } from './plan.ts';
import type { Who } from './request.ts';
import { type ButtonState, keep_s, newStateId } from './state.ts';
import { within } from './within.ts';

/** Never held up by anything: whoever is hurt is answered. */
export const isFirstAid = ({ urgent }: Command): boolean => urgent === true;

/** Only for the asker: their own data, help and workings. Where nobody else reads there is nothing to hide. */
export const isQuiet = (command: Command, who: Who): boolean =>
  command.private === true || (command.passing === true && !command.forAll && !who.alone);

/** What can hurt in what is asked, before it is answered. */
export const cautionsOf = (command: Command | undefined, ask: Pick<Ask, 'options'>): readonly Caution[] =>
  cautionsFor({ facts: [...new Set([...(command?.hazards ?? []), ...factsIn(Object.values(ask.options).join(' '))])] });

interface How {
  readonly into?: AnswerPlan['into'];
  readonly ephemeral?: boolean;
  readonly before?: () => Promise<void>;
  /** Everything there is of a long answer, without its picture. */
  readonly all?: boolean;
  /** What is wrong with it, where it could not even be read. */
  readonly mistake?: AskError;
}

/** One question as a plan: budget first, then the answer with its picture and buttons. */
export function planFor(ask: Ask, who: Who, parts: DeskParts, given: How = {}): AnswerPlan {
  const command = parts.commands.find(({ name }) => name === ask.command);
  const quiet = (command !== undefined && isQuiet(command, who)) || given.ephemeral === true;
  // Only where something goes wrong: an answer has its own.
  const cautions = () => cautionsOf(command, ask);
  return {
    kind: 'answer',
    command: ask.command,
    ephemeral: quiet || given.mistake !== undefined,
    into: given.into ?? 'new',
    cautions,
    async work(early) {
      const { wait_s } = command && isFirstAid(command) ? { wait_s: 0 } : parts.budget.take(who, parts.now());
      // Nothing is kept for it: a flood of questions is no flood of rows.
      if (wait_s > 0) return mistakeIn(tooMany(wait_s, ask, cautions()), command, parts, []);
      if (given.mistake) {
        const reply: Reply = { kind: 'error', error: given.mistake.parts(), cautions: cautions() };
        return composed(reply, ask, who, quiet, parts);
      }
      await given.before?.();
      const here = (card: Card) => spokenHere({ kind: 'card' as const, card }, command, parts.commands).card;
      const first = early && ((card: Card) => early(messageOf(here(card))));
      return composed(await parts.answer(ask, who, first), ask, who, quiet, parts, given.all);
    },
  };
}

const tooMany = (wait_s: number, ask: Ask, cautions: readonly Caution[]): Extract<Reply, { kind: 'error' }> => ({
  kind: 'error',
  error: {
    code: 'refused',
    what: `that was one question more than I can answer at once here; there is room again in ${Math.ceil(wait_s)} s`,
    expected: 'a short pause; first aid is answered at any time',
    example: ask.command,
  },
  cautions,
});

/** A reply as a message with its buttons. Without a store that keeps what they mean there are none. */
export async function composed(
  reply: Reply,
  ask: Ask,
  who: Who,
  quiet: boolean,
  parts: DeskParts,
  all = false,
): Promise<Outcome> {
  const state = newStateId();
  if (reply.kind === 'error') {
    const about = await mistaken(ask, who, parts);
    const command = parts.commands.find(({ name }) => name === about.command);
    if (command?.onMessage) return mistakeIn(reply, command, parts, []);
    const tryLine =
      reply.error.code === 'refused' ? undefined : sendable(reply.tryLine ?? reply.error.example, who, parts);
    const next = tryLine === undefined ? [] : [tryLine];
    const keeps = await kept(state, { ask: about, answered: false, open: !quiet, next }, who, parts);
    const shown = tryLine === undefined ? undefined : slashLine(tryLine, parts.commands);
    const buttons = keeps ? errorButtons({ state, tryLine: shown, command, choose: choiceOf(reply, command) }) : [];
    return mistakeIn(reply, command, parts, buttons);
  }
  const { card } = reply;
  const command = parts.commands.find(({ name }) => name === card.command);
  if (command?.onMessage) return ofOthers(reply, command, who, quiet, parts);
  // `again` may lead to what is private.
  const ephemeral = quiet || command?.private === true;
  const [picture, about] = await Promise.all([all ? undefined : drawn(reply, parts), asked(ask, command, who, parts)]);
  const answered = parts.commands.some(({ name, passing }) => name === about.command && !passing);
  const keeps = await kept(state, { ask: about, answered, next: nextOf(card).map(({ line }) => line) }, who, parts);
  const { alone } = who;
  const buttons = keeps && command ? cardButtons({ card, command, state, ephemeral, alone, all }) : [];
  const brief = keeps && command !== undefined && offersAll(card, command) && !all;
  const explained = parts.commands.find(({ name }) => name === about.command);
  const said = spokenHere(reply, command, parts.commands, explained).card;
  return { message: withButtons(messageOf(said, picture, { brief }), buttons), ephemeral };
}

function mistakeIn(
  reply: Extract<Reply, { kind: 'error' }>,
  command: Command | undefined,
  { commands }: DeskParts,
  buttons: Message['components'],
): Outcome {
  const said = errorMessage(spokenHere(reply, command, commands));
  return { message: withButtons(said, buttons), ephemeral: true, refused: true };
}

/** What somebody else wrote is not kept: lines made of it stand in the buttons themselves, or to be typed where they are too long. */
async function ofOthers(
  reply: Extract<Reply, { kind: 'card' }>,
  command: Command,
  { alone }: Who,
  ephemeral: boolean,
  parts: DeskParts,
): Promise<Outcome> {
  const { card } = spokenHere(reply, command, parts.commands);
  const tooLong = nextOf(card).filter(({ line }) => lineId(line) === undefined);
  const notes = tooLong.map(({ line }) => `Too long for a button, so to be typed: ${slashLine(line, parts.commands)}`);
  const said = messageOf({ ...card, notes: [...card.notes, ...notes] }, await drawn(reply, parts));
  const buttons = cardButtons({ card, command, state: undefined, ephemeral, alone, all: false });
  return { message: withButtons(said, buttons), ephemeral };
}

const drawn = (reply: Extract<Reply, { kind: 'card' }>, { picture, log }: DeskParts) =>
  picture(reply).catch((error) => {
    log.error({ err: error, command: reply.card.command }, 'a picture could not be drawn');
    return undefined;
  });

const withButtons = (message: Message, components: Message['components']): Message => ({ ...message, components });

/** The question a mistake is about: of `again`, the one that was to be asked again. */
async function mistaken(ask: Ask, who: Who, { commands, memory }: DeskParts): Promise<Ask> {
  if (!commands.find(({ name }) => name === ask.command)?.aboutLast) return ask;
  return (await lastOf(who, memory)) ?? ask;
}

const lastOf = (who: Who, memory: DeskParts['memory']) =>
  within(memory.lastAsk(who), 500, undefined).catch(() => undefined);

/** The question as it was remembered: with what another answer filled in, so that it means the same later. */
async function asked(ask: Ask, command: Command | undefined, who: Who, { memory }: DeskParts): Promise<Ask> {
  const last = await lastOf(who, memory);
  return last && (command?.passing || last.command === command?.name) ? last : ask;
}

const late = Symbol('late');

interface Meaning extends Omit<ButtonState, 'asker' | 'ask' | 'next'> {
  readonly ask: Ask;
  readonly next: readonly string[];
}

async function kept(
  id: string,
  { ask: { command, options }, ...more }: Meaning,
  { asker }: Who,
  { states, now, log }: DeskParts,
): Promise<boolean> {
  try {
    const put = states.put(id, { asker, ask: { command, options }, ...more }, { now: now(), keep_s, asker });
    return (await within(put, 500, late)) !== late;
  } catch (error) {
    log.warn({ err: error }, 'what the buttons mean could not be kept, so there are none');
    return false;
  }
}

/** A line that can be sent as it stands; a bare value is not. */
function sendable(line: string, who: Who, { commands }: DeskParts): string | undefined {
  try {
    const { command, options } = parseLine(line, commands, who);
    const shape = commands.find(({ name }) => name === command)?.options.shape ?? {};
    const whole = Object.entries(shape).every(([name, field]) => name in options || isOptional(field as never));
    return whole ? line : undefined;
  } catch (error) {
    if (error instanceof AskError) return undefined;
    throw error;
  }
}

/** Where a choice was mistyped, the choices. */
function choiceOf({ error }: Extract<Reply, { kind: 'error' }>, command: Command | undefined) {
  const field = error.option === undefined ? undefined : command?.options.shape[error.option];
  if (error.option === undefined || !field) return undefined;
  const { label, choices } = metaOf(field as never);
  return choices ? { option: error.option, label, choices } : undefined;
}
