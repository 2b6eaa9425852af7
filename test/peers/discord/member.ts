import { randomUUID } from 'node:crypto';
import type { APIApplicationCommandBasicOption, APIApplicationCommandOption } from 'discord.js';
import type { Commands, RegisteredCommand } from './commands.ts';
import type { Gateway } from './gateway.ts';
import { type Interaction, type Interactions, interactionType } from './interactions.ts';
import { type Component, everyComponent, kind } from './judge-components.ts';
import type { Kept, Messages } from './messages.ts';
import type { Seen, Sight } from './seen.ts';
import { channelObject, nameOf, type Place, type Who, type World } from './world.ts';

export interface SlashLine {
  readonly name: string;
  readonly sub?: string;
  readonly options?: Record<string, string>;
}

/**
 * What a member can do. It is refused by an exception where the member's client would not offer it: then the test is wrong, or
 * the bot promised what is not there.
 */
export interface Member {
  slash(line: SlashLine, who?: Who): Promise<Seen>;
  autocomplete(line: SlashLine & { focused: string }, who?: Who): Promise<readonly { name: string; value: string }[]>;
  press(seen: Seen, customId: string, who?: Who): Promise<Seen>;
  select(seen: Seen, customId: string, values: readonly string[], who?: Who): Promise<Seen>;
  submit(seen: Seen, values: Record<string, string>, who?: Who): Promise<Seen>;
  /** Uses a message command on what was seen, or on what another member wrote. */
  apply(name: string, target: Seen | { readonly written: string }, who?: Who): Promise<Seen>;
}

