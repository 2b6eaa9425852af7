import type { Material } from '../material.ts';
import { type Cite, curve, datum, degrees, MEMORY, published } from './make.ts';

const ec3: Cite = published('en-1993-1-2');
const zinc: Cite = published('galvanisers-page');
const exact = (T: number, value: number): readonly [number, number, number, number] => [
  T,
  value * 0.97,
  value,
  value * 1.03,
];

/** k = 54 − 0.0333 T below 800 °C, 27.3 above. */
const steelConductivity = curve(
  'local',
  ec3,
  [20, 200, 400, 600, 800].map((T) => exact(T, T < 800 ? 54 - 0.0333 * T : 27.3)),
);
/** cp = 425 + 0.773 T − 1.69e−3 T² + 2.22e−6 T³ below 600 °C, then 666 + 13002 / (738 − T) to 735. */
const steelHeatCapacity = curve(
  'local',
  ec3,
  [20, 100, 200, 300, 400, 500, 600, 650].map((T) =>
    exact(T, T <= 600 ? 425 + 0.773 * T - 1.69e-3 * T ** 2 + 2.22e-6 * T ** 3 : 666 + 13002 / (738 - T)),
  ),
);
const steelDensity = datum(7800, 7850, 7870, ec3);
const steelExpansion = datum(11.5e-6, 12e-6, 13.7e-6, ec3, '12e-6 near 20 °C; mean to 400 °C 13.7e-6.');
const zincMelts = degrees(419.5, 419.5, 419.5, published('chemicals-library'), 'The zinc; it boils at 907 °C.');
const zincLimit = degrees(200, 200, 350, zinc, 'Outer zinc peels in long service above 200 °C; 350 is judged.');

