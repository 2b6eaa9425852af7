/**
 * What a model gets wrong though every input be right: what it leaves out, and its correlations. Judged from what could
 * be held against the world outside (test/published); told beside a range, never folded into it.
 */
export interface ModelError {
  readonly id: string;
  /** Figures it is about, by id; `*` stands for what follows. */
  readonly figures: readonly string[];
  readonly of: string;
  /** How far the truth may lie from what is computed: a share of it, or kelvins. */
  readonly by: 'share' | 'dK';
  readonly low: number;
  readonly high: number;
  /** How many measured or told values it is judged from. A numerical solution of the same model is none. */
  readonly comparisons: number;
  readonly against: string;
  readonly standing: 'judged';
}

const judged = { standing: 'judged' } as const;

export const modelErrors: readonly ModelError[] = [
  {
    id: 'shell',
    figures: ['wall.shell_peak', 'wall.interface*', 'wall.touch*'],
    of: 'temperatures in and on the wall',
    by: 'dK',
    low: -15,
    high: 15,
    comparisons: 2,
    against: 'a shell and a bore that were told by touch alone',
    ...judged,
  },
  {
    id: 'wall-heat',
    figures: [
      'wall.stored',
      'wall.heat_in',
      'wall.passed',
      'wall.loss',
      'wall.charcoal',
      'wall.propane',
      'wall.*power',
    ],
    of: 'the heat of the wall',
    by: 'share',
    low: -0.15,
    high: 0.15,
    comparisons: 0,
    against: '',
    ...judged,
  },
  {
    id: 'fuel',
    figures: [
      'fuel.mass',
      'fuel.total_mass',
      'fuel.time',
      'fuel.total_time',
      'fuel.cost',
      'fuel.total_cost',
      'fuel.staged_cost',
    ],
    of: 'fuel and time',
    by: 'share',
    low: -0.1,
    high: 0.5,
    comparisons: 2,
    against: 'fuel and time of one melt over charcoal, which took nearly half as much again',
    ...judged,
  },
  {
    id: 'flame',
    figures: ['flame.temperature'],
    of: 'the flame',
    by: 'dK',
    low: -400,
    high: -75,
    comparisons: 3,
    against: 'small flames of a laboratory; those of furnaces from memory',
    ...judged,
  },
  {
    id: 'blast',
    figures: ['blast.flow', 'blast.power', 'blast.fuel', 'blast.cover', 'blast.pressure'],
    of: 'the blast',
    by: 'share',
    low: -0.2,
    high: 0.2,
    comparisons: 3,
    against: 'the pressures of one dust extractor, off by up to a twentieth of its greatest',
    ...judged,
  },
  {
    id: 'bottle',
    figures: ['burner.lasts', 'burner.steady', 'burner.melts'],
    of: 'what the bottle gives',
    by: 'share',
    low: -0.4,
    high: 0.4,
    comparisons: 10,
    against: "a suppliers' table of vapour drawn, on which its heat exchange was set",
    ...judged,
  },
  {
    id: 'jet',
    figures: ['burner.rate', 'burner.rate_higher', 'burner.propane', 'burner.jet', 'burner.pressure', 'burner.air'],
    of: 'jet and mixing tube',
    by: 'share',
    low: -0.15,
    high: 0.15,
    comparisons: 0,
    against: '',
    ...judged,
  },
  {
    id: 'melt-heat',
    figures: ['melt.heat', 'melt.pot_heat', 'fuel.metal_heat'],
    of: 'the heat of the melt',
    by: 'share',
    low: -0.1,
    high: 0.1,
    comparisons: 11,
    against: 'heats of fusion of nine metals, one alloy, and a rule for iron',
    ...judged,
  },
  {
    id: 'melt-time',
    figures: ['melt.time', 'melt.absorbs'],
    of: 'how fast the pot takes heat',
    by: 'share',
    low: -0.5,
    high: 0.5,
    comparisons: 0,
    against: '',
    ...judged,
  },
  {
    id: 'size',
    figures: ['size.pot*', 'size.lid_*', 'size.whole', 'size.lift', 'size.insulation_*'],
    of: 'weights and volumes',
    by: 'share',
    low: -0.05,
    high: 0.05,
    comparisons: 6,
    against: 'volumes that cans and drums are sold as',
    ...judged,
  },
  {
    id: 'mix',
    figures: ['mix.*mass', 'mix.*volume', 'mix.water', 'mix.cost'],
    of: 'the batch',
    by: 'share',
    low: -0.05,
    high: 0.05,
    comparisons: 0,
    against: '',
    ...judged,
  },
];

/** The errors of the models behind some figures, each once. */
export const modelErrorsOf = (figures: readonly string[]): readonly ModelError[] =>
  modelErrors.filter((error) => error.figures.some((pattern) => figures.some((id) => matches(pattern, id))));

const matches = (pattern: string, id: string): boolean =>
  new RegExp(`^${pattern.replaceAll('.', '\\.').replaceAll('*', '.*')}$`).test(id);
