import { type APIButtonComponent, type APIMessageTopLevelComponent, ButtonStyle, ComponentType } from 'discord.js';
import type { Card } from '../../../commands/card.ts';
import type { Command } from '../../../commands/command.ts';
import { capital } from '../../../commands/sentence.ts';
import { type ComponentId, componentId, lineId } from '../component-id.ts';
import { clipped, plain } from '../escape.ts';
import { isOneLine } from '../form.ts';
import { limits } from '../limits.ts';
import { isLong } from './card.ts';

interface CardButtons {
  readonly card: Card;
  readonly command: Command;
  /** Where nothing is kept for them, lines stand in the ids themselves. */
  readonly state: string | undefined;
  readonly ephemeral: boolean;
  /** Nobody else reads here, so there is nothing to share and nothing to hide. */
  readonly alone: boolean;
  /** Everything is shown already. */
  readonly all: boolean;
}

/** The follow-up questions that are shown as buttons: the working has one of its own. */
export const nextOf = ({ next }: Pick<Card, 'next'>) =>
  next.filter(({ line }) => line !== 'why').slice(0, limits.buttonsInRow);

const repeats = ({ passing, private: own }: Command): boolean => !passing && !own;

/** Whether a button shows what a long answer leaves out at first. */
export const offersAll = (card: Card, command: Command): boolean => isLong(card) && repeats(command);

export function cardButtons({ card, command, state, ephemeral, alone, all }: CardButtons) {
  const other = card.units === 'US' ? 'metric' : 'US';
  const asks = nextOf(card).flatMap(({ label, line, forAll: open = false }, at) => {
    const id = state === undefined ? lineId(line, { open }) : componentId('next', state, at);
    return id === undefined ? [] : [button(label === '' ? line : capital(label), id, ButtonStyle.Primary)];
  });
  const turns =
    state !== undefined && repeats(command)
      ? [
          ...(offersAll(card, command) && !all ? [button('All figures', ['all', state])] : []),
          ...(card.working.length > 0 ? [button('Show the working', ['working', state])] : []),
          ...(card.figures.length > 0
            ? [button(other === 'US' ? 'In US units' : 'In metric', ['units', state, other])]
            : []),
          ...(isOneLine(command) ? [] : [button('Change', ['change', state])]),
          ...(alone ? [] : [ephemeral ? button('Share', ['share', state]) : button('For me only', ['only-me', state])]),
        ]
      : [];
  return [...rowOf(asks), ...rowOf(turns)];
}

interface ErrorButtons {
  readonly state: string;
  /** A line that works, where there is one. */
  readonly tryLine?: string | undefined;
  readonly command?: Command | undefined;
  /** The option that was wrong, where it has a list to choose from. */
  readonly choose?:
    | { readonly option: string; readonly label: string; readonly choices: readonly string[] }
    | undefined;
}

export function errorButtons({ state, tryLine, command, choose }: ErrorButtons) {
  const buttons = [
    ...(tryLine === undefined ? [] : [button(`Try: ${tryLine}`, ['next', state, 0], ButtonStyle.Primary)]),
    ...(command && !isOneLine(command) && Object.keys(command.options.shape).length > 0
      ? [button('Change', ['change', state])]
      : []),
  ];
  const menu: readonly APIMessageTopLevelComponent[] = choose
    ? [
        {
          type: ComponentType.ActionRow,
          components: [
            {
              type: ComponentType.StringSelect,
              custom_id: componentId('choose', state, choose.option),
              placeholder: clipped(plain(choose.label), limits.placeholder),
              options: choose.choices
                .slice(0, limits.selectOptions)
                .map((choice) => ({ label: clipped(choice, limits.choice), value: clipped(choice, limits.choice) })),
            },
          ],
        },
      ]
    : [];
  return [...menu, ...rowOf(buttons)];
}

function button(
  label: string,
  id: string | readonly [ComponentId['verb'], string, (string | number)?],
  style: ButtonStyle.Primary | ButtonStyle.Secondary = ButtonStyle.Secondary,
): APIButtonComponent {
  return {
    type: ComponentType.Button,
    style,
    label: clipped(plain(label), limits.buttonLabel),
    custom_id: typeof id === 'string' ? id : componentId(...id),
  };
}

const rowOf = (components: APIButtonComponent[]): readonly APIMessageTopLevelComponent[] =>
  components.length === 0 ? [] : [{ type: ComponentType.ActionRow, components }];
