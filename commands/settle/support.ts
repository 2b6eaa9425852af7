/** What stands behind the model of a command: tests of test/published by name, and what it does not know. */
export interface Support {
  readonly checks: readonly string[];
  readonly leavesOut: string;
}

/** By the first word of the command. A test holds the names against the files. */
export const support: Readonly<Record<string, Support>> = {
  wall: {
    checks: ['heat-transient', 'heat-steady', 'trade-wall', 'catalogue'],
    leavesOut: 'cracks, joints, hot spots where the flame strikes, and any height but the middle of the wall',
  },
  fuel: {
    checks: ['fuel', 'fire-gas', 'melt', 'heat-transient', 'trade-fuel'],
    leavesOut: 'how the fire is tended: lids lifted, fuel heaped or wasted, wind over the vent',
  },
  flame: {
    checks: ['fire-gas'],
    leavesOut: 'poor mixing and what a flame radiates before it is done: real flames stay below, all of them',
  },
  blast: {
    checks: ['fire-blast', 'trade-blast'],
    leavesOut: 'leaks, and a bed that settles and clogs with ash',
  },
  burner: {
    checks: ['fire-blast', 'fire-gas'],
    leavesOut: 'how the flame sits in the mouth, and gusts',
  },
  mix: {
    checks: ['catalogue', 'trade-facts'],
    leavesOut: 'what is spilled, the drive to the shop, and how long either lasts',
  },
  size: {
    checks: ['geometry', 'size', 'forms'],
    leavesOut: 'bulges, rims and out of round cans',
  },
  melt: {
    checks: ['melt'],
    leavesOut: 'the furnace round the crucible',
  },
};

export const supportOf = (command: string): Support | undefined => support[command.split(' ', 1)[0] ?? ''];
