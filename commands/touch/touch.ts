import type { Command } from '../command.ts';
import { touchAnswer } from './answer.ts';
import { touchOptions } from './options.ts';
import { touchQuestion } from './question.ts';

export const touch = {
  name: 'touch',
  summary: 'What a hot surface does to a hand, and how long it may stay; true heat of shiny metal.',
  options: touchOptions,
  subject: 'temperature',
  alternatives: [[['temperature'], ['reads', 'set', 'air']]],
  examples: [
    { line: 'touch 60 °C', says: 'bare metal at 60 °C' },
    { line: 'touch 140 F surface=painted time=5 s', says: 'a touch of five seconds' },
    { line: 'touch reads=60 °C set=0.95 surface=galvanised', says: 'what a reading on zinc really means' },
  ],
  hazards: ['hot-work', 'hot-steel'],
  figures: {
    'touch.temperature': 'temperature of the surface',
    'touch.reads': 'what the infrared thermometer reads',
    'touch.stay': 'how long a hand may stay, adverse end',
    'touch.limit': 'hottest surface for the time asked',
    'touch.skin': 'where skin goes on a thick piece',
  },
  async answer(options, { units }) {
    return touchAnswer({ question: touchQuestion(options), options, units });
  },
} satisfies Command<typeof touchOptions>;
