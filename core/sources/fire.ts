import type { Source } from './source.ts';

/** Fuels and burning. Gas properties come from one report's polynomials; fuel tables were read as excerpts. */
export const fireSources = [
  {
    id: 'nasa-tm-4513',
    title:
      'McBride, Gordon and Reno, Coefficients for Calculating Thermodynamic and Transport Properties, NASA TM-4513, 1993',
    opened: 'library',
    note: 'Coefficients as carried by the data files of cantera 3.2 (nasa_gas.yaml, nasa_condensed.yaml).',
  },
  {
    id: 'nasa-rp-1311',
    title:
      'Gordon and McBride, Computer Program for Chemical Equilibrium, NASA RP-1311, part I: reduced Gibbs iteration',
    opened: 'memory',
  },
  {
    id: 'lp-gas-suppliers-tables',
    title: "Two LP-gas suppliers' property tables: heating value, air need, vapour pressure of commercial propane",
    opened: 'table',
  },
  {
    id: 'furnaces-and-boilers-notes',
    title: 'Furnaces and Boilers, university notes: heating values of gas, propane and heating oil',
    opened: 'table',
  },
  {
    id: 'charcoal-en-1860-overview',
    title: 'An overview of barbecue charcoal quoting EN 1860-2: limits of ash, moisture, fixed carbon; densities',
    opened: 'table',
  },
  {
    id: 'charcoal-kasetsart',
    title: 'Charcoal of five species, Agriculture and Natural Resources no. 242470, Kasetsart University',
    opened: 'table',
  },
  {
    id: 'charcoal-fao-41',
    title: "FAO Forestry Paper 41, Simple technologies for charcoal making, as quoted in a stove laboratory's notes",
    opened: 'excerpt',
  },
  {
    id: 'charcoal-fao-x5328',
    title: 'FAO x5328e, Industrial charcoal making, chapter 10: using charcoal efficiently',
    opened: 'excerpt',
  },
  {
    id: 'charcoal-olade',
    title: 'Energy agencies’ definitions of charcoal: 10–15 % water, 27.2 MJ/kg',
    opened: 'excerpt',
  },
  {
    id: 'charcoal-heliyon-2022',
    title: 'Mencarelli, Cavalli and Greco, Heliyon 8 (2022) e10052: quality of barbecue charcoal and briquettes',
    opened: 'abstract',
  },
  {
    id: 'charcoal-survey-2025',
    title: 'Eur. J. Wood Prod. 83:4 (2025): 39 of 42 retail bags of lump charcoal missed a limit of EN 1860-2',
    opened: 'abstract',
  },
  {
    id: 'coke-definitions',
    title: 'General definitions of coke: 90 % carbon, 25 million Btu a ton',
    opened: 'excerpt',
  },
  {
    id: 'bone-dry-wood',
    title: 'An encyclopaedia entry on bone-dry wood: 8500 to 9000 Btu/lb, gross',
    opened: 'table',
  },
  {
    id: 'rapeseed-fuel-standard',
    title: 'RK standard of rapeseed oil as fuel: lower heating value at least 35.0 MJ/kg',
    opened: 'table',
  },
  { id: 'used-oil-chapter', title: 'A chapter on used lubricating oil as fuel: 140,000 Btu/gal', opened: 'excerpt' },
  { id: 'used-oil-journal', title: 'A trade journal on used oil heaters: to 150,000 Btu/gal', opened: 'excerpt' },
  {
    id: 'doe-process-heating-1',
    title: 'US Department of Energy, Process Heating Tip Sheet 1 (2007), Preheated Combustion Air',
    opened: 'excerpt',
    note: 'Its table of savings was not visible.',
  },
] as const satisfies readonly Source[];
