/**
 * Tables of published values that name something of ours. Every row that does, in the state and at a density that ours
 * has, is here as far as the table was seen: none was left out for its value. Not here: moist soil, clay in the ground,
 * plasters with perlite in gypsum, and the volumes that vessels are sold as, which are not volumes to the brim.
 */
export interface Table {
  readonly source: string;
  /** Sources of ours that are the same table, or a note in the catalogue that quotes it: then nothing is independent. */
  readonly sameAs: readonly string[];
  /** Not opened, remembered: not independent of a datum that is from memory too. */
  readonly fromMemory?: true;
}

export const tables = {
  ASHRAE: { source: 'ASHRAE Fundamentals 2013, as carried by ht', sameAs: ['ashrae-via-ht'] },
  'EN 12524': { source: 'EN 12524:2000, as carried by ht', sameAs: [] },
  VDI: { source: 'VDI Heat Atlas 2010, as carried by ht', sameAs: ['vdi-via-ht'] },
  yard: { source: 'weights of construction material per cubic yard, a gravel supplier’s table', sameAs: [] },
  bulk: { source: 'a web table of bulk densities', sameAs: ['bulk-density-tables'] },
  bulkRecalled: {
    source: 'the same web table of bulk densities, rows from memory',
    sameAs: ['bulk-density-tables'],
    fromMemory: true,
  },
  metals: { source: 'a web table of densities of metals', sameAs: [] },
  crc: { source: 'CRC Handbook, 97th ed., energy content of fuels, as a web table carries it', sameAs: [] },
  notes: { source: 'Furnaces and Boilers, university notes', sameAs: [] },
  lpGas: { source: 'LP-gas suppliers’ property pages', sameAs: ['lp-gas-properties'] },
  extension: { source: 'a university extension, heating values of common fuels', sameAs: [] },
  boneDry: { source: 'an encyclopaedia entry on bone-dry wood', sameAs: [] },
  epfl: { source: 'Thome, Radiative heat transfer, EPFL 2008, as a cable manual carries it', sameAs: [] },
  aerodynamics: { source: 'Automotive Aerodynamics, table 11.3', sameAs: [] },
  reversal: {
    source: 'flames in air by sodium-line reversal (Lewis and von Elbe), from memory',
    sameAs: [],
    fromMemory: true,
  },
  brickNotes: { source: 'a brick association’s technical note, from memory', sameAs: [], fromMemory: true },
  stainlessCode: { source: 'EN 1993-1-2, annex C, from memory', sameAs: [], fromMemory: true },
  molten: { source: 'CRC Handbook, density of molten elements, from memory', sameAs: [], fromMemory: true },
  fusion: { source: 'CRC Handbook, heats of fusion, as carried by chemicals', sameAs: ['crc-fusion'] },
} as const satisfies Readonly<Record<string, Table>>;
export type TableName = keyof typeof tables;

/** Entries whose note in the catalogue quotes the table: a check there, and perhaps what set its range. */
export const quoted: readonly (readonly [TableName, string])[] = [
  ['ASHRAE', 'perlite'],
  ['ASHRAE', 'vermiculite'],
  ['ASHRAE', 'perlite-cement-backup'],
  ['VDI', 'insulating-brick-23'],
  ['bulk', 'bentonite'],
  ['notes', 'methane'],
  ['notes', 'diesel'],
  ['lpGas', 'propane'],
  ['boneDry', 'wood'],
];

/** Scalars of the catalogue: entry, property, published value, half of its last digit. */
export interface Scalar {
  readonly table: TableName;
  readonly entry: string;
  readonly kind: 'material' | 'metal' | 'fuel' | 'finish';
  readonly property: string;
  readonly row: string;
  readonly theirs: number;
  readonly half_digit: number;
  readonly unit: string;
}

const poundsPerYard_kg_m3 = 0.45359237 / 0.764554857984;
const yard = (entry: string, kind: Scalar['kind'], property: string, row: string, lb_yd3: number): Scalar => ({
  table: 'yard',
  entry,
  kind,
  property,
  row,
  theirs: lb_yd3 * poundsPerYard_kg_m3,
  // All of its rows are whole pounds a cubic foot times 27: half a pound of that.
  half_digit: 8,
  unit: 'kg/m³',
});
const density = (
  table: TableName,
  entry: string,
  kind: Scalar['kind'],
  property: string,
  row: string,
  theirs: number,
  half_digit: number,
): Scalar => ({ table, entry, kind, property, row, theirs, half_digit, unit: 'kg/m³' });
const emissivity = (
  table: TableName,
  entry: string,
  kind: Scalar['kind'],
  row: string,
  theirs: number,
  half_digit = 0.005,
): Scalar => ({ table, entry, kind, property: 'emissivity', row, theirs, half_digit, unit: '1' });

/** Half a pound a cubic foot: the table's own kilograms are reckoned from whole pounds. */
const halfPound = 8;

