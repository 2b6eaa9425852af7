import type { WallRun } from '../wall-run.ts';

/**
 * How deep behind the hot face the wall has ever been as hot as T, m; linear between nodes. 0 where not even the face
 * was, the whole wall where its outside was.
 */
export function depthOf({ depth_m, hottest_K }: Pick<WallRun, 'depth_m' | 'hottest_K'>, T_K: number): number {
  let node = hottest_K.length - 1;
  while (node >= 0 && hottest_K[node]! < T_K) node--;
  if (node < 0) return 0;
  if (node === hottest_K.length - 1) return depth_m[node]!;
  const share = (hottest_K[node]! - T_K) / (hottest_K[node]! - hottest_K[node + 1]!);
  return depth_m[node]! + share * (depth_m[node + 1]! - depth_m[node]!);
}
