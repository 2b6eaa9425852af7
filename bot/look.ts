import type { Look } from '../adapters/terminal/text.ts';
import type { Config } from './config.ts';

const narrowest = 30;
const widest = 100;

/** Colour only where someone sees it; lines no longer than is read well. */
export const lookOf = ({ width, color }: Config, stream: NodeJS.WriteStream = process.stdout): Look => ({
  color: color && stream.isTTY === true,
  width: width ?? (stream.columns ? Math.min(Math.max(stream.columns, narrowest), widest) : widest),
});
