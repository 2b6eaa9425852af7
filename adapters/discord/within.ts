/** What comes in time, or what is had without it. What comes later is let go, its failure too. */
export function within<Value, Otherwise>(
  promise: Promise<Value>,
  limit_ms: number,
  otherwise: Otherwise,
): Promise<Value | Otherwise> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<Otherwise>((resolve) => {
    timer = setTimeout(() => resolve(otherwise), limit_ms);
  });
  promise.catch(() => {});
  return Promise.race([promise, late]).finally(() => clearTimeout(timer));
}
