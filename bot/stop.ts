/** What ends the program: a setting that cannot be used is said plainly, a fault with all that is known of it. */
export function stop(error: unknown): void {
  const plain = error instanceof Error && error.name === 'ConfigError';
  process.stderr.write(`${plain ? error.message : error instanceof Error ? error.stack : String(error)}\n`);
  process.exitCode = plain ? 2 : 1;
}

/** `… | head` closes the pipe early; that is no fault. */
export function leaveQuietly(stream: NodeJS.WriteStream): void {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit(0);
  });
}
