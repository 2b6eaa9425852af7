import { answerWall, type WallAnswer } from '../../core/heat/wall-answer.ts';
import { layerHeats } from '../../core/heat/wall-limits.ts';
import type { Answer, AnswerContext } from '../command.ts';
import { largestOf, shortOf } from '../early.ts';
import { wallCard } from './answer.ts';
import { wallDoubt } from './doubt.ts';
import type { WallOptions } from './options.ts';
import type { AskedWall } from './question.ts';
import { hottestShell_K } from './words.ts';

interface Asked {
  readonly asked: AskedWall;
  readonly options: WallOptions;
  readonly context: AnswerContext;
}

/** Typical values; what can hurt by ends that no sample of the range goes beyond. */
export const plainWall = (parts: Asked): Answer => cardOf(parts, answerWall(parts.asked.question, { ranged: false }));

const cardOf = ({ asked, options, context }: Asked, answer: WallAnswer): Answer =>
  wallCard({ asked, answer, bound: boundOf(asked, answer), options, context });

/**
 * Without what a hand would go by: when it may touch the shell is told by the slow end alone. Nothing where the whole
 * answer has no range either, and so is there at once.
 */
export function earlyWall(parts: Asked): Answer | undefined {
  const answer = answerWall(parts.asked.question, { ranged: false });
  if (answer.outside_model.length > 0) return undefined;
  const { figures, ...plain } = cardOf(parts, answer);
  return shortOf({ ...plain, figures: figures.filter(({ id }) => !id.startsWith('wall.touch')) });
}

function boundOf({ question }: AskedWall, answer: WallAnswer) {
  const { firing, layers, model } = answer;
  const doubted = wallDoubt(question);
  // Outside its model a wall has no range, and the whole answer goes by the typical values too.
  if (!doubted) return { shell_K: hottestShell_K(answer), layers };
  const { low, high } = question.hot_K;
  return {
    shell_K: largestOf(doubted, 'wall.shell_peak'),
    layers: layerHeats(
      model.layers,
      [question.hot_K.typical, ...firing.interface_peaks_K],
      [
        { low, high },
        ...firing.interface_peaks_K.map((peak_K, index) => ({
          low: peak_K,
          high: largestOf(doubted, `wall.interface${index + 1}`),
        })),
      ],
    ),
  };
}
