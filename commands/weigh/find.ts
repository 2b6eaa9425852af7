import { AskError } from '../../core/ask-error.ts';
import type { Claimed } from '../claim/claimed.ts';
import { readClaim } from '../claim/read.ts';

/** A statement in somebody's words, and what it was understood as. */
export interface Found {
  readonly statement: string;
  readonly claimed: Claimed;
}

export interface Reading {
  readonly found: readonly Found[];
  /** Sentences with a number that were not understood. */
  readonly unread: readonly string[];
}

/** More than anybody weighs at a time. */
export const mostStatements = 3;

/**
 * Statements with a number in what somebody wrote. A sentence is read whole, or in clauses; in clauses only where each
 * that has a number makes sense alone and no word in it turns the meaning of another, so that nobody is held to half of
 * what they said.
 */
export function readMessage(text: string): Reading {
  const found: Found[] = [];
  const unread: string[] = [];
  for (const sentence of sentencesOf(text)) {
    if (!/\d/.test(sentence)) continue;
    const statements = inOne(sentence) ?? inClauses(sentence);
    if (!statements) unread.push(sentence);
    for (const one of statements ?? []) if (!found.some(({ claimed }) => isSame(claimed, one.claimed))) found.push(one);
  }
  return { found: found.slice(0, mostStatements), unread: unread.slice(0, mostStatements) };
}

/** Without links, mentions, quotes and the marks of formatting. */
const sentencesOf = (text: string): readonly string[] =>
  text
    .replace(/https?:\/\/\S+/g, ' ')
    .replace(/<[@#:a/][^>]*>/g, ' ')
    .replace(/[*_~`|]+/g, '')
    .replace(/^[\s>•-]+/gm, '')
    .split(/(?<=[.!?;])\s+|[\r\n]+|;/)
    .map((sentence) => sentence.replace(/\s+/g, ' ').trim())
    .filter((sentence) => sentence !== '');

/** Words before a statement that say nothing of it. */
const lead =
  /^(?:(?:well|so|ok|okay|look|yes|no|yeah|nah|actually|honestly|trust me|believe me|in my experience|fwiw|imho|imo|hey|guys|folks)[,:]?\s+)+/i;

function inOne(sentence: string): readonly Found[] | undefined {
  const statement = sentence.replace(lead, '').replace(/[.!?;\s]+$/, '');
  const claimed = read(statement);
  return claimed && [{ statement, claimed }];
}

const turns = /\b(?:not|never|no|unless|if|except|without|only when|until|instead|n't|but only)\b|n't\b/i;

function inClauses(sentence: string): readonly Found[] | undefined {
  if (turns.test(sentence.replace(lead, ''))) return undefined;
  const clauses = sentence.split(/,?\s+(?:and|but|so|because|while|then|whereas|–|—|-)\s+|[,:]\s+/i);
  if (clauses.length < 2) return undefined;
  const numbered = clauses.filter((clause) => /\d/.test(clause)).map(inOne);
  return numbered.every((one) => one !== undefined) ? numbered.flat() : undefined;
}

function read(statement: string): Claimed | undefined {
  if (statement.length > 300) return undefined;
  try {
    return readClaim(statement);
  } catch (error) {
    if (error instanceof AskError) return undefined;
    throw error;
  }
}

const isSame = (one: Claimed, other: Claimed): boolean =>
  one.lines.join() === other.lines.join() && one.figure === other.figure && one.value === other.value;
