import { AskError } from '../ask-error.ts';
import { blastSources } from './blast.ts';
import { drySources } from './dry.ts';
import { fireSources } from './fire.ts';
import { generalSources } from './general.ts';
import { heatSources } from './heat.ts';
import { logSources } from './log.ts';
import { practiceSources } from './practice.ts';
import type { Source, SourceId } from './source.ts';

/** Every source the project cites, once. */
export const sources: readonly Source[] = Object.freeze([
  ...generalSources,
  ...heatSources,
  ...fireSources,
  ...blastSources,
  ...drySources,
  ...logSources,
  ...practiceSources,
]);

const byId = new Map(sources.map((source) => [source.id, source]));

/** @throws AskError `unknown-name` for an id that is not in the table: a fault in the data, caught by a test. */
export function sourceOf(id: SourceId): Source {
  const source = byId.get(id);
  if (source) return source;
  throw new AskError({
    code: 'unknown-name',
    what: `no source is called "${id}"`,
    expected: 'an id from core/sources',
    example: 'derived',
  });
}
