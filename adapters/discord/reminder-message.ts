import { type APIEmbed, type APIMessageTopLevelComponent, ButtonStyle, ComponentType } from 'discord.js';
import type { Said } from '../../commands/remind/due.ts';
import { capital } from '../../commands/sentence.ts';
import { lineId } from './component-id.ts';
import { clipped, escapedTo, plain } from './escape.ts';
import { limits } from './limits.ts';
import { cautionFields, cautionLines, colourOf, type Reasons, whatCanHurt } from './message/cautions.ts';
import { fieldsOf, listed, packed, unnamed } from './message/chunks.ts';
import { bodyOf } from './message/payload.ts';
import { fits, spread } from './message/spread.ts';

interface Letter {
  readonly said: Said;
  /** Who is called, by the platform's number. */
  readonly user: string;
  readonly nonce: string;
}

/**
 * A reminder as a message of its own. It calls one person, and nothing that is echoed in it calls anybody. Cautions and
 * what must hold are always in it; where there is no room, reasons go first.
 */
export function letterBody({ said, user, nonce }: Letter) {
  const embed = reasons.map((some) => embedOf(said, some)).find(fits);
  const components = buttonsOf(said);
  if (embed) return called(bodyOf({ content: `<@${user}>`, embeds: [embed], components, files: [] }), user, nonce);
  // So many cautions that what is to be done, and what before it, stands above them.
  const { content: above, embed: rest } = spread(embedOf({ ...said, holds: [] }, 'none'));
  const room =
    Math.floor((limits.content - above.length - 60) / Math.max(1, said.holds.length)) - listed('').length - 1;
  const holds = said.holds.map((one) => listed(escapedTo(one, Math.min(250, room))));
  const content = [`<@${user}>`, above, ...(holds.length > 0 ? [holdsFirst, ...holds] : [])].join('\n');
  return called(bodyOf({ content, embeds: [rest], components, files: [] }), user, nonce);
}

/**
 * The same with nothing in it that could be refused, in as many messages as it takes: nothing that can hurt is left out.
 * The first calls, and says which reminder it is.
 */
export function plainLetterBodies({ said, user, nonce }: Letter) {
  const hurts = cautionLines(said.cautions, 'none');
  const holds = said.holds.map((one) => listed(escapedTo(one, 150)));
  const lines = [
    `<@${user}>`,
    `**${escapedTo(said.what, 600)}**`,
    ...said.remarks.map((one) => escapedTo(one, 150)),
    said.foot,
    ...(hurts.length > 0 ? [whatCanHurt, ...hurts] : []),
    ...(holds.length > 0 ? [holdsFirst, ...holds] : []),
  ];
  return packed(lines, '\n', limits.content).map((content, at) => {
    const body = bodyOf({ content, embeds: [], components: [], files: [] });
    if (at === 0) return called(body, user, nonce);
    return { ...body, nonce: `${nonce.slice(0, 22)}.${at}`, enforce_nonce: true };
  });
}

const holdsFirst = 'First make sure';

const called = (body: ReturnType<typeof bodyOf>, user: string, nonce: string) => ({
  ...body,
  allowed_mentions: { users: [user] },
  nonce,
  enforce_nonce: true,
});

const reasons: readonly Reasons[] = ['dangers', 'leads', 'none'];

function embedOf({ what, cautions, holds, remarks, foot }: Said, some: Reasons): APIEmbed {
  return {
    description: `**${escapedTo(what, 900)}**`,
    color: colourOf(cautions),
    fields: [
      ...fieldsOf(
        unnamed,
        remarks.map((one) => escapedTo(one, 300)),
      ),
      ...cautionFields(cautions, some),
      ...fieldsOf(
        holdsFirst,
        holds.map((one) => listed(escapedTo(one, 250))),
      ),
    ],
    footer: { text: plain(foot) },
  };
}

/** Their lines stand in their ids, so that nothing has to be kept for them. One that is too long for that has no button. */
function buttonsOf({ next }: Said): readonly APIMessageTopLevelComponent[] {
  const buttons = next
    .flatMap(({ label, line }) => {
      const id = lineId(line);
      return id === undefined ? [] : [{ label, id }];
    })
    .slice(0, limits.buttonsInRow)
    .map(({ label, id }) => ({
      type: ComponentType.Button as const,
      style: ButtonStyle.Secondary as const,
      label: clipped(plain(capital(label)), limits.buttonLabel),
      custom_id: id,
    }));
  return buttons.length === 0 ? [] : [{ type: ComponentType.ActionRow, components: buttons }];
}
