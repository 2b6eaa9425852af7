import type { Source } from './source.ts';

/** Safety and practice. Read as excerpts unless said: enough for the fact cited, not for the document. */
export const practiceSources = [
  {
    id: 'osha-1910-1053',
    title: 'OSHA, 29 CFR 1910.1053, Respirable crystalline silica',
    opened: 'excerpt',
    note: 'Limit and action level read in a secondary page.',
  },
  { id: 'niosh-silica-blog', title: 'NIOSH Science Blog, silica dust and its control, August 2020', opened: 'excerpt' },
  {
    id: 'niosh-ceramic-fibre',
    title: 'NIOSH 2006-123, Refractory ceramic fibers, update of 12 June 2006',
    opened: 'excerpt',
  },
  { id: 'hse-ceramic-fibre', title: 'HSE, OC 267/3 version 2, Refractory ceramic fibres', opened: 'excerpt' },
  {
    id: 'epa-vermiculite',
    title: 'EPA and ATSDR, Current best practices for vermiculite attic insulation, May 2003',
    opened: 'excerpt',
  },
  {
    id: 'hse-cis26',
    title: 'HSE, Construction information sheet 26, Cement',
    opened: 'excerpt',
    note: 'As quoted by a building encyclopaedia.',
  },
  {
    id: 'luz-2022',
    title: 'Luz and others, drying behaviour and explosive spalling of refractory castables, parts 1 and 2, 2022',
    opened: 'abstract',
  },
  {
    id: 'hse-molten-metal',
    title: 'HSE, Molten metals: safety topics and frequent questions, web pages',
    opened: 'excerpt',
  },
  {
    id: 'hse-molten-metal-clothing',
    title: 'HSE, Molten metal: selecting protective clothing, web pages',
    opened: 'excerpt',
  },
  { id: 'cmf-alert-2021', title: 'Cast Metals Federation, safety alert, 31 March 2021', opened: 'excerpt' },
  {
    id: 'isri-alert-2017',
    title: 'ISRI, safety alert on closed containers in scrap, 18 January 2017',
    opened: 'excerpt',
  },
  {
    id: 'aluminum-association-scrap',
    title: 'Aluminum Association, guideline on scrap receiving and inspection, scope; safety page',
    opened: 'excerpt',
  },
  {
    id: 'aluminium-sds',
    title: 'Safety data sheet of an aluminium producer',
    opened: 'excerpt',
    note: 'Trade source.',
  },
  {
    id: 'magnesium-welding-trade',
    title: 'Page of a welding supplier on magnesium fires',
    opened: 'excerpt',
    note: 'Trade source.',
  },
  {
    id: 'metal-fire-trade',
    title: 'Trade pages and one reviewed page on class D metal fires',
    opened: 'excerpt',
    note: 'NFPA 10 and NFPA 484 were not opened.',
  },
  { id: 'crucible-care-journal', title: 'Foundry trade journal, list on crucible life and care', opened: 'excerpt' },
  { id: 'modern-casting-2012', title: 'Modern Casting, January 2012, on aluminium dross', opened: 'excerpt' },
  { id: 'niosh-beryllium', title: 'NIOSH, EPHB 326-16a, abstract; OSHA beryllium rule notices', opened: 'abstract' },
  { id: 'niosh-zinc-fume', title: 'NTIS PB97206379, metal fume fever and zinc oxide', opened: 'abstract' },
  { id: 'osha-cadmium', title: 'OSHA, Cadmium, safety and health topic, archived 2008', opened: 'excerpt' },
  { id: 'cdc-lead', title: 'CDC, lead page; NIOSH leaflet on take-home lead, 2019', opened: 'excerpt' },
  {
    id: 'ends-hexachloroethane',
    title: 'ENDS Report on the EU directive on hexachloroethane in non-ferrous foundries',
    opened: 'excerpt',
  },
  {
    id: 'cpsc-co',
    title: 'US CPSC, charcoal and carbon monoxide, three pages (1985, 1999, undated)',
    opened: 'excerpt',
  },
  {
    id: 'osha-1910-110',
    title: 'OSHA, 29 CFR 1910.110 and 1926.153, Liquefied petroleum gas',
    opened: 'excerpt',
    note: 'Read through a question-and-answer page.',
  },
  { id: 'osha-hib-1996', title: 'OSHA, Hazard information bulletin, 7 October 1996, LPG regulator', opened: 'excerpt' },
  {
    id: 'lpg-handling-trade',
    title: 'Handling sheet of a propane supplier (120 °F)',
    opened: 'excerpt',
    note: 'Trade source.',
  },
  {
    id: 'lpg-cold-trade',
    title: 'Supplier page on LPG containers in the cold',
    opened: 'excerpt',
    note: 'Trade source.',
  },
  {
    id: 'emergency-service-charcoal',
    title: 'Page of an emergency service on lighting charcoal',
    opened: 'excerpt',
  },
  {
    id: 'oregon-osha-gfci',
    title: 'Oregon OSHA and a university page, ground-fault circuit interrupters',
    opened: 'excerpt',
  },
  {
    id: 'aws-f4-1',
    title: 'AWS F4.1, Safe practices for preparing containers and piping for welding and cutting, scope',
    opened: 'excerpt',
  },
  { id: 'its-90', title: 'ITS-90, table of defining fixed points (zinc 692.677 K)', opened: 'table' },
  {
    id: 'galvanising-trade',
    title: 'Galvanising trade guidance on service temperature, 200 °C',
    opened: 'excerpt',
    note: 'Trade source.',
  },
  { id: 'niosh-lifting', title: 'NIOSH 94-110, Revised lifting equation, load constant 23 kg', opened: 'memory' },
  {
    id: 'okuno-1991',
    title: 'Okuno, Annals of Occupational Hygiene 35 (1991) 1, infrared and cataract',
    opened: 'abstract',
  },
  { id: 'nhs-burns', title: 'North Bristol NHS Trust, first aid for burns, web page', opened: 'excerpt' },
  { id: 'kent-fire', title: 'Kent Fire and Rescue Service, burns and clothing fires, web page', opened: 'excerpt' },
  { id: 'first-aid-general', title: 'General public first-aid teaching, not opened', opened: 'memory' },
] as const satisfies readonly Source[];