export const metalsAndMesh = [
  {
    id: 'mild-steel',
    name: 'mild steel, bare or rusted',
    kind: 'metal shell',
    aliases: ['steel', 'steel shell', 'carbon steel', 'sheet steel', 'black steel'],
    goodFor: 'Shells, legs, handles.',
    failsWhen: 'Above 450 °C it loses strength and scales.',
    hotFace: { fit: 'never', why: 'Scales and sags in the fire.' },
    properties: {
      density_kg_m3: steelDensity,
      emissivity: datum(
        0.6,
        0.8,
        0.95,
        published('emissivity-charts'),
        'Oxidised or rusted. Clean cold-rolled 0.09–0.30.',
      ),
      thermal_expansion_per_K: steelExpansion,
      melting_K: degrees(1425, 1500, 1530, MEMORY),
      service_limit_K: degrees(400, 450, 550, MEMORY, 'For parts that carry load.'),
    },
    conductivity_W_mK: steelConductivity,
    heat_capacity_J_kgK: steelHeatCapacity,
    hazards: ['hot-steel'],
  },
  {
    id: 'painted-steel',
    name: 'painted steel',
    kind: 'metal shell',
    aliases: ['painted shell', 'enamelled steel', 'painted can'],
    goodFor: 'Shells that stay below about 150 °C; its paint radiates well.',
    failsWhen: 'Common paint browns, smokes and burns from 150–250 °C.',
    properties: {
      density_kg_m3: steelDensity,
      emissivity: datum(0.8, 0.9, 0.96, published('emissivity-charts'), 'Any but aluminium paint (0.27–0.67).'),
      thermal_expansion_per_K: steelExpansion,
      service_limit_K: degrees(120, 150, 250, MEMORY, 'The paint.'),
    },
    conductivity_W_mK: steelConductivity,
    heat_capacity_J_kgK: steelHeatCapacity,
    hazards: ['hot-steel'],
  },
  {
    id: 'galvanised-steel',
    name: 'galvanised steel',
    kind: 'metal shell',
    aliases: ['galvanised', 'zinc-coated steel', 'galvanised shell', 'galv'],
    goodFor: 'Shells proven to stay below 200 °C; better none.',
    failsWhen: 'Zinc peels above 200 °C, melts at 419 and fumes; burning it off is no hobby step.',
    hotFace: { fit: 'never', why: 'Zinc fume.' },
    properties: {
      density_kg_m3: steelDensity,
      emissivity: datum(
        0.07,
        0.28,
        0.85,
        published('emissivity-charts'),
        'Bright 0.07–0.28, weathered 0.5–0.85: cold spot to a thermometer gun.',
      ),
      thermal_expansion_per_K: steelExpansion,
      melting_K: zincMelts,
      service_limit_K: zincLimit,
    },
    conductivity_W_mK: steelConductivity,
    heat_capacity_J_kgK: steelHeatCapacity,
    hazards: ['galvanised', 'hot-steel'],
  },
  {
    id: 'stainless-steel',
    name: 'stainless steel (18-8)',
    kind: 'metal shell',
    aliases: ['stainless', '18-8 stainless', 'austenitic stainless', 'inox'],
    goodFor: 'Anchors, needles, lid bands that run hot.',
    failsWhen: 'Scales above 870 °C; grows half as much again as plain steel.',
    hotFace: { fit: 'never', why: 'Scales and sags in the fire.' },
    properties: {
      density_kg_m3: datum(7850, 7930, 8000, MEMORY),
      emissivity: datum(0.15, 0.4, 0.85, MEMORY, 'Bright to heat-tinted.'),
      thermal_expansion_per_K: datum(16e-6, 17.3e-6, 18.5e-6, MEMORY),
      melting_K: degrees(1400, 1420, 1450, MEMORY),
      service_limit_K: degrees(800, 870, 925, MEMORY),
    },
    conductivity_W_mK: curve('local', MEMORY, [
      [20, 14, 15, 16.5],
      [500, 20, 21.5, 23],
      [800, 24, 25.5, 27.5],
    ]),
    heat_capacity_J_kgK: curve('local', MEMORY, [
      [20, 470, 490, 510],
      [500, 550, 575, 600],
      [800, 590, 620, 650],
    ]),
    hazards: ['hot-steel'],
  },
  {
    id: 'hardware-cloth',
    name: 'hardware cloth (zinc-coated mesh)',
    kind: 'mesh',
    aliases: ['wire mesh', 'galvanised mesh', 'welded mesh', 'rabbit wire'],
    goodFor: 'Cage round loose or bound backup that stays below 200 °C.',
    failsWhen: 'Zinc is put on after weaving: it peels above 200 °C, melts at 419 and fumes.',
    hotFace: { fit: 'never', why: 'Zinc fume; steel near a hot face cracks the lining as it grows.' },
    properties: { melting_K: zincMelts, service_limit_K: zincLimit, thermal_expansion_per_K: steelExpansion },
    hazards: ['galvanised', 'mesh'],
  },
  {
    id: 'expanded-metal',
    name: 'expanded metal lath, bare',
    kind: 'mesh',
    aliases: ['expanded mesh', 'metal lath', 'bare steel mesh'],
    goodFor: 'Cage and lid grid without zinc.',
    failsWhen: 'Above 450 °C it weakens; inside a hot face it grows twice as much as clay and cracks it.',
    hotFace: { fit: 'never', why: 'Grows more than the lining around it.' },
    properties: { service_limit_K: degrees(400, 450, 550, MEMORY), thermal_expansion_per_K: steelExpansion },
    hazards: ['mesh', 'hot-steel'],
  },
  {
    id: 'refractory-wash',
    name: 'refractory wash (alumina, zircon or clay)',
    kind: 'coating',
    aliases: ['hot-face coating', 'kiln wash', 'alumina wash', 'fibre rigidiser coat', 'zircon wash'],
    goodFor: 'A 2–6 mm skin that binds fibre and bears flux better.',
    failsWhen: 'Thick coats peel; it does not make a weak body stronger.',
    hotFace: { fit: 'yes', why: 'As a skin on a sound body.' },
    properties: {
      density_kg_m3: datum(1500, 1900, 2500, MEMORY),
      emissivity: datum(0.4, 0.7, 0.9, MEMORY),
      service_limit_K: degrees(1200, 1400, 1600, MEMORY),
    },
    hazards: ['silica-dust'],
  },
] as const satisfies readonly Material[];
