import type { APIInteraction } from 'discord.js';
import { describe, expect, test } from 'vitest';
import { askOf } from '../../adapters/discord/ask.ts';
import { composed } from '../../adapters/discord/compose.ts';
import type { DeskParts } from '../../adapters/discord/desk.ts';
import { slashLine } from '../../adapters/discord/manner.ts';
import type { Message } from '../../adapters/discord/message/payload.ts';
import { commandOf, slashName } from '../../adapters/discord/names.ts';
import { readRequest } from '../../adapters/discord/request.ts';
import { addressed, saidIn } from '../../adapters/matrix/read.ts';
import { renderReply as matrixReply } from '../../adapters/matrix/render.ts';
import { renderReply as terminalReply } from '../../adapters/terminal/render.ts';
import { sampleCard, worstCautions } from '../../adapters/terminal/sample-card.ts';
import { answerAsk, answerLine } from '../../commands/answer.ts';
import type { Reply } from '../../commands/card.ts';
import type { Ask, Command } from '../../commands/command.ts';
import { parseLine } from '../../commands/grammar.ts';
import { inProcessMemory, type Memory } from '../../commands/memory.ts';
import { commands } from '../../commands/registry.ts';
import { formatFigure } from '../../core/quantity/format.ts';

/** One asker in one place at one moment, whatever brought the question. */
const who = { asker: 'tester', place: 'test' };
const now = new Date('2026-01-01T12:00:00Z');

/** What some examples speak of: a last question, builds, a price, a build somebody shared. */
const before = [
  'mix 30 L',
  'build save club lining',
  'build save club lining for=(mix 30 L spare=5%)',
  'build save small one for=(mix 12 L)',
  'price sand 50 lb $5',
  'log bucket 5 L mass=9.1 kg',
  'remind in 36 h weigh the lining',
  'checklist start club lining',
  'checklist tick 1.1',
];
const shared = { name: 'our lining', ask: { command: 'mix', options: { amount: '25 L' } }, revision: 1, savedAt: now };

async function context() {
  const kept = inProcessMemory();
  const memory: Memory = {
    ...kept,
    sharedBuild: async (code) => (code === 'K7M2P9QX' ? { ...shared, code } : kept.sharedBuild(code)),
  };
  for (const line of before) await answerLine(line, { ...who, now, memory });
  return { ...who, now, memory };
}

/** As somebody chooses it on Discord: options in fields of their own, over the wire as the platform sends them. */
function throughDiscord({ command: name, options }: Ask): Ask {
  const command = commands.find((one) => one.name === name) as Command;
  const slash = slashName(command, commands);
  const fields = Object.entries(options).map(([option, value]) => ({ type: 3, name: option, value }));
  const raw = {
    id: '1',
    token: 't',
    application_id: '2',
    type: 2,
    guild_id: '3',
    member: { user: { id: '4' }, permissions: '0' },
    data: {
      id: '5',
      type: 1,
      name: slash.name,
      options: slash.sub === undefined ? fields : [{ type: 1, name: slash.sub, options: fields }],
    },
  };
  const request = readRequest(raw as unknown as APIInteraction);
  if (request?.kind !== 'command') throw new Error('no command came of it');
  const meant = commandOf(request.name, commands);
  if (!meant) throw new Error(`no command of the name ${JSON.stringify(request.name)}`);
  return { ...askOf(meant, request.options, request.who, commands), ...who };
}

/** As somebody writes it in a Matrix room of several. */
function throughMatrix(line: string): Ask {
  const said = saidIn({ type: 'm.room.message', content: { msgtype: 'm.text', body: `!teemer ${line}` } });
  const asked = said?.kind === 'text' ? addressed(said.text, { prefix: '!teemer', names: ['Teemer'] }) : undefined;
  return parseLine(asked ?? '', commands, who);
}

/** What a reader sees, without the signs that keep it from being taken for formatting. */
const bare = (text: string) => text.replace(/[\\\u200b*]/g, '').replace(/\s+/g, ' ');

const discordText = ({ content = '', embeds, files }: Message) =>
  [
    content,
    ...embeds.flatMap(({ description = '', fields = [] }) => [
      description,
      ...fields.flatMap(({ name, value }) => [name, value]),
    ]),
    // What has no room stands in the file beside it.
    ...files.filter(({ name }) => name.endsWith('.txt')).map(({ bytes }) => new TextDecoder().decode(bytes)),
  ].join('\n');

