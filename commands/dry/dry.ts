import type { Command } from '../command.ts';
import { followPlan } from '../remind/plan.ts';
import { dryAnswer } from './answer.ts';
import { dryFigures } from './figures.ts';
import { dryOptions } from './options.ts';

export const dry = {
  name: 'dry',
  summary: 'When a new lining may be fired: days of air, the first fire by the hour, and what to watch.',
  options: dryOptions,
  subject: 'layers',
  alternatives: [[['amount'], ['bore', 'height']]],
  examples: [
    { line: 'dry 1.5 in clay-sand', says: 'a rammed lining, from today' },
    {
      line: 'dry 40 mm clay-sand air=12 °C humidity=75% from=2026-03-01',
      says: 'in your weather, from the day it was rammed',
    },
    { line: 'dry 50 mm low-cement castable heat=thermometer', says: 'a castable: cured, not aired, and slowly' },
    { line: 'dry 1.5 in clay-sand heat=charcoal cover=throughout', says: 'by coals and eye, without a thermometer' },
    {
      line: 'dry 40 mm clay-sand amount=15 L from=2026-03-01 weighed=29.4 kg day 9; 29.2 kg day 12; 29.1 kg day 15',
      says: 'by the scale: dry yet?',
    },
    { line: 'dry 1.5 in clay-sand from=2026-03-01 happened=rained on=2026-03-06', says: 'rained on: the new dates' },
    { line: 'dry for=(size can 20 gal crucible=6 in x 8 in)', says: 'the lining of a furnace that was sized' },
    { line: 'dry for=(mix 30 L) thickness=40 mm', says: 'the lining that was mixed' },
  ],
  hazards: ['hot-work', 'damp-lining'],
  figures: dryFigures,
  async answer(options, context) {
    const answer = dryAnswer(options, context);
    // What has happened is no what-if: reminders of the plan move with it.
    const moved = options.happened === undefined ? undefined : await followPlan(answer.plan ?? [], context);
    return moved === undefined ? answer : { ...answer, notes: [moved, ...(answer.notes ?? [])] };
  },
} satisfies Command<typeof dryOptions>;