export const scalars: readonly Scalar[] = [
  yard('portland-cement', 'material', 'loose_density_kg_m3', 'cement, Portland', 2430),
  yard('earthenware-clay', 'material', 'loose_density_kg_m3', 'clay, dry', 1701),
  yard('gypsum-plaster', 'material', 'loose_density_kg_m3', 'plaster of Paris', 2646),
  yard('silica-sand', 'material', 'loose_density_kg_m3', 'sand, dry, loose', 2619),
  yard('fireclay-brick', 'material', 'density_kg_m3', 'fire brick', 3915),
  yard('common-red-brick', 'material', 'density_kg_m3', 'brick, soft clay', 2718),
  yard('common-red-brick', 'material', 'density_kg_m3', 'brick, hard clay', 3397),
  yard('ordinary-concrete', 'material', 'density_kg_m3', 'concrete, gravel', 4104),
  yard('ordinary-concrete', 'material', 'density_kg_m3', 'concrete, limestone', 4050),
  yard('coke', 'fuel', 'bulk_density_kg_m3', 'coke', 837),
  density('bulk', 'lump-charcoal', 'fuel', 'bulk_density_kg_m3', 'charcoal', 208, halfPound),
  density('bulk', 'portland-cement', 'material', 'loose_density_kg_m3', 'cement, Portland', 1506, halfPound),
  density('bulk', 'common-red-brick', 'material', 'density_kg_m3', 'brick, common red', 1922, halfPound),
  density('bulk', 'fireclay-brick', 'material', 'density_kg_m3', 'brick, fire clay', 2403, halfPound),
  density('bulk', 'silica-brick', 'material', 'density_kg_m3', 'brick, silica', 2050, halfPound),
  density('bulk', 'garden-clay', 'material', 'loose_density_kg_m3', 'clay, dry excavated', 1089, halfPound),
  density('bulk', 'bentonite', 'material', 'loose_density_kg_m3', 'bentonite', 593, halfPound),
  density('bulkRecalled', 'silica-sand', 'material', 'loose_density_kg_m3', 'sand, loose', 1442, halfPound),
  density('bulkRecalled', 'dry-sand', 'material', 'density_kg_m3', 'sand, dry', 1602, halfPound),
  density('bulkRecalled', 'hydrated-lime', 'material', 'loose_density_kg_m3', 'lime, hydrated', 481, halfPound),
  density('bulkRecalled', 'kaolin', 'material', 'loose_density_kg_m3', 'kaolin, pulverised', 352, halfPound),
  density('metals', 'pure-aluminium', 'metal', 'solid_density_kg_m3', 'aluminium', 2712, 5),
  density('metals', 'al-si10mg', 'metal', 'solid_density_kg_m3', 'aluminium alloy 360', 2640, 5),
  density('metals', 'copper', 'metal', 'solid_density_kg_m3', 'copper', 8940, 5),
  density('metals', 'zinc', 'metal', 'solid_density_kg_m3', 'zinc', 7135, 0.5),
  density('metals', 'tin', 'metal', 'solid_density_kg_m3', 'tin', 7280, 5),
  density('metals', 'lead', 'metal', 'solid_density_kg_m3', 'lead', 11_340, 5),
  density('molten', 'pure-aluminium', 'metal', 'liquid_density_kg_m3', 'Al', 2375, 5),
  density('molten', 'copper', 'metal', 'liquid_density_kg_m3', 'Cu', 8020, 5),
  density('molten', 'zinc', 'metal', 'liquid_density_kg_m3', 'Zn', 6570, 5),
  density('molten', 'tin', 'metal', 'liquid_density_kg_m3', 'Sn', 6990, 5),
  density('molten', 'lead', 'metal', 'liquid_density_kg_m3', 'Pb', 10_660, 5),
  emissivity('epfl', 'painted', 'finish', 'paint, black gloss', 0.9),
  emissivity('epfl', 'painted', 'finish', 'white paint, median of a span', 0.93),
  emissivity('epfl', 'painted', 'finish', 'lacquer, median of a span', 0.875),
  emissivity('epfl', 'painted', 'finish', 'various oil paints, median of a span', 0.94),
  emissivity('epfl', 'stainless-steel', 'material', 'stainless steel after repeated heating, median of a span', 0.6),
  emissivity('aerodynamics', 'fired-clay', 'finish', 'brick', 0.9),
  {
    table: 'brickNotes',
    entry: 'common-red-brick',
    kind: 'material',
    property: 'thermal_expansion_per_K',
    row: 'fired clay masonry',
    theirs: 6.5e-6,
    half_digit: 0.05e-6,
    unit: '1/K',
  },
];

const BTU_lb = 2326;
const BTU_gal = 1055.05585262 / 0.003785411784;

