import { z } from 'zod';
import type { Command } from '../command.ts';
import { about, text } from '../options.ts';
import { said } from '../said.ts';
import { dayAndHour } from '../when/say.ts';
import { zoneNamed } from '../when/zone-names.ts';

const options = z.strictObject({ city: text({ label: 'city', most: 60 }).optional() });

export const zone = {
  name: 'zone',
  summary: 'Your time zone, which reminders go by: a city whose clocks are yours.',
  options,
  subject: 'city',
  examples: [
    { line: 'zone Europe/Berlin', says: 'summer time comes and goes by itself' },
    { line: 'zone Chicago', says: 'a city that has a zone of its own' },
    { line: 'zone', says: 'what is set' },
  ],
  hazards: [],
  figures: {},
  passing: true,
  async answer({ city }, { asker, memory, now, units }) {
    const clock = (named: string) => `It is ${dayAndHour(now, { zone: named, units })} there.`;
    if (city === undefined) {
      const known = await memory.zone(asker);
      if (known === undefined) {
        return said('No time zone of yours is known: reminders ask for it.', {
          next: [{ label: 'set it', line: 'zone Europe/Berlin' }],
        });
      }
      return said(`Your time zone is ${known}.`, { notes: [clock(known)] });
    }
    const named = about('city', () => zoneNamed(city));
    await memory.setZone(asker, named);
    const waiting = (await memory.reminders(asker)).length;
    return said(`Your time zone is ${named}.`, {
      notes: [clock(named), ...(waiting > 0 ? ['Reminders that wait already keep the moment they were set for.'] : [])],
      next: [{ label: 'be reminded', line: 'remind tomorrow 9:00 weigh the lining' }],
    });
  },
} satisfies Command<typeof options>;
