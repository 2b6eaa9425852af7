import { AskError } from '../../core/ask-error.ts';
import type { Caution } from '../../core/hazard/caution.ts';
import { mergeCautions } from '../../core/hazard/cautions.ts';
import type { Figure } from '../../core/quantity/figure.ts';
import type { Card } from '../card.ts';
import type { AnswerContext, Ask } from '../command.ts';
import { type QuestionId, questions, SKIP } from './questions.ts';

export type Told = Readonly<Partial<Record<QuestionId, string>>>;

/** What a beginner told us, with what stands in where they passed. */
export const taken = (told: Told, id: QuestionId): string | undefined =>
  told[id] === undefined || told[id] === SKIP ? questions.find((one) => one.id === id)?.otherwise : told[id];

/** A little more than a first pour takes, so that the first crucible is not outgrown in a week. */
const firstMelt = '2 kg';

/** The one question that their answers come to. */
export function sizeAsk(told: Told, { asker, place }: Pick<Ask, 'asker' | 'place'>): Ask {
  const metal = taken(told, 'metal') ?? '';
  const fuel = taken(told, 'burn') ?? '';
  const have = taken(told, 'have') ?? '';
  return have === 'nothing'
    ? { command: 'size melt', options: { melt: `${firstMelt} ${metal}`, fuel }, asker, place }
    : { command: 'size can', options: { vessel: have, metal, fuel }, asker, place };
}

export interface Planned {
  readonly size: Card;
  readonly mix: Card;
  readonly recipe: 'clay-sand' | 'castable';
  /** Why not the other. */
  readonly because: string;
  readonly cautions: readonly Caution[];
}

/** Metal this much below the lining's limit leaves room for a hot spot at the tuyere. */
const spare_dK = 50;

/** The furnace and the mix for its lining, each by its own command. Throws what either has to refuse. */
export async function planned(
  told: Told,
  { asker, place, ask }: Pick<AnswerContext, 'asker' | 'place' | 'ask'>,
): Promise<Planned> {
  const of = async (question: Ask): Promise<Card> => {
    const reply = await ask(question);
    if (reply.kind === 'error') throw new AskError(reply.error);
    return reply.card;
  };
  const here = { asker, place };
  const size = await of(sizeAsk(told, here));
  const melt = await of({ command: 'melt', options: { melt: `1 kg ${taken(told, 'metal') ?? ''}` }, ...here });
  const lining = (recipe: string) =>
    of({ command: 'mix', options: { amount: size.handsOver.amount ?? '', recipe }, ...here });
  const clay = await lining('clay-sand');
  const [limit_K, pour_K] = [amountOf(clay, 'mix.limit'), amountOf(melt, 'melt.pour')];
  const holds = limit_K !== undefined && pour_K !== undefined && limit_K >= pour_K + spare_dK;
  const recipe = holds ? 'clay-sand' : 'castable';
  const mix = holds ? clay : await lining('castable');
  const because = holds
    ? 'Rammed clay and sand stands this metal and is the cheapest lining there is; castable lasts longer.'
    : 'Castable, because clay and sand have too little to spare above the heat this metal is poured at.';
  return { size, mix, recipe, because, cautions: mergeCautions([size.cautions, mix.cautions, melt.cautions]) };
}

export const figureOf = ({ figures }: Pick<Card, 'figures'>, id: string): Figure | undefined =>
  figures.find((one) => one.id === id);

const amountOf = (card: Card, id: string): number | undefined => figureOf(card, id)?.value;
