import { DiscordAPIError, type REST } from 'discord.js';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { saidOf } from '../../commands/remind/due.ts';
import { facts } from '../../core/hazard/facts.ts';
import { schemaFaults } from '../../test/peers/discord/strict.ts';
import { readComponentId } from './component-id.ts';
import { escaped } from './escape.ts';
import { limits } from './limits.ts';
import { lengthOf } from './message/spread.ts';
import { reminderSender } from './reminder.ts';
import { letterBody, plainLetterBodies } from './reminder-message.ts';

const user = '123456789012345678';
const at = new Date('2026-11-25T18:00:00Z');
const letterOf = (what: string, holds: readonly string[], known: readonly string[]) => ({
  user,
  nonce: 'reminder:K7M2P9QX',
  said: saidOf(
    {
      id: 'K7M2P9QX',
      asker: `discord:${user}`,
      place: 'discord:1:2',
      dueAt: at,
      zone: 'America/Argentina/ComodRivadavia',
      what,
      holds,
      facts: known,
    },
    { now: new Date(at.getTime() + 40 * 86_400_000), mayBeRepeat: true },
  ),
});

function keepsLimits(letter: ReturnType<typeof letterOf>): void {
  const [plain, ...more] = plainLetterBodies(letter);
  for (const body of more) {
    expect(schemaFaults('MessageCreateRequest', body)).toEqual([]);
    expect(body.content.length).toBeLessThanOrEqual(limits.content);
    expect(body.allowed_mentions).toEqual({ parse: [] });
    expect(body.nonce.length).toBeLessThanOrEqual(25);
  }
  expect(plain!.content).toContain(letter.said.foot);
  for (const body of [letterBody(letter), plain!]) {
    expect(schemaFaults('MessageCreateRequest', body)).toEqual([]);
    expect(body.content.length).toBeLessThanOrEqual(limits.content);
    for (const embed of body.embeds) {
      expect(lengthOf(embed)).toBeLessThanOrEqual(limits.embed);
      expect(embed.fields?.length ?? 0).toBeLessThanOrEqual(limits.fields);
      for (const { name, value } of embed.fields ?? []) {
        expect(name.length).toBeLessThanOrEqual(limits.fieldName);
        expect(value.length).toBeLessThanOrEqual(limits.fieldValue);
      }
    }
    expect(body.allowed_mentions).toEqual({ users: [user] });
    expect(JSON.stringify([body.content, body.embeds]).match(/<@[!&]?\d/g)).toHaveLength(1);
    expect(String(body.nonce).length).toBeLessThanOrEqual(25);
  }
}

test('whatever it says, it keeps the limits and calls one person', () => {
  const text = (most: number) =>
    fc.string({
      unit: fc.constantFrom('a', ' ', '*', '<@1>', '@everyone', '`', '😀', '\n', '<@&7>', '_'),
      maxLength: most,
    });
  fc.assert(
    fc.property(text(400), fc.array(text(200), { maxLength: 8 }), fc.subarray([...facts]), (what, holds, some) => {
      keepsLimits(letterOf(what === '' ? 'x' : what, holds, some));
    }),
    { numRuns: 60 },
  );
});

test('with everything that can hurt at once there is room for each caution and each hold', () => {
  const holds = Array.from({ length: 6 }, (_, n) => `hold ${n}: ${'w'.repeat(80)}`);
  const letter = letterOf('light the fire '.repeat(20), holds, facts);
  keepsLimits(letter);
  const body = letterBody(letter);
  const shown = JSON.stringify([body.content, body.embeds]);
  for (const hold of holds) expect(shown).toContain(hold);
  for (const { text } of letter.said.cautions) expect(shown).toContain(JSON.stringify(text).slice(1, 20));
  const plainly = plainLetterBodies(letter)
    .map(({ content }) => content)
    .join('\n');
  for (const part of [...holds, ...letter.said.cautions.map(({ text }) => escaped(text))])
    expect(plainly).toContain(part);
});

test('said plainly, what is to be done, what can hurt and what must hold are one message', () => {
  const bodies = plainLetterBodies(
    letterOf('light the small fire', ['someone stays with it'], ['hot-work', 'charcoal']),
  );
  expect(bodies).toHaveLength(1);
  expect(bodies[0]?.content).toMatch(/light the small fire.*What can hurt\n- .*First make sure\n- someone stays/s);
});

test('one that is refused as it was is sent plainly, with what can hurt', async () => {
  const refused = new DiscordAPIError({ code: 50035, message: 'Invalid Form Body' }, 50035, 400, 'POST', '', {});
  const bodies: { content: string }[] = [];
  const post = async (_route: string, { body }: { body: { content: string } }) => {
    if (bodies.push(body) === 1) throw refused;
  };
  const send = reminderSender({ rest: { post } as unknown as REST, now: () => at, log: { warn() {} } });
  const reminder = { id: 'K7M2P9QX', asker: `discord:${user}`, place: 'discord:1:2', dueAt: at, zone: 'UTC' };
  const due = { reminder: { ...reminder, what: 'light the fire', holds: [], facts }, key: 'reminder:K7M2P9QX' };
  expect(await send(due)).toEqual({ kind: 'sent' });
  const said = bodies
    .slice(1)
    .map(({ content }) => content)
    .join('\n');
  for (const { text } of saidOf(due.reminder, { now: at, mayBeRepeat: false }).cautions)
    expect(said).toContain(escaped(text));
});

test('a line that has room in a button is one, a longer one is none', () => {
  const [row] = letterBody(letterOf('weigh: the lining', [], [])).components as unknown as {
    components: { custom_id: string }[];
  }[];
  expect(readComponentId(row?.components[0]?.custom_id ?? '')).toMatchObject({
    verb: 'line',
    argument: 'remind in 1 h weigh: the lining',
  });
  expect(letterBody(letterOf('w'.repeat(100), [], [])).components).toEqual([]);
});
