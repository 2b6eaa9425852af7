import { readFileSync, writeFileSync } from 'node:fs';
import { renderReply } from '../../adapters/terminal/render.ts';
import { conversation } from './conversation.ts';

const file = new URL('../../README.md', import.meta.url);

export const readReadme = (): string => readFileSync(file, 'utf8');
export const writeReadme = (text: string): void => writeFileSync(file, text);

export interface Fence {
  readonly info: string;
  readonly lines: readonly string[];
}

/** The fenced blocks of a text, each with the words behind its opening fence. */
export const fencesOf = (text: string): readonly Fence[] =>
  [...text.matchAll(/^```(.*)\n([\s\S]*?)^```$/gm)].map(([, info = '', body = '']) => ({
    info: info.trim(),
    lines: body.split('\n').filter((line) => line.trim() !== ''),
  }));

const picture = /(?<=<!-- made by the program -->\n```text\n)[\s\S]*?(?=^```$)/m;

/** The picture's question, and the text with the picture as the program draws it now. */
export async function withPicture(text: string): Promise<string> {
  const shown = picture.exec(text)?.[0] ?? '';
  const question = /^> (.*)$/m.exec(shown)?.[1];
  if (question === undefined) throw new Error('the README shows no question in its picture');
  const answer = renderReply(await conversation()(question), { color: false, width: 90 });
  return text.replace(picture, () => `> ${question}\n\n${answer}\n`);
}
