import type { Commands } from './commands.ts';
import type { Gateway } from './gateway.ts';
import { callbackType, type Interactions } from './interactions.ts';
import { bodyFaults, callFaults, flag, type MessageBody, messageFaults } from './judge-message.ts';
import type { Kept, Messages } from './messages.ts';
import { type Court, refuse } from './refusal.ts';
import type { Routes } from './rest.ts';
import type { Sight } from './seen.ts';
import { schemaFaults } from './strict.ts';
import { channelObject, type Place, type World } from './world.ts';

export function routesOf(given: {
  readonly world: World;
  readonly court: Court;
  readonly commands: Commands;
  readonly interactions: Interactions;
  readonly messages: Messages;
  readonly gateway: () => Gateway;
  /** Makes what the members of a place see when the bot writes there by itself. */
  readonly sight: (place: Place) => Sight;
}): Routes {
  const { world, court, commands, interactions, messages } = given;

  const own = (application: string | undefined) => {
    if (application !== world.applicationId) throw refuse.notFound();
  };
  const guild = (id: string | undefined) => {
    if (!world.guilds.some((each) => each.id === id)) throw refuse.notFound();
    return { guild: id! };
  };
  const channel = (id: string | undefined) => {
    const place = world.channel(id ?? '');
    const { gone, shut } = world.doors;
    if (gone.has(id ?? '')) throw refuse.unknownChannel();
    if (shut.has(id ?? '')) throw refuse.missingAccess();
    if (place) return place;
    court.note(`channel ${id} is not one the bot can write into`);
    throw refuse.unknownChannel();
  };
  const localized = (query: URLSearchParams) => query.get('with_localizations') === 'true';
  const ok = (body: unknown) => ({ status: 200, body });
  const nothing = { status: 204 };

  function ownMessage(channelId: string | undefined, id: string | undefined): Kept {
    const kept = messages.find(id ?? '');
    if (!kept || kept.view.channelId !== channelId || kept.view.ephemeral) throw refuse.unknownMessage();
    return kept;
  }

  function judge(
    what: string,
    body: MessageBody,
    files: Parameters<typeof messageFaults>[0]['files'],
    before?: Kept,
  ): void {
    const kept = before?.view.attachments ?? [];
    court.demand(what, messageFaults({ body, files, before: kept, edit: before !== undefined }));
    court.demand(what, (body.flags ?? 0) & flag.ephemeral ? ['only an answer can be ephemeral'] : []);
    for (const fault of callFaults(body)) court.note(`${what}: ${fault}`);
  }

  return {
    'GET /gateway': () => ok({ url: given.gateway().url() }),
    'GET /gateway/bot': () => ok(given.gateway().information()),
    'GET /users/@me': () => ok(world.bot),
    'GET /users/:user': (_, id = '') => {
      const user = world.userById(id);
      if (!user) throw refuse.notFound();
      return ok(user);
    },
    'GET /applications/@me': () => ok(application()),
    'GET /oauth2/applications/@me': () => ok(application()),

    'GET /applications/:application/commands': ({ query }, id) => {
      own(id);
      return ok(commands.list('global', localized(query)));
    },
    'PUT /applications/:application/commands': ({ body }, id) => {
      own(id);
      return ok(commands.overwrite('global', body));
    },
    'POST /applications/:application/commands': ({ body }, id) => {
      own(id);
      const { command, isNew } = commands.create('global', body);
      return { status: isNew ? 201 : 200, body: command };
    },
    'GET /applications/:application/commands/:command': (_, id, command = '') => {
      own(id);
      return ok(commands.get('global', command));
    },
    'PATCH /applications/:application/commands/:command': ({ body }, id, command = '') => {
      own(id);
      return ok(commands.patch('global', command, body));
    },
    'DELETE /applications/:application/commands/:command': (_, id, command = '') => {
      own(id);
      commands.remove('global', command);
      return nothing;
    },
    'GET /applications/:application/guilds/:guild/commands': ({ query }, id, where) => {
      own(id);
      return ok(commands.list(guild(where), localized(query)));
    },
    'PUT /applications/:application/guilds/:guild/commands': ({ body }, id, where) => {
      own(id);
      return ok(commands.overwrite(guild(where), body));
    },
    'POST /applications/:application/guilds/:guild/commands': ({ body }, id, where) => {
      own(id);
      const { command, isNew } = commands.create(guild(where), body);
      return { status: isNew ? 201 : 200, body: command };
    },
    'GET /applications/:application/guilds/:guild/commands/:command': (_, id, where, command = '') => {
      own(id);
      return ok(commands.get(guild(where), command));
    },
    'PATCH /applications/:application/guilds/:guild/commands/:command': ({ body }, id, where, command = '') => {
      own(id);
      return ok(commands.patch(guild(where), command, body));
    },
    'DELETE /applications/:application/guilds/:guild/commands/:command': (_, id, where, command = '') => {
      own(id);
      commands.remove(guild(where), command);
      return nothing;
    },

    'POST /interactions/:id/:token/callback': ({ body, files, query, unheard }, id = '', token = '') => {
      const interaction = interactions.callback(id, token, body, files);
      if (unheard) interaction.unheard = true;
      if (query.get('with_response') !== 'true') return nothing;
      const type = interaction.acknowledged!;
      const made = interaction.original;
      const shown = made && type !== callbackType.deferredUpdate;
      return ok({
        interaction: {
          id,
          type: interaction.type,
          ...(shown
            ? {
                response_message_id: made.view.id,
                response_message_loading: made.view.loading,
                response_message_ephemeral: made.view.ephemeral,
              }
            : {}),
        },
        // A deferral has made a message too: the schema knows 4 for a new one and 7 for one that was updated.
        ...(shown
          ? {
              resource: {
                type: type === callbackType.update ? callbackType.update : callbackType.message,
                message: messages.wire(made),
              },
            }
          : {}),
      });
    },
    'POST /webhooks/:application/:token': ({ body, files }, id, token = '') => {
      own(id);
      return ok(messages.wire(interactions.followUp(token, body, files)));
    },
    'GET /webhooks/:application/:token/messages/:message': (_, id, token = '', which = '') => {
      own(id);
      return ok(messages.wire(interactions.message(token, which)));
    },
    'PATCH /webhooks/:application/:token/messages/:message': ({ body, files }, id, token = '', which = '') => {
      own(id);
      return ok(messages.wire(interactions.edit(token, which, body, files)));
    },
    'DELETE /webhooks/:application/:token/messages/:message': ({ unheard }, id, token = '', which = '') => {
      own(id);
      interactions.remove(token, which, { unheard });
      return nothing;
    },

    'POST /users/@me/channels': ({ body }) => {
      court.demand('direct messages', schemaFaults('CreatePrivateChannelRequest', body));
      const place = world.directChannel(String((body as { recipient_id?: string }).recipient_id));
      if (!place) throw refuse.form(['recipient_id: nobody of that id']);
      return ok(channelObject(place, world));
    },
    'GET /channels/:channel': (_, id) => ok(channelObject(channel(id), world)),
    'GET /channels/:channel/messages': ({ query }, id) => {
      const { channelId } = channel(id);
      // Who may not read what was said before is given nothing, and not told so.
      if (world.doors.unread.has(channelId)) return ok([]);
      const [after, before] = [BigInt(query.get('after') ?? 0), query.get('before')];
      const all = messages
        .inChannel(channelId)
        .filter(({ view }) => BigInt(view.id) > after && (before === null || BigInt(view.id) < BigInt(before)));
      return ok(all.slice(0, Number(query.get('limit') ?? 50)).map(messages.wire));
    },
    'POST /channels/:channel/messages': ({ body: raw, files }, id) => {
      const place = channel(id);
      if (world.doors.closed.has(place.member?.id ?? '')) throw refuse.closedDirect();
      const what = `message into ${place.name}`;
      court.demand(what, bodyFaults('MessageCreateRequest', raw));
      const body = raw as MessageBody;
      judge(what, body, files);
      const again = body.enforce_nonce ? messages.byNonce(body.nonce, place.channelId) : undefined;
      if (again) return ok(messages.wire(again));
      const sight = given.sight(place);
      const kept = messages.create({ place, body, files, sight });
      sight.change({ state: 'answered' });
      const wire = messages.wire(kept);
      given.gateway().dispatch({ t: 'MESSAGE_CREATE', d: wire, ...(place.guildId ? { guild: place.guildId } : {}) });
      return ok(wire);
    },
    'GET /channels/:channel/messages/:message': (_, id, which) =>
      ok(messages.wire(ownMessage(channel(id).channelId, which))),
    'PATCH /channels/:channel/messages/:message': ({ body, files }, id, which) => {
      const place = channel(id);
      const kept = ownMessage(place.channelId, which);
      const what = `edit in ${place.name}`;
      court.demand(what, bodyFaults('MessageEditRequestPartial', body));
      judge(what, body as MessageBody, files, kept);
      messages.edit(kept, body as MessageBody, files);
      return ok(messages.wire(kept));
    },
    'DELETE /channels/:channel/messages/:message': (_, id, which) => {
      messages.remove(ownMessage(channel(id).channelId, which));
      return nothing;
    },
  };

  function application(): unknown {
    const { applicationId: id, bot } = world;
    return {
      id,
      name: bot.username,
      icon: null,
      description: '',
      bot,
      bot_public: true,
      flags: 0,
      verify_key: '0'.repeat(64),
    };
  }
}
