import { createHash } from 'node:crypto';
import type { Memory } from '../../commands/memory.ts';
import { codeOf } from '../../commands/share-code.ts';

/**
 * What is remembered, for one asking: whatever it adds has an id that comes of the asking, so that a question that is
 * taken up again, since nobody knows how far it came, adds nothing twice.
 */
export function onceEach(memory: Memory, asking: string): Memory {
  const counts = { entry: 0, reminder: 0, build: 0 };
  const next = (kind: keyof typeof counts) =>
    createHash('sha256')
      .update(`${asking} ${kind} ${++counts[kind]}`)
      .digest();
  return {
    ...memory,
    addEntry: (asker, entry) => memory.addEntry(asker, { id: codeOf(next('entry')), ...entry }),
    setReminders: (asker, reminders, plan) =>
      memory.setReminders(
        asker,
        reminders.map((one) => ({ id: codeOf(next('reminder')), ...one })),
        plan,
      ),
    saveBuild: (asker, build, now) => memory.saveBuild(asker, { id: next('build').toString('hex'), ...build }, now),
  };
}