/** Heating values, computed by the fuel's model over its doubts; `dry` without its moisture, `volume` of a cubic metre. */
export interface Heat {
  readonly table: TableName;
  readonly fuel: string;
  readonly row: string;
  readonly heat: 'lower' | 'higher';
  readonly dry?: true;
  readonly per?: 'volume';
  readonly theirs: number;
  readonly half_digit: number;
}

export const heats: readonly Heat[] = [
  { table: 'crc', fuel: 'methane', row: 'methane', heat: 'higher', theirs: 55.5e6, half_digit: 0.05e6 },
  { table: 'crc', fuel: 'propane', row: 'propane', heat: 'higher', theirs: 50.3e6, half_digit: 0.05e6 },
  { table: 'crc', fuel: 'natural-gas', row: 'natural gas', heat: 'higher', theirs: 54e6, half_digit: 0.5e6 },
  {
    table: 'crc',
    fuel: 'lump-charcoal',
    row: 'charcoal',
    heat: 'higher',
    dry: true,
    theirs: 34.7e6,
    half_digit: 0.05e6,
  },
  { table: 'crc', fuel: 'wood', row: 'oak', heat: 'higher', dry: true, theirs: 18.9e6, half_digit: 0.05e6 },
  { table: 'crc', fuel: 'wood', row: 'locust', heat: 'higher', dry: true, theirs: 19.7e6, half_digit: 0.05e6 },
  { table: 'crc', fuel: 'wood', row: 'Ponderosa pine', heat: 'higher', dry: true, theirs: 20e6, half_digit: 0.05e6 },
  { table: 'crc', fuel: 'wood', row: 'redwood', heat: 'higher', dry: true, theirs: 20.7e6, half_digit: 0.05e6 },
  { table: 'notes', fuel: 'methane', row: 'gas', heat: 'lower', theirs: 21_500 * BTU_lb, half_digit: 50 * BTU_lb },
  { table: 'notes', fuel: 'methane', row: 'gas', heat: 'higher', theirs: 23_900 * BTU_lb, half_digit: 50 * BTU_lb },
  { table: 'notes', fuel: 'diesel', row: 'no. 2 oil', heat: 'lower', theirs: 18_500 * BTU_lb, half_digit: 50 * BTU_lb },
  {
    table: 'notes',
    fuel: 'diesel',
    row: 'no. 2 oil',
    heat: 'higher',
    theirs: 19_700 * BTU_lb,
    half_digit: 50 * BTU_lb,
  },
  {
    table: 'lpGas',
    fuel: 'propane',
    row: 'one page',
    heat: 'higher',
    theirs: 21_591 * BTU_lb,
    half_digit: 0.5 * BTU_lb,
  },
  {
    table: 'lpGas',
    fuel: 'propane',
    row: 'another',
    heat: 'higher',
    theirs: 21_548 * BTU_lb,
    half_digit: 0.5 * BTU_lb,
  },
  {
    table: 'boneDry',
    fuel: 'wood',
    row: 'hardwood',
    heat: 'higher',
    dry: true,
    theirs: 8500 * BTU_lb,
    half_digit: 50 * BTU_lb,
  },
  {
    table: 'boneDry',
    fuel: 'wood',
    row: 'softwood',
    heat: 'higher',
    dry: true,
    theirs: 9000 * BTU_lb,
    half_digit: 50 * BTU_lb,
  },
  {
    table: 'extension',
    fuel: 'diesel',
    row: '#2 fuel oil',
    heat: 'higher',
    per: 'volume',
    theirs: 138_500 * BTU_gal,
    half_digit: 250 * BTU_gal,
  },
  {
    table: 'extension',
    fuel: 'used-motor-oil',
    row: 'waste oil',
    heat: 'higher',
    per: 'volume',
    theirs: 125_000 * BTU_gal,
    half_digit: 2500 * BTU_gal,
  },
];

/** °C, with each gas and air in the proportion that burns hottest. */
export const flames = [
  { fuel: 'methane', hottest_C: 1875 },
  { fuel: 'propane', hottest_C: 1925 },
  { fuel: 'butane', hottest_C: 1895 },
] as const;

/** J/kg. */
export const fusions = [
  { metal: 'pure-aluminium', element: 'Al', theirs: 396.9e3 },
  { metal: 'copper', element: 'Cu', theirs: 208.7e3 },
  { metal: 'zinc', element: 'Zn', theirs: 108.1e3 },
  { metal: 'tin', element: 'Sn', theirs: 60.2e3 },
  { metal: 'lead', element: 'Pb', theirs: 23.0e3 },
] as const;

/** EN 1993-1-2, annex C: λ = 14.6 + 0.0127 θ; c = 450 + 0.28 θ − 2.91e−4 θ² + 1.34e−7 θ³. */
export const stainlessSteel = [20, 500, 800].map((celsius) => ({
  celsius,
  conductivity_W_mK: 14.6 + 0.0127 * celsius,
  heat_capacity_J_kgK: 450 + 0.28 * celsius - 2.91e-4 * celsius ** 2 + 1.34e-7 * celsius ** 3,
}));
