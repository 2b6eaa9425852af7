import type { Ask } from '../../commands/command.ts';
import { parseLine } from '../../commands/grammar.ts';
import { type ComponentId, componentId, forAll, readComponentId } from './component-id.ts';
import { planFor } from './compose.ts';
import type { DeskParts } from './desk.ts';
import { asTyped, changeable, inFields } from './form.ts';
import { saying } from './message/error.ts';
import { filled, modalOf } from './message/modal.ts';
import type { Plan } from './plan.ts';
import type { Request, Who } from './request.ts';
import { planReading } from './slash.ts';
import { type ButtonState, readState } from './state.ts';
import { within } from './within.ts';

type Press = Extract<Request, { kind: 'button' | 'select' | 'modal' }>;

/** A button, a menu or a form. What it stands for is in its id or in the store, so a restart changes nothing. */
export async function answerPress(request: Press, parts: DeskParts): Promise<Plan> {
  const id = readComponentId(request.customId);
  if (!id) return word('old component', tooOld);
  if (id.verb === 'filled' && request.kind === 'modal') return filledForm(id, request, parts);
  if (id.verb === 'line') return ownLine(id, request, parts);
  const state = await within(readState(parts.states, id.state, parts.now()), 500, 'late' as const).catch((error) => {
    parts.log.warn({ err: error }, 'what a button means could not be read');
    return 'late' as const;
  });
  if (state === 'late')
    return word('old component', 'I can’t look up what this stands for just now. Try it again in a minute.');
  return state ? pressed(id, state, request, parts) : word('old component', tooOld);
}

const tooOld =
  'This is from too long ago, or from an earlier version of me: I no longer know what it stands for. Ask again.';

function pressed(
  { verb, state: stateId, argument }: ComponentId,
  state: ButtonState,
  request: Press,
  parts: DeskParts,
): Plan {
  const { who } = request;
  // What comes of a private answer is private until it is shared.
  const ephemeral = request.ephemeral && !state.open;
  const ask = asOf(state, who);
  const mine = state.asker === who.asker;
  const changed = (options: Ask['options']): Ask => ({ ...ask, options });
  // What is pressed is what `last` means from now on.
  const before = async () => {
    if (state.answered) await parts.memory.rememberAsk(ask);
  };
  switch (verb) {
    case 'next':
      return nextLine(state.next[Number(argument)], { about: ask, before, ephemeral, who, parts });
    case 'working':
      return planFor({ ...ask, command: 'why', options: {} }, who, parts, { before, ephemeral: !who.alone });
    case 'all':
      return planFor(ask, who, parts, { before, ephemeral: !who.alone, all: true });
    case 'units': {
      const turned = changed({ ...ask.options, units: argument });
      return planFor(turned, who, parts, mine ? { into: 'same', ephemeral } : { ephemeral: true });
    }
    case 'share':
      return planFor(ask, who, parts);
    case 'only-me':
      if (!mine) return word(ask.command, 'Only who asked can take an answer back. Ask it yourself to have your own.');
      return planFor(ask, who, parts, { into: 'private', ephemeral: true });
    case 'change':
      return changeForm(stateId, ask, parts);
    case 'changed': {
      const values = request.kind === 'modal' ? request.values : {};
      const command = parts.commands.find(({ name }) => name === ask.command);
      if (!command) return word(ask.command, tooOld);
      const others = Object.entries(inFields(command, ask.options)).filter(([name]) => !(name in values));
      const options = asTyped(command, { ...Object.fromEntries(others), ...filled(values) });
      return planFor(changed(options), who, parts, { ephemeral });
    }
    case 'choose': {
      const [chosen] = request.kind === 'select' ? request.values : [];
      const options = { ...ask.options, ...(chosen === undefined ? {} : { [argument]: chosen }) };
      return planFor(changed(options), who, parts, { ephemeral });
    }
    case 'line':
    case 'filled':
      return word('old component', tooOld);
  }
}

const asOf = ({ ask }: ButtonState, { asker, place }: Who): Ask => ({ ...ask, asker, place });

interface Next {
  readonly about: Ask;
  readonly before?: () => Promise<void>;
  readonly ephemeral: boolean;
  readonly who: Who;
  readonly parts: DeskParts;
}

function nextLine(line: string | undefined, { about, who, parts, ...how }: Next): Plan {
  if (line === undefined) return word('old component', tooOld);
  return planReading(() => parseLine(line, parts.commands, who), about, who, parts, how);
}

/** A line that stands in the id itself: of messages that come by themselves, and of what somebody else wrote. */
function ownLine({ argument: line, state }: ComponentId, { who, ...request }: Press, parts: DeskParts): Plan {
  const { asker, place } = who;
  const [command = ''] = line.split(' ', 1);
  const ephemeral = request.ephemeral && state !== forAll;
  return nextLine(line, { about: { command, options: {}, asker, place }, ephemeral, who, parts });
}

function filledForm({ state: name }: ComponentId, request: Extract<Press, { kind: 'modal' }>, parts: DeskParts): Plan {
  const command = parts.commands.find((one) => one.name === name);
  if (!command) return word('old component', tooOld);
  const { asker, place } = request.who;
  return planFor({ command: name, options: filled(request.values), asker, place }, request.who, parts);
}

function changeForm(state: string, ask: Ask, { commands }: DeskParts): Plan {
  const command = commands.find(({ name }) => name === ask.command);
  if (!command) return word(ask.command, tooOld);
  const given = inFields(command, ask.options);
  const names = changeable(command, given);
  const modal = modalOf({ id: componentId('changed', state), command, names, given });
  return { kind: 'modal', command: command.name, modal };
}

const word = (command: string, what: string): Plan => ({
  kind: 'answer',
  command,
  ephemeral: true,
  into: 'new',
  cautions: () => [],
  work: async () => ({ message: saying(what), ephemeral: true, refused: true }),
});
