import { datum, MEMORY, published } from '../../materials/data/make.ts';
import type { Finish } from '../finish.ts';

const charts = published('emissivity-charts');

/** Total emissivity near room to shell temperatures. */
export const finishData = [
  {
    id: 'bright-galvanised',
    name: 'bright galvanised steel',
    aliases: ['galvanised', 'bright', 'new galvanised', 'galvanised steel', 'zinc', 'bright zinc'],
    emissivity: datum(0.07, 0.23, 0.28, charts, '0.07 new at 92 °C, 0.23 burnished, 0.28 oxidised.'),
    touch: 'metal',
    hazards: ['galvanised'],
  },
  {
    id: 'weathered-galvanised',
    name: 'weathered galvanised steel',
    aliases: ['weathered', 'old galvanised', 'dull galvanised', 'grey galvanised'],
    emissivity: datum(0.5, 0.7, 0.85, charts, '0.85 in the long-wave band, 0.64 in the short-wave band.'),
    touch: 'metal',
    hazards: ['galvanised'],
  },
  {
    id: 'painted',
    name: 'painted steel',
    aliases: ['paint', 'painted', 'enamel', 'enamelled', 'black paint', 'stove paint', 'powder coat'],
    emissivity: datum(0.8, 0.9, 0.96, charts, 'Any colour but aluminium.'),
    touch: 'painted-metal',
    hazards: [],
  },
  {
    id: 'aluminium-paint',
    name: 'aluminium paint',
    aliases: ['silver paint', 'aluminium painted'],
    emissivity: datum(0.27, 0.4, 0.67, charts, '0.52 with 10 % aluminium, 0.30 with 26 %.'),
    touch: 'painted-metal',
    hazards: [],
  },
  {
    id: 'rusted-steel',
    name: 'rusted or oxidised bare steel',
    aliases: [
      'rusted',
      'rusty',
      'rust',
      'oxidised',
      'oxidised steel',
      'hot-rolled steel',
      'mill scale',
      'bare steel',
      'steel',
    ],
    emissivity: datum(0.6, 0.8, 0.98, charts, 'Red rust 0.69; in the 8–14 µm band 0.5 to 0.9.'),
    touch: 'metal',
    hazards: [],
  },
  {
    id: 'clean-steel',
    name: 'clean cold-rolled steel',
    aliases: ['cold-rolled steel', 'bright steel', 'clean steel', 'polished steel', 'bare bright steel'],
    emissivity: datum(
      0.09,
      0.2,
      0.3,
      charts,
      'Charts disagree: 0.09–0.24 in one, 0.7–0.9 (8–14 µm) in another. Dull sheet is nearer to rusted steel.',
    ),
    touch: 'metal',
    hazards: [],
  },
  {
    id: 'fired-clay',
    name: 'brick or clay',
    aliases: ['brick', 'clay', 'castable', 'ceramic', 'stone', 'mortar', 'refractory'],
    emissivity: datum(0.75, 0.9, 0.93, charts, 'Near room temperature; about 0.77 at 1000 °C.'),
    touch: 'ceramic',
    hazards: [],
  },
  {
    id: 'bare-fibre',
    name: 'ceramic fibre',
    aliases: ['fibre', 'blanket', 'ceramic wool'],
    emissivity: datum(0.8, 0.9, 0.95, MEMORY),
    touch: 'ceramic',
    hazards: ['ceramic-fibre'],
  },
] as const satisfies readonly Finish[];
