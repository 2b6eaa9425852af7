import { text } from '../options.ts';

/** What every command of the family is: hot work is what it leads to, and the last question stays what it was. */
export const family = {
  hazards: ['hot-work'],
  passing: true,
  forAll: true,
  family: 'A build stage by stage, ticked by whoever is there: what to do, what holds it, what to buy.',
} as const;

export const checklistFigures = {
  'checklist.done': 'done',
  'checklist.left': 'usual time left',
} as const;

export const listOption = () => text({ label: 'checklist', most: 80 }).optional();
