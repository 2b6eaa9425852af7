import { setTimeout as sleep } from 'node:timers/promises';
import { type APIInteraction, DiscordAPIError } from 'discord.js';
import { beforeEach, describe, expect, test } from 'vitest';
import type { Reply } from '../../commands/card.ts';
import { inProcessMemory } from '../../commands/memory.ts';
import { commands } from '../../commands/registry.ts';
import { sampleCard } from '../terminal/sample-card.ts';
import { createDesk, type DeskParts } from './desk.ts';
import type { Door } from './door.ts';
import type { Message } from './message/payload.ts';

/** What the asker sees, in order, each as what was done and the first words of it. */
let seen: string[];
let faults: unknown[];
const words = ({ embeds }: Message) => embeds[0]?.description ?? '';
const door: Door = {
  first: async (_to, first) => void seen.push(`first ${'message' in first ? words(first.message) : first.kind}`),
  edit: async (_to, message) => void seen.push(`edit ${words(message)}`),
  remove: async () => void seen.push('remove'),
  followUp: async (_to, message) => void seen.push(`follow ${words(message)}`),
  call: async (_asker, _channel, message) => void seen.push(`call ${words(message)}`),
};
const saying = (headline: string) => ({ ...sampleCard, headline });
const final: Reply = { kind: 'card', card: saying('whole') };

/** When something happens: at once, once so many messages are seen, or never. Nothing here depends on a busy machine's clock. */
type When = number | 'never';
const seenAre = async (count: number) => {
  while (seen.length < count) await sleep(2);
};

const answering =
  (early_at: When, end_at: number, end: Reply | Error): DeskParts['answer'] =>
  async (_ask, _who, early) => {
    if (early_at !== 'never') {
      await seenAre(early_at);
      early?.(saying('typical'));
    }
    await seenAre(end_at);
    if (end instanceof Error) throw end;
    return end;
  };

const desk = (answer: DeskParts['answer'], more: Partial<DeskParts> = {}) =>
  createDesk({
    door,
    commands,
    answer,
    picture: async () => undefined,
    memory: inProcessMemory(),
    states: { put: async () => {}, get: async () => undefined },
    handled: { first: async () => true },
    budget: { take: () => ({ wait_s: 0 }) },
    now: () => new Date(),
    log: { info: () => {}, warn: () => {}, error: (about) => void faults.push(about) },
    early_ms: 5,
    defer_ms: 60_000,
    ...more,
  });

let count = 0;
const wall = () =>
  ({
    id: String(++count),
    application_id: '1',
    type: 2,
    token: 'secret',
    guild_id: '7',
    channel: { id: '8' },
    context: 0,
    locale: 'en-US',
    member: { user: { id: '9' }, permissions: '0' },
    data: { type: 1, name: 'wall', options: [{ type: 3, name: 'layers', value: '2 in perlite' }] },
  }) as unknown as APIInteraction;

beforeEach(() => {
  [seen, faults] = [[], []];
});

describe('typical values, while the whole answer is worked out', () => {
  test('stand first, and give way to the whole answer', async () => {
    await desk(answering(0, 1, final)).handle(wall());
    expect(seen).toEqual(['first **typical**', 'edit **whole**']);
  });

  test('are not shown where the whole answer is there soon enough', async () => {
    await desk(answering(0, 0, final), { early_ms: 60_000 }).handle(wall());
    expect(seen).toEqual(['first **whole**']);
  });

  test('come into a deferral where they took long themselves', async () => {
    await desk(answering(1, 2, final), { defer_ms: 10 }).handle(wall());
    expect(seen).toEqual(['first defer', 'edit **typical**', 'edit **whole**']);
  });

  test('are never there for an answer that has none', async () => {
    await desk(answering('never', 1, final), { defer_ms: 10 }).handle(wall());
    expect(seen).toEqual(['first defer', 'edit **whole**']);
  });

  test('give way to a word that it went wrong, and to an asker’s mistake, in the same place', async () => {
    await desk(answering(0, 1, new RangeError('no room'))).handle(wall());
    expect(seen[0]).toBe('first **typical**');
    expect(seen[1]).toMatch(/^edit .*went wrong here/);
    expect(seen).toHaveLength(2);
    expect(faults).toHaveLength(1);
    const error = { code: 'unfit', what: 'too hot', expected: 'less', example: 'mix 30 L' } as const;
    seen = [];
    await desk(answering(0, 1, { kind: 'error', error, cautions: [] })).handle(wall());
    expect(seen).toEqual(['first **typical**', expect.stringMatching(/^edit .*[Tt]oo hot/)]);
  });

  test('are let go where the platform will not have them', async () => {
    const refused = new DiscordAPIError({ code: 50035, message: 'Invalid Form Body' }, 50035, 400, 'POST', '', {});
    let tries = 0;
    const choosy: Door = {
      ...door,
      first: async (to, first) => {
        tries += 1;
        if (tries === 1) throw refused;
        return door.first(to, first);
      },
    };
    await desk(answering(0, 1, final), { door: choosy }).handle(wall());
    expect(seen).toEqual(['first defer', 'edit **whole**']);
  });
});
