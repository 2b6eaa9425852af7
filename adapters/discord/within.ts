/** What comes in time, or what is had without it. What comes later is let go, its failure too. */
export async function within<Value, Otherwise>(
  promise: Promise<Value>,
  limit_ms: number,
  otherwise: Otherwise,
): Promise<Value | Otherwise> {
  // What is in the process's own memory is there at once, and needs no clock.
  let isThere = false;
  const there = () => {
    isThere = true;
  };
  promise.then(there, there);
  await undefined;
  if (isThere) return promise;
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<Otherwise>((resolve) => {
    timer = setTimeout(() => resolve(otherwise), limit_ms);
  });
  return Promise.race([promise, late]).finally(() => clearTimeout(timer));
}
