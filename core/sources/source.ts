import { z } from 'zod';

/** How far a source was actually read: the honest half of a citation. */
export const opened = z.enum(['whole', 'table', 'excerpt', 'abstract', 'library', 'derived', 'memory', 'practice']);

export const sourceSchema = z.strictObject({
  id: z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/),
  /** Author or body, title, edition or year, page or table where known. */
  title: z.string().min(8).max(300),
  opened,
  note: z.string().max(300).optional(),
});

export type Source = z.infer<typeof sourceSchema>;
/** Key into the one table of sources, `sources.ts`; a test fails on an id that is not there. */
export type SourceId = string;

/** How much weight a datum bears, shown to the reader as these words. */
export const standing = z.enum(['published', 'derived', 'common practice', 'from memory']);
export type Standing = z.infer<typeof standing>;
