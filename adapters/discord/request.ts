import {
  type APIApplicationCommandInteractionDataOption,
  type APIInteraction,
  type APIMessage,
  type APIModalSubmissionComponent,
  ApplicationCommandOptionType,
  ApplicationCommandType,
  ApplicationIntegrationType,
  ChannelType,
  ComponentType,
  InteractionContextType,
  InteractionType,
  MessageFlags,
  PermissionFlagsBits,
} from 'discord.js';
import type { SlashName } from './names.ts';

/** Who asks and where, in the words of commands/. */
export interface Who {
  readonly asker: string;
  readonly place: string;
  readonly guild?: string;
  readonly channel?: string;
  /** Whether the bot may write there by itself. */
  readonly writes: boolean;
  readonly mayModerate: boolean;
  /** In the bot's own messages, where nobody else reads. */
  readonly alone: boolean;
  readonly locale: string;
}

interface Base {
  readonly id: string;
  readonly token: string;
  readonly application: string;
  readonly who: Who;
}

type Options = Readonly<Record<string, string>>;

/** An interaction as plain values, however it came in: by gateway or, one day, by HTTP. */
export type Request = Base &
  (
    | { readonly kind: 'command'; readonly name: SlashName; readonly options: Options }
    | { readonly kind: 'message'; readonly label: string; readonly text: string }
    | { readonly kind: 'autocomplete'; readonly name: SlashName; readonly options: Options; readonly focused: string }
    | (Pressed & { readonly kind: 'button' })
    | (Pressed & { readonly kind: 'select'; readonly values: readonly string[] })
    | (Pressed & { readonly kind: 'modal'; readonly values: Options })
  );

interface Pressed {
  readonly customId: string;
  /** It stands on a message that only its reader sees, or comes of a form that was opened there. */
  readonly ephemeral: boolean;
}

/** Undefined for what the bot never asked for: pings, commands of other kinds. */
export function readRequest(raw: APIInteraction): Request | undefined {
  const who = whoIn(raw);
  if (!who) return undefined;
  const base: Base = { id: raw.id, token: raw.token, application: raw.application_id, who };
  switch (raw.type) {
    case InteractionType.ApplicationCommand:
    case InteractionType.ApplicationCommandAutocomplete: {
      if (raw.data.type === ApplicationCommandType.Message) {
        const { name: label, target_id, resolved } = raw.data;
        return { ...base, kind: 'message', label, text: resolved.messages[target_id]?.content ?? '' };
      }
      if (raw.data.type !== ApplicationCommandType.ChatInput) return undefined;
      const { sub, given } = givenIn(raw.data.options ?? []);
      const name: SlashName = { name: raw.data.name, ...(sub === undefined ? {} : { sub }) };
      const options = Object.fromEntries(given.map((option) => [option.name, String(option.value ?? '')]));
      if (raw.type === InteractionType.ApplicationCommand) return { ...base, kind: 'command', name, options };
      const focused = given.find((option) => option.focused)?.name;
      return focused === undefined ? undefined : { ...base, kind: 'autocomplete', name, options, focused };
    }
    case InteractionType.MessageComponent: {
      const pressed = { ...base, customId: raw.data.custom_id, ephemeral: isEphemeral(raw.message) };
      if (raw.data.component_type === ComponentType.Button) return { ...pressed, kind: 'button' };
      return 'values' in raw.data ? { ...pressed, kind: 'select', values: raw.data.values } : undefined;
    }
    case InteractionType.ModalSubmit: {
      const { custom_id: customId, components } = raw.data;
      const ephemeral = isEphemeral(raw.message);
      return { ...base, kind: 'modal', customId, ephemeral, values: modalValues(components) };
    }
    default:
      return undefined;
  }
}

const isEphemeral = (message: Pick<APIMessage, 'flags'> | undefined): boolean =>
  ((message?.flags ?? 0) & MessageFlags.Ephemeral) !== 0;

function whoIn(raw: APIInteraction): Who | undefined {
  const id = raw.member?.user.id ?? raw.user?.id;
  if (id === undefined) return undefined;
  const { guild_id: guild } = raw;
  const alone = raw.context === InteractionContextType.BotDM || (raw.context === undefined && guild === undefined);
  return {
    asker: `discord:${id}`,
    place: guild === undefined ? `discord:dm:${raw.channel?.id ?? id}` : `discord:${guild}`,
    ...(guild === undefined ? {} : { guild }),
    ...(raw.channel?.id === undefined ? {} : { channel: raw.channel.id }),
    writes: alone || (guild !== undefined && mayWrite(raw, guild)),
    mayModerate: alone || moderates(raw.member?.permissions),
    alone,
    locale: 'locale' in raw ? raw.locale : 'en-US',
  };
}

/** Of a member of the server; who brought the bot along by their own installation has not brought it in. */
function mayWrite({ app_permissions, authorizing_integration_owners: owners, channel }: APIInteraction, guild: string) {
  if (owners?.[ApplicationIntegrationType.GuildInstall] !== guild) return false;
  const isThread = channel !== undefined && threads.includes(channel.type ?? ChannelType.GuildText);
  const needed =
    (isThread ? PermissionFlagsBits.SendMessagesInThreads : PermissionFlagsBits.SendMessages) |
    PermissionFlagsBits.EmbedLinks;
  const may = BigInt(app_permissions ?? '0');
  return (may & PermissionFlagsBits.Administrator) !== 0n || (may & needed) === needed;
}

const threads: readonly ChannelType[] = [
  ChannelType.AnnouncementThread,
  ChannelType.PublicThread,
  ChannelType.PrivateThread,
];

const moderators = PermissionFlagsBits.Administrator | PermissionFlagsBits.ManageGuild;
const moderates = (permissions = '0'): boolean => (BigInt(permissions) & moderators) !== 0n;

type Given = readonly APIApplicationCommandInteractionDataOption[];
type Typed = { readonly name: string; readonly value?: unknown; readonly focused?: boolean };

/** Options as they come: bare, or inside the one subcommand that was chosen. */
function givenIn(options: Given): { readonly sub: string | undefined; readonly given: readonly Typed[] } {
  const [first] = options;
  if (first?.type !== ApplicationCommandOptionType.Subcommand) return { sub: undefined, given: options };
  return { sub: first.name, given: first.options ?? [] };
}

/** Fields as they come: in labels, or in the rows of forms that were open before there were labels. */
const modalValues = (components: readonly APIModalSubmissionComponent[]): Options =>
  Object.fromEntries(
    components
      .flatMap((one) => ('components' in one ? one.components : 'component' in one ? [one.component] : []))
      .flatMap((one) => ('value' in one && typeof one.value === 'string' ? [[one.custom_id, one.value]] : [])),
  );
