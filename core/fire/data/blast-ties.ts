import type { Tie } from '../../doubt/together.ts';

type BlastInput = 'free_m3_s' | 'shut_Pa' | 'void_share' | 'sphericity';

/** Inputs of a blast that go together. Signs follow from the reasons; their size is judged. */
export const blastTies: readonly Tie<BlastInput>[] = [
  {
    input: 'shut_Pa',
    goesWith: 'free_m3_s',
    rank: 0.5,
    why: 'of one kind of blower the stronger has more of both: flow goes with speed, pressure with its square',
    source: 'derived',
    standing: 'judged',
  },
  {
    input: 'void_share',
    goesWith: 'sphericity',
    rank: -0.5,
    why: 'jagged lumps lie more openly: by a rule from memory (Wen and Yu) void share cubed × sphericity is about 1/14',
    source: 'from-memory',
    standing: 'judged',
  },
];
