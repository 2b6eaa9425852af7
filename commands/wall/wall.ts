import { answerWall } from '../../core/heat/wall-answer.ts';
import type { Command } from '../command.ts';
import { calibrated } from '../log/measured.ts';
import { wallCard } from './answer.ts';
import { wallDoubt } from './doubt.ts';
import { earlyWall, plainWall } from './early.ts';
import { wallFigures } from './figures.ts';
import { byReadings } from './log.ts';
import { wallOptions } from './options.ts';
import { askedWall } from './question.ts';

export const wall = {
  name: 'wall',
  summary: 'One firing of a lining: how hot the shell gets, when it can be touched, what the wall stores.',
  options: wallOptions,
  subject: 'layers',
  alternatives: [[['hot'], ['metal']]],
  examples: [
    {
      line: 'wall 1 in castable; 2.5 in perlite hot=1000 °C ramp=40 min hold=1 h finish=painted',
      says: 'a wall of two layers, hot side first',
    },
    { line: 'wall 1.5 in clay-sand lining; 2 in vermiculite metal=aluminium', says: 'as hot as a metal asks for' },
    {
      line: 'wall 40 mm clay-sand lining; 60 mm vermiculite damp=6% ramp=6 h',
      says: 'a damp lining on its first fire',
    },
    { line: 'wall 2 in fibre blanket after=lid off 30 min wind=breezy', says: 'the lid put on half an hour later' },
  ],
  hazards: ['hot-work'],
  figures: wallFigures,
  slow: true,
  async answer(options, context) {
    const asked = askedWall(options, context.units);
    if (context.plain) return plainWall({ asked, options, context });
    const first = context.early && !context.measured && earlyWall({ asked, options, context });
    if (first) context.early?.(first);
    const found = byReadings(asked.question, context.measured);
    const answer = answerWall(asked.question, found ? { moved: found.draw } : {});
    return calibrated(wallCard({ asked, answer, options, context }), found, context.units);
  },
  async doubt(options, { units }) {
    return wallDoubt(askedWall(options, units).question);
  },
} satisfies Command<typeof wallOptions>;
