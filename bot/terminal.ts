import { prompt } from '../adapters/terminal/prompt.ts';
import { answerLine } from '../commands/answer.ts';
import { commands } from '../commands/registry.ts';
import { readConfig } from './config.ts';
import { logFault } from './log.ts';
import { lookOf } from './look.ts';
import { openMemory } from './store/remember.ts';
import { versions } from './versions.ts';
import { written } from './written.ts';

/** The embedded default: one person at one terminal, remembered until they leave where no store is configured. */
export async function openTerminal(): Promise<void> {
  const config = readConfig(process.env);
  const { memory, close } = await openMemory(config);
  try {
    await prompt({
      ask: async (line) =>
        written(await answerLine(line, { asker: 'me', place: 'terminal', now: new Date(), memory, versions }), config),
      commands,
      input: process.stdin,
      output: process.stdout,
      look: () => lookOf(config),
      onFault: (error, id) => logFault(config, error, id),
    });
  } finally {
    await close();
  }
}