export function memberOf(given: {
  readonly world: World;
  readonly commands: Commands;
  readonly interactions: Interactions;
  readonly messages: Messages;
  readonly gateway: () => Gateway;
  readonly sight: (place: Place, did: string) => Sight;
}): Member {
  const { world, commands, interactions, messages } = given;
  /** Who saw what, where, and by which interaction: a button is pressed where its message stands. */
  const behind = new WeakMap<Seen, { readonly who: Who; readonly interaction: Interaction }>();

  async function act(what: {
    readonly who: Who;
    readonly place: Place;
    readonly did: string;
    readonly type: number;
    readonly data: Record<string, unknown>;
    readonly source?: Kept;
  }): Promise<Seen> {
    const { who, place, type, data, source } = what;
    const sight = given.sight(place, `${nameOf(who)}: ${what.did}`);
    const { interaction, answered } = interactions.open({
      id: world.id(),
      token: randomUUID(),
      user: world.user(nameOf(who)),
      ...{ type, place, sight },
      ...(source ? { source } : {}),
    });
    behind.set(sight.seen, { who, interaction });
    const delivered = given.gateway().dispatch({
      t: 'INTERACTION_CREATE',
      d: { ...envelope(interaction, who), data, ...(source ? { message: messages.wire(source) } : {}) },
      ...(place.kind === 'guild' ? { guild: place.guildId! } : {}),
    });
    interaction.excused = delivered !== 'now';
    await answered;
    return sight.seen;
  }

  function envelope({ id, token, type, user, place }: Interaction, who: Who): Record<string, unknown> {
    const permissions = who.admin ? String(1n << 3n) : String((1n << 10n) | (1n << 11n) | (1n << 31n));
    const member = {
      user,
      permissions,
      ...{ roles: [], nick: null, avatar: null, joined_at: new Date(0).toISOString(), flags: 0 },
      ...{ deaf: false, mute: false, pending: false, premium_since: null, communication_disabled_until: null },
    };
    const context = { guild: 0, 'bot-dm': 1, 'user-install': 2 }[place.kind];
    const owners = { guild: { '0': place.guildId }, 'bot-dm': { '0': '0' }, 'user-install': { '1': user.id } };
    return {
      id,
      token,
      type,
      version: 1,
      application_id: world.applicationId,
      channel_id: place.channelId,
      channel: channelObject(place, world),
      ...(place.kind === 'guild' ? { guild_id: place.guildId, guild_locale: 'en-US', member } : { user }),
      locale: who.locale ?? 'en-US',
      app_permissions: String((1n << 11n) | (1n << 14n) | (1n << 15n)),
      entitlements: [],
      authorizing_integration_owners: owners[place.kind],
      attachment_size_limit: 10 * 2 ** 20,
      context,
    };
  }

  function demandOffered(command: RegisteredCommand, place: Place, name: string): void {
    const context = { guild: 0, 'bot-dm': 1, 'user-install': 2 }[place.kind];
    const installation = place.kind === 'user-install' ? 1 : 0;
    const contexts = command.contexts as readonly number[] | null | undefined;
    const installations = command.integration_types as readonly number[] | undefined;
    if (contexts?.includes(context) === false || installations?.includes(installation) === false) {
      throw new Error(`${name} is not offered in ${place.name}.`);
    }
  }

  function offered(line: SlashLine, place: Place): { command: RegisteredCommand; options: Options } {
    const named = commands.all.filter((each) => each.name === line.name && each.type === 1);
    const command =
      named.find((each) => each.guild_id !== undefined && each.guild_id === place.guildId) ??
      named.find((each) => each.guild_id === undefined);
    if (!command) throw new Error(`No command /${line.name} is registered.`);
    demandOffered(command, place, `/${line.name}`);
    const all = (('options' in command && command.options) || []) as readonly APIApplicationCommandOption[];
    const subs = all.filter((option) => option.type === 1);
    if (line.sub === undefined && subs.length === 0) return { command, options: all as Options };
    const sub = subs.find((option) => option.name === line.sub);
    if (!sub)
      throw new Error(`/${line.name} ${line.sub ?? ''} is not registered: ${subs.map(({ name }) => name).join(', ')}.`);
    return { command, options: (sub.options ?? []) as Options };
  }

  function commandData(line: SlashLine, place: Place, focused?: string): Record<string, unknown> {
    const { command, options } = offered(line, place);
    const typed = Object.entries(line.options ?? {}).map(([name, text]) => {
      const option = options.find((each) => each.name === name);
      if (!option) throw new Error(`/${line.name} ${line.sub ?? ''} has no option ${name}.`);
      const focus = name === focused ? { focused: true } : {};
      return { name, type: option.type, value: typedValue(option, text, focused !== undefined), ...focus };
    });
    const missing = options.filter((option) => option.required && line.options?.[option.name] === undefined);
    if (focused === undefined && missing.length > 0) {
      throw new Error(`/${line.name} ${line.sub ?? ''} needs ${missing.map(({ name }) => name).join(', ')}.`);
    }
    const values = line.sub === undefined ? typed : [{ type: 1, name: line.sub, options: typed }];
    const { id, name, type, guild_id } = command;
    return { id, name, type, options: values, ...(guild_id ? { guild_id } : {}) };
  }

  function component(seen: Seen, customId: string, type: number): { control: Component; source: Kept } {
    for (const view of seen.messages.toReversed()) {
      const control = [...everyComponent(view.components)].find((each) => each.custom_id === customId);
      const source = messages.find(view.id);
      if (control && source && control.type === type && !control.disabled) return { control, source };
    }
    const there = seen.messages.flatMap(({ components }) =>
      [...everyComponent(components)].map(({ custom_id }) => custom_id),
    );
    throw new Error(`There is no ${customId} to use. There are: ${there.filter(Boolean).join(', ') || 'none'}.`);
  }

  /** Somebody else may use what everybody sees, in the place where it stands. */
  function actor(seen: Seen, source: Kept | undefined, who: Who | undefined): { who: Who; place: Place } {
    const first = behind.get(seen);
    const place = source?.place ?? first?.interaction.place;
    if (!place) throw new Error('Nobody can use what was not seen here.');
    const user: Who = { ...first?.who, ...who };
    if (source?.view.ephemeral && first && nameOf(user) !== nameOf(first.who)) {
      throw new Error(`Only ${nameOf(first.who)} sees this message.`);
    }
    return { who: user, place };
  }

  const written = (line: SlashLine) =>
    [`/${line.name}`, line.sub, ...Object.entries(line.options ?? {}).map(([name, text]) => `${name}:${text}`)]
      .filter((part) => part !== undefined)
      .join(' ');

  return {
    slash(line, who = {}) {
      const place = world.place(who);
      const data = commandData(line, place);
      return act({ who, place, did: written(line), type: interactionType.command, data });
    },
    async autocomplete({ focused, ...line }, who = {}) {
      const place = world.place(who);
      const { options } = offered(line, place);
      const option = options.find((each) => each.name === focused);
      if (!(option && 'autocomplete' in option && option.autocomplete)) {
        throw new Error(`/${line.name} ${line.sub ?? ''} completes no option ${focused}.`);
      }
      const full = { ...line, options: { [focused]: '', ...line.options } };
      const data = commandData(full, place, focused);
      const did = `${written(full)} (typing ${focused})`;
      const seen = await act({ who, place, did, type: interactionType.autocomplete, data });
      return (seen.choices ?? []) as readonly { name: string; value: string }[];
    },
    press(seen, customId, who) {
      const { control, source } = component(seen, customId, kind.button);
      const data = { custom_id: customId, component_type: kind.button };
      const did = `presses [${control.label ?? customId}]`;
      return act({ ...actor(seen, source, who), did, type: interactionType.component, data, source });
    },
    select(seen, customId, values, who) {
      const { control, source } = component(seen, customId, kind.stringSelect);
      const known = control.options?.map((option) => option.value) ?? [];
      const strange = values.filter((value) => !known.includes(value));
      if (strange.length > 0) throw new Error(`${customId} has no option ${strange.join(', ')}.`);
      if (values.length < (control.min_values ?? 1) || values.length > (control.max_values ?? 1)) {
        throw new Error(`${customId} takes ${control.min_values ?? 1} to ${control.max_values ?? 1} values.`);
      }
      const data = { custom_id: customId, component_type: kind.stringSelect, values };
      const did = `chooses ${values.join(', ')} in [${control.placeholder ?? customId}]`;
      return act({ ...actor(seen, source, who), did, type: interactionType.component, data, source });
    },
    submit(seen, values, who) {
      if (!seen.modal) throw new Error('There is no form to send.');
      const source = behind.get(seen)?.interaction.source;
      const components = filledIn(seen.modal.components as readonly Component[], values);
      const data = { custom_id: seen.modal.custom_id, components };
      const did = `sends [${seen.modal.title}] ${JSON.stringify(values)}`;
      const type = interactionType.modal;
      return act({ ...actor(seen, source, who), did, type, data, ...(source ? { source } : {}) });
    },
    apply(name, target, who = {}) {
      const command = commands.all.find((each) => each.name === name && each.type === 3);
      if (!command) throw new Error(`No message command ${name} is registered.`);
      const place = world.place(who);
      demandOffered(command, place, name);
      const message = 'written' in target ? memberMessage(target.written, place) : botMessage(target);
      const target_id = String(message.id);
      const resolved = { messages: { [target_id]: message } };
      const data = { id: command.id, name, type: 3, target_id, resolved };
      return act({ who, place, did: `uses ${name} on a message`, type: interactionType.command, data });
    },
  };

  function botMessage(seen: Seen): Record<string, unknown> {
    const kept = messages.find(seen.messages.at(-1)?.id ?? '');
    if (!kept) throw new Error('There is no message to use it on.');
    return messages.wire(kept);
  }

  function memberMessage(content: string, place: Place): Record<string, unknown> {
    return {
      id: world.id(),
      type: 0,
      channel_id: place.channelId,
      author: world.user('bea'),
      content,
      timestamp: new Date(0).toISOString(),
      edited_timestamp: null,
      ...{ tts: false, pinned: false, mention_everyone: false, flags: 0 },
      ...{ mentions: [], mention_roles: [], attachments: [], embeds: [], components: [] },
    };
  }
}

