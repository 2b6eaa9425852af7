import { estimateMix } from '../../core/mix/estimate.ts';
import type { Command } from '../command.ts';
import { calibrated } from '../log/measured.ts';
import { pricesFor, readPrices } from '../prices.ts';
import { mixAnswer } from './answer.ts';
import { mixDoubt } from './doubt.ts';
import { byBuckets } from './log.ts';
import { mixOptions } from './options.ts';
import { mixQuestion } from './question.ts';

export const mix = {
  name: 'mix',
  summary: 'What to weigh out, buy and add to fill a lining: clay, sand, castable, water, cost.',
  options: mixOptions,
  subject: 'amount',
  alternatives: [
    [['recipe'], ['ratio']],
    [['amount'], ['outside', 'inside', 'height']],
  ],
  examples: [
    { line: 'mix 1.1 cu ft', says: 'clay and sand for 1.1 cubic feet of lining' },
    { line: 'mix 30 L ratio=3 sand 1 fireclay damp=12%', says: 'own ratio, with clay that is already damp' },
    { line: 'mix outside=14 in inside=11 in height=19 in', says: 'fill a ring' },
    { line: 'mix 30 L recipe=castable tub=20 kg', says: 'castable by the bag, in batches' },
    { line: 'mix 30 L have=kaolin, silica sand', says: 'what can stand in' },
    { line: 'mix 1 cu ft prices=clay 50 lb $11; sand 50 lb $6', says: 'at your own prices' },
  ],
  hazards: ['hot-work', 'dry-powder', 'silica-dust', 'damp-lining'],
  figures: {
    'mix.volume': 'what it fills',
    'mix.clay_mass': 'clay to weigh; a second clay is mix.clay2_mass, and so on',
    'mix.sand_mass': 'sand to weigh',
    'mix.grog_mass': 'grog to weigh',
    'mix.light_mass': 'light aggregate to weigh',
    'mix.binder_mass': 'cement to weigh',
    'mix.castable_mass': 'castable to weigh',
    'mix.organic_mass': 'sawdust to weigh',
    'mix.clay_volume': 'clay, loose',
    'mix.sand_volume': 'sand, loose',
    'mix.grog_volume': 'grog, loose',
    'mix.light_volume': 'light aggregate, loose',
    'mix.binder_volume': 'cement, loose',
    'mix.castable_volume': 'castable, loose',
    'mix.organic_volume': 'sawdust, loose',
    'mix.water': 'water to add',
    'mix.dry_mass': 'dry mix',
    'mix.wet_mass': 'wet mix',
    'mix.fired_mass': 'after firing, with the spare',
    'mix.drying_shrinkage': 'drying shrinkage, linear',
    'mix.firing_shrinkage': 'firing shrinkage, linear',
    'mix.temper': 'rest in a closed bag',
    'mix.sieve': 'sieve opening',
    'mix.limit': 'service limit, adverse end',
    'mix.batches': 'batches in your tub',
    'mix.cost': 'cost in whole bags',
  },
  async answer(options, context) {
    const { question, found } = byBuckets(mixQuestion(options), context.measured);
    const typed = options.prices === undefined ? [] : readPrices(options.prices, 'prices');
    const answer = mixAnswer({
      question,
      options,
      estimate: estimateMix(question.estimate),
      prices: await pricesFor(context, typed),
      context,
    });
    return calibrated(answer, found, context.units);
  },
  async doubt(options, context) {
    const typed = options.prices === undefined ? [] : readPrices(options.prices, 'prices');
    return mixDoubt(mixQuestion(options), await pricesFor(context, typed));
  },
} satisfies Command<typeof mixOptions>;