const fromHtml = (html: string) =>
  html
    .replace(/<br>|<\/(?:td|th|p|li|tr)>/g, ' ')
    .replace(/<[^>]+>/g, '')
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&quot;/g, '"')
    .replace(/&#39;/g, "'")
    .replace(/&amp;/g, '&');

/** What is seen at once, and what is seen of it where all of it is asked for. */
interface Shown {
  readonly first: string;
  readonly whole: string;
}
const atOnce = (text: string): Shown => ({ first: text, whole: text });

const desk = {
  commands,
  picture: async () => undefined,
  memory: inProcessMemory(),
  states: { put: async () => {}, get: async () => undefined },
  now: () => now,
  log: { info() {}, warn() {}, error() {} },
} as unknown as DeskParts;
const member = { ...who, writes: true, mayModerate: false, alone: false, locale: 'en-US' };

/** As a member gets it: of a long answer what is needed first, and the rest at its button. */
async function onDiscord(reply: Reply): Promise<Shown> {
  const ask: Ask = { command: reply.kind === 'card' ? reply.card.command : 'wall', options: {}, ...who };
  const { message } = await composed(reply, ask, member, false, desk);
  const first = discordText(message);
  if (!JSON.stringify(message.components).includes('"All figures"')) return atOnce(first);
  return { first, whole: discordText((await composed(reply, ask, member, false, desk, true)).message) };
}

const renderings: Readonly<Record<string, (reply: Reply) => Promise<Shown>>> = {
  terminal: async (reply) => atOnce(terminalReply(reply, { color: false, width: 1000 })),
  Discord: onDiscord,
  'Matrix, plain': async (reply) => atOnce(matrixReply(reply).body),
  'Matrix, HTML': async (reply) => atOnce(fromHtml(matrixReply(reply).formatted_body)),
};

const slowExample = 'flame propane';
const examples = commands.flatMap(({ examples: all }) => all.map(({ line }) => line));

/** Answered once each: some think for seconds. */
const replies = new Map<string, Promise<Reply>>();
function replyTo(line: string): Promise<Reply> {
  const reply = replies.get(line) ?? context().then((here) => answerLine(line, here));
  replies.set(line, reply);
  return reply;
}

describe.each(examples)('%s', { timeout: 120_000 }, (line) => {
  test('is the same card, however it was asked', async () => {
    const typed = await replyTo(line);
    const asked = parseLine(line, commands, who);
    expect(throughDiscord(asked)).toEqual(asked);
    expect(throughMatrix(line)).toEqual(asked);
    // Codes of chance, each time anew.
    if (['build share', 'mydata'].includes(asked.command)) return;
    // The questions are equal, and an equal question has an equal answer: what computes long shows it in one example.
    const slow = commands.find(({ name }) => name === asked.command)?.slow;
    if (slow && line !== slowExample) return;
    expect(await answerAsk(throughDiscord(asked), await context())).toEqual(typed);
    expect(await answerAsk(throughMatrix(line), await context())).toEqual(typed);
  });

  test('is rendered with its headline, every caution and every figure', async () => {
    const reply = await replyTo(line);
    if (reply.kind === 'error') return expect.fail(reply.error.what);
    const { headline, cautions, figures, units } = reply.card;
    for (const [where, rendered] of Object.entries(renderings)) {
      const shown = await rendered(reply);
      for (const text of [bare(shown.first), bare(shown.whole)]) {
        expect(text, where).toContain(bare(headline));
        for (const { text: caution } of cautions) expect(text, where).toContain(bare(caution));
      }
      const text = bare(shown.whole);
      for (const figure of figures) {
        expect(text, `${where}: ${figure.id}`).toContain(bare(figure.label));
        expect(text, `${where}: ${figure.id}`).toContain(bare(formatFigure(figure, units).lead));
      }
    }
  });
});

describe.each(Object.keys(renderings))('the worst there can be, by %s', (where) => {
  const rendered = renderings[where]!;
  test('a card keeps its headline and every caution', async () => {
    const shown = await rendered({ kind: 'card', card: { ...sampleCard, cautions: worstCautions } });
    const text = bare(shown.first);
    expect(text).toContain(bare(sampleCard.headline));
    for (const { text: caution } of worstCautions) expect(text).toContain(bare(caution));
  });

  test('an error says what, what instead, a line that works, and every caution', async () => {
    const error = {
      code: 'unfit',
      what: 'it is too hot',
      expected: 'at most 900 °C',
      example: 'wall 1 in clay',
    } as const;
    const text = bare((await rendered({ kind: 'error', error, cautions: worstCautions })).first);
    const works = where === 'Discord' ? slashLine(error.example, commands) : error.example;
    for (const part of ['t is too hot', 'at most 900 °C', works]) expect(text).toContain(part);
    for (const { text: caution } of worstCautions) expect(text).toContain(bare(caution));
  });
});
