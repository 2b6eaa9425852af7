/**
 * One evening of a made-up club, the Millpond casters, and one furnace of theirs: invented data, and the same lines on
 * every platform. Each line with what its answer must show, whatever shows it. It grows with the commands.
 */
export interface Turn {
  readonly line: string;
  /** What a reader must find, in the card's own words. */
  readonly shows: readonly RegExp[];
  /** Words of the cautions that this question must not be without. */
  readonly warns: RegExp;
  /** Pictures the answer has. */
  readonly pictures?: readonly string[];
}

export const scenario: readonly Turn[] = [
  {
    line: 'size can 20 gal crucible=6 in x 8 in',
    shows: [/fits/i, /bore/, /vermiculite/, /mesh to buy/, /lid/],
    warns: /zinc/,
    pictures: ['section', 'plan', 'sleeve', 'inner-form', 'outer-form', 'roll'],
  },
  { line: 'mix for=last', shows: [/clay/, /sand/, /water/, /bags?/, /\$/], warns: /Silica/ },
  {
    line: 'wall for=(size can 20 gal crucible=6 in x 8 in) hot=850 °C ramp=40 min hold=45 min',
    shows: [/peaks at/, /fire (is )?out/, /[Ss]afe to touch/, /another inch/],
    warns: /hotter after shutdown/,
    pictures: ['chart'],
  },
  { line: 'touch 140 °F surface=galvanised', shows: [/galvanised/i], warns: /hot/ },
  { line: 'stuff vermiculite', shows: [/conductivity/], warns: /asbestos/, pictures: ['chart'] },
  {
    line: 'melt 5 kg aluminium for=(size can 20 gal crucible=6 in x 8 in)',
    shows: [/pour/, /dross/, /crucible pours/],
    warns: /[Dd]ry/,
    pictures: ['chart'],
  },
  {
    line: 'settle lump or briquettes for=(size can 20 gal crucible=6 in x 8 in)',
    shows: [/cost of the fuel/, /fuel burned/, /samples/],
    warns: /[Cc]harcoal/,
    pictures: ['chart'],
  },
  {
    line: 'settle perlite or vermiculite for=(size can 20 gal crucible=6 in x 8 in)',
    shows: [/hottest shell/, /samples/],
    warns: /asbestos/,
    pictures: ['chart'],
  },
  {
    line: 'settle charcoal or propane for=(size can 20 gal crucible=6 in x 8 in)',
    shows: [/time to the pour/, /samples/],
    warns: /[Cc]harcoal/,
    pictures: ['chart'],
  },
];