type Options = readonly APIApplicationCommandBasicOption[];

function typedValue(
  option: APIApplicationCommandBasicOption,
  text: string,
  typing: boolean,
): string | number | boolean {
  const value = option.type === 4 || option.type === 10 ? Number(text) : option.type === 5 ? text === 'true' : text;
  if (typing) return value;
  if (Number.isNaN(value)) throw new Error(`${option.name} takes a number, not ${text}.`);
  const choices = ('choices' in option && option.choices) || [];
  if (choices.length > 0 && !choices.some((choice) => choice.value === value)) {
    throw new Error(`${option.name} has no choice ${text}.`);
  }
  if (option.type === 3) {
    const least = ('min_length' in option && option.min_length) || 0;
    const most = ('max_length' in option && option.max_length) || 6000;
    if (text.length < least || text.length > most)
      throw new Error(`${option.name} takes ${least} to ${most} characters.`);
  }
  return value;
}

/** A form's components with what was typed into them; a select takes its values between commas. */
function filledIn(components: readonly Component[], values: Record<string, string>): readonly unknown[] {
  const known = [...everyComponent(components)].flatMap(({ custom_id }) => (custom_id ? [custom_id] : []));
  const strange = Object.keys(values).filter((name) => !known.includes(name));
  if (strange.length > 0) throw new Error(`The form has no ${strange.join(', ')}: ${known.join(', ')}.`);
  let number = 0;
  const fill = (part: Component): unknown => {
    const id = ++number;
    const { type, custom_id } = part;
    if (part.component) return { type, id, component: fill(part.component) };
    if (part.components) return { type, id, components: part.components.map(fill) };
    if (!custom_id) return { type, id };
    const text = values[custom_id] ?? part.value ?? '';
    if (type !== kind.textInput) return { type, id, custom_id, values: text === '' ? [] : text.split(',') };
    const [least, most] = [part.min_length ?? 0, part.max_length ?? 4000];
    if (text === '' && part.required !== false) throw new Error(`The form needs ${custom_id}.`);
    if (text !== '' && (text.length < least || text.length > most)) {
      throw new Error(`${custom_id} takes ${least} to ${most} characters.`);
    }
    return { type, id, custom_id, value: text };
  };
  return components.map(fill);
}
