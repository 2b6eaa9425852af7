const kept = ['mix 30 L', 'build save club lining'];
/** Some examples speak of the last question, of what was kept or of a price that was named. */
const before: readonly (readonly [names: RegExp, lines: readonly string[]])[] = [
  [/^(?:why|again|mydata)$/, ['mix 30 L']],
  [/^build/, [...kept, 'build save club lining for=(mix 30 L spare=5%)', 'build save small one for=(mix 12 L)']],
  [/^price/, ['price sand 50 lb $5']],
  [/^log/, [...kept, 'log bucket 5 L mass=9.1 kg']],
  [/^checklist start/, kept],
  [/^checklist(?! start)/, [...kept, 'checklist start club lining']],
  [/^checklist untick/, ['checklist tick 1.1']],
  [/^remind drop/, ['remind in 36 h weigh the lining']],
];

/** What must have been asked before an example of a command makes sense. */
export const linesBefore = (command: string): readonly string[] =>
  before.flatMap(([names, lines]) => (names.test(command) ? lines : []));
