/** What a beginner is asked, one at a time, in this order. */
export type QuestionId = 'metal' | 'have' | 'where' | 'burn' | 'spend';

export interface Question {
  readonly id: QuestionId;
  readonly ask: string;
  /** Why it is asked, and what else may be typed. */
  readonly why: string;
  readonly choices: readonly { readonly label: string; readonly value: string }[];
  /** What is taken where it is passed over; nothing where the answer can do without. */
  readonly otherwise?: string;
}

/** Typed, or chosen by its button, where somebody does not know. */
export const SKIP = 'skip';

export const questions: readonly Question[] = [
  {
    id: 'metal',
    ask: 'What do you want to melt first?',
    why: 'Aluminium is the one to learn on: it melts lowest of these and forgives most. Any metal of the catalogue may be typed: metal=…',
    choices: [
      { label: 'aluminium', value: 'aluminium' },
      { label: 'bronze', value: 'bronze' },
      { label: 'brass', value: 'brass' },
      { label: 'copper', value: 'copper' },
    ],
    otherwise: 'aluminium',
  },
  {
    id: 'have',
    ask: 'What do you have for the shell?',
    why: 'An open can or drum whose contents you know. Another one is typed by its size: have=31 gal, or have=15 in x 20 in.',
    choices: [
      { label: 'a 20 gal can', value: '20 gal' },
      { label: 'a 60 L drum', value: '60 L' },
      { label: 'a 5 gal pail', value: '5 gal pail' },
      { label: 'nothing yet', value: 'nothing' },
    ],
    otherwise: 'nothing',
  },
  {
    id: 'where',
    ask: 'Where will it stand?',
    why: 'Soil or sand underfoot, two sides open, nothing overhead, water within reach.',
    choices: [
      { label: 'outdoors, on soil or sand', value: 'outdoors' },
      { label: 'outdoors, on paving or concrete', value: 'paving' },
      { label: 'in a garage, shed or cellar', value: 'indoors' },
    ],
    otherwise: 'outdoors',
  },
  {
    id: 'burn',
    ask: 'What will you burn?',
    why: 'Charcoal needs a blower and is the cheaper start; propane needs a burner, a regulator and a bottle, and is the easier to keep steady.',
    choices: [
      { label: 'charcoal', value: 'charcoal' },
      { label: 'propane', value: 'gas' },
    ],
    otherwise: 'charcoal',
  },
  {
    id: 'spend',
    ask: 'What may the furnace cost, gear for your own safety not counted?',
    why: 'Another sum is typed: spend=$150. What you have already costs nothing.',
    choices: [
      { label: '$100', value: '$100' },
      { label: '$250', value: '$250' },
      { label: '$500', value: '$500' },
    ],
  },
];
