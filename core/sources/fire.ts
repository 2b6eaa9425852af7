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
  {
    id: 'crc-fusion',
    title: 'CRC Handbook of Chemistry and Physics, melting points and heats of fusion of the elements',
    opened: 'library',
    note: 'As carried by chemicals 1.5. NASA data differ by at most 1.5 %, zinc by 3.5 %; tin of SGTE by 1.7 %.',
  },
  {
    id: 'sgte-dinsdale-1991',
    title: 'Dinsdale, SGTE data for pure elements, CALPHAD 15 (1991) 317: tin',
    opened: 'memory',
    note: 'Solid coefficients as seen in public repositories; the term of the liquid from memory.',
  },
  {
    id: 'nadca-a-3-2',
    title: 'NADCA standard A-3-2: melting ranges and densities of aluminium die-casting alloys',
    opened: 'table',
  },
  { id: 'en-1706', title: 'A table of BS EN 1706: aluminium casting alloys', opened: 'table' },
  {
    id: 'durdevic-2025',
    title: 'Đurđević and others, Metals 15 (2025) 1045, section 3.2: solidification of Al-Si5-Cu alloys',
    opened: 'excerpt',
  },
  {
    id: 'assael-2006',
    title: 'Assael and others, J. Phys. Chem. Ref. Data 35 (2006) 285: density of liquid aluminium and iron',
    opened: 'abstract',
  },
  {
    id: 'assael-2012',
    title: 'Assael and others, J. Phys. Chem. Ref. Data 41 (2012), doi 10.1063/1.4729873: liquid zinc and others',
    opened: 'abstract',
  },
  { id: 'zinc-alloy-sheets', title: 'Two property tables of zinc alloy 3, ZA-12 and ZA-27', opened: 'table' },
  { id: 'alloy-property-site', title: 'A public alloy property site: C83300, ZA-12', opened: 'table' },
  { id: 'founder-c83600', title: 'Two founders’ sheets of red brass C83600: density', opened: 'table' },
  { id: 'founder-c85300', title: "A founder's sheet of yellow brass C85300: 916–943 °C, 8.53", opened: 'table' },
  {
    id: 'founder-c87200',
    title: "A founder's sheet of silicon bronze C87200: 860–971 °C, 8.36, 1/4 in/ft",
    opened: 'table',
  },
  {
    id: 'founder-c87500',
    title: "A founder's sheet of silicon brass C87500: pouring temperatures too",
    opened: 'excerpt',
  },
  { id: 'founder-c95400', title: "A founder's sheet of aluminium bronze C95400", opened: 'excerpt' },
  { id: 'cda-c90300', title: "A founder's copy of the Copper Development Association's sheet C90300", opened: 'table' },
  { id: 'wrought-brass-sheets', title: "Suppliers' sheets of wrought brass C37000 and CuZn39Pb3", opened: 'table' },
  { id: 'workshop-table-book', title: 'Westermann Tables, a workshop table book, materials page', opened: 'table' },
  {
    id: 'shrink-lists',
    title:
      "Dooley, Applied Science for Metal Workers, ch. XXXI; a patternmaker's list; a workshop table book: shrinkage",
    opened: 'table',
    note: 'They disagree by a half and more; constrained shapes shrink less.',
  },
  {
    id: 'msf-2014-1083',
    title: 'Mater. Sci. Forum 794–796 (2014) 1083: about 90 % of aluminium turnings recovered in a heel',
    opened: 'abstract',
  },
  {
    id: 'furnace-loss-note',
    title: 'A Japanese note on furnace technology: melting loss of aluminium by kind of furnace',
    opened: 'table',
  },
  {
    id: 'cupola-course-13',
    title: 'Foundry course notes, chapter 13: losses of elements in a cupola',
    opened: 'table',
  },
  {
    id: 'melt-loss-note',
    title: 'A note on melt loss: copper loses about 0.5 % from a heated block',
    opened: 'excerpt',
  },
  { id: 'osha-1910-1025', title: 'OSHA, 29 CFR 1910.1025(b)(c), Lead', opened: 'table' },
  { id: 'osha-277000', title: 'OSHA chemical data 277000, zinc oxide fume', opened: 'table' },
  { id: 'niosh-copper-fume', title: 'NIOSH IDLH 1317380 and OSHA 229400, copper fume', opened: 'table' },
  {
    id: 'niinomi-1982',
    title: 'Niinomi and others, Trans. JIM 23 (1982) 780: iron dissolving in liquid aluminium',
    opened: 'abstract',
  },
  {
    id: 'charcoal-melt-thesis',
    title: 'A student thesis: 3 kg of charcoal melted 10 kg of aluminium in 93 min',
    opened: 'abstract',
  },
  {
    id: 'casting-course-20',
    title:
      'A university casting course, chapter 20: commercial crucible furnaces 3.5 to 28 %, about 3300 Btu/lb of aluminium',
    opened: 'table',
  },
] as const satisfies readonly Source[];
