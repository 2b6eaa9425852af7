import type { Source } from './source.ts';

/** Heat, linings and materials. Read as excerpts, scopes and library tables: no standard here was read whole. */
export const heatSources = [
  {
    id: 'vdi-via-ht',
    title: 'VDI Heat Atlas refractory tables as carried by the Python library ht 1.2 (refractory_VDI_k, _VDI_Cp)',
    opened: 'library',
    note: 'The Atlas itself was not opened; the library clamps outside 400–1200 °C.',
  },
  {
    id: 'ashrae-via-ht',
    title: 'ASHRAE building material tables as carried by the Python library ht 1.2',
    opened: 'library',
  },
  {
    id: 'chemicals-library',
    title: 'Melting and boiling points of the elements as carried by the Python library chemicals',
    opened: 'library',
  },
  {
    id: 'coolprop',
    title: 'CoolProp 8: reference equations of state and transport of dry air, 101,325 Pa',
    opened: 'library',
  },
  {
    id: 'ht-library',
    title:
      'The Python library ht 1.2: free convection (Churchill and Chu 1975, McAdams) and wind (Churchill and Bernstein 1977)',
    opened: 'library',
    note: 'The papers themselves were not opened.',
  },
  {
    id: 'en-1993-1-2',
    title:
      'EN 1993-1-2:2005, Design of steel structures, structural fire design, section 3.4: k, cp and expansion of steel',
    opened: 'excerpt',
    note: 'Formulas read in a third-party reproduction.',
  },
  {
    id: 'en-15599-1',
    title: 'EN 15599-1:2010, In-situ insulation from expanded perlite: scope, −270 to +650 °C',
    opened: 'abstract',
  },
  {
    id: 'en-15600-1',
    title: 'EN 15600-1:2010, In-situ insulation from exfoliated vermiculite: scope, −40 to +1050 °C',
    opened: 'abstract',
  },
  { id: 'astm-c549', title: 'ASTM C549, Perlite loose fill insulation: scope, to 760 °C', opened: 'abstract' },
  {
    id: 'astm-c516',
    title: 'ASTM C516, Vermiculite loose fill insulation: scopes of 1980 to 2019 editions',
    opened: 'abstract',
  },
  {
    id: 'astm-c196',
    title: 'ASTM C196-00, Expanded or exfoliated vermiculite insulating cement: scope',
    opened: 'abstract',
  },
  { id: 'astm-c155', title: 'ASTM C155-97, Classification of insulating firebrick: first page', opened: 'excerpt' },
  {
    id: 'astm-c24',
    title: 'ASTM C24-01, Pyrometric cone equivalent: first page, end points not seen',
    opened: 'excerpt',
  },
  {
    id: 'astm-c27',
    title: 'ASTM C27-98, Classification of fireclay and high-alumina brick: first page',
    opened: 'excerpt',
  },
  { id: 'astm-c401', title: 'ASTM C401-91, Classification of alumina castables: first page', opened: 'excerpt' },
  {
    id: 'astm-c892',
    title: 'ASTM C892-00, High-temperature fibre blanket: tables 2 and 3 (density, shrinkage), conductivity not seen',
    opened: 'excerpt',
  },
  {
    id: 'astm-a740',
    title: 'ASTM A740-98, Hardware cloth, zinc-coated: first page and a wire table',
    opened: 'excerpt',
  },
  {
    id: 'c155-makers-table',
    title: "A maker's table of insulating firebrick by ISO 2245 and ASTM C155 group: density and reheat temperature",
    opened: 'excerpt',
  },
  {
    id: 'gost-5040',
    title: "GOST 5040-2015, Insulating fireclay and high-alumina brick: greatest conductivities, on a maker's page",
    opened: 'excerpt',
  },
  {
    id: 'van-garsel-1999',
    title:
      'van Garsel, Buhr, Gnauck, Routschka, insulating castables of CaO·6Al2O3, 42nd Int. Feuerfest-Kolloquium, 1999',
    opened: 'excerpt',
  },
  {
    id: 'tantawy-2017',
    title: 'Tantawy, Effect of high temperatures on cement paste, J. Mater. Sci. Chem. Eng. 5 (2017) 33, open access',
    opened: 'excerpt',
  },
  {
    id: 'gypsum-two-steps',
    title: "Loss of water of gypsum in two steps, 100–300 °C: instrument maker's note",
    opened: 'excerpt',
  },
  {
    id: 'izadifar-2020',
    title: 'Izadifar et al., dehydroxylation of kaolinite, 2020, open access: 400–700 °C',
    opened: 'excerpt',
  },
  {
    id: 'baumann-keller-1975',
    title:
      'Baumann and Keller, Bulk densities of selected dried natural and fired kaolin clays, Clays Clay Min. 23 (1975) 424',
    opened: 'abstract',
  },
  {
    id: 'bulk-density-tables',
    title: 'Two web tables of bulk density: clay, dry, excavated 1089 and bentonite 593 kg/m³',
    opened: 'excerpt',
  },
  {
    id: 'pottery-shrinkage-pages',
    title: 'Pottery pages on drying and firing shrinkage: 5–8 %, one body 6.25 + 6.66 %',
    opened: 'excerpt',
  },
  {
    id: 'ramming-water-pages',
    title: "Radford's Cyclopedia of Construction and a web essay: water of dry-press brick",
    opened: 'excerpt',
  },
  {
    id: 'brick-web-tables',
    title: 'Two web tables of brick conductivity, porosity and heat capacity, origin not stated',
    opened: 'excerpt',
  },
  {
    id: 'brick-expansion-handbook',
    title: 'A civil-engineering handbook page: expansion of brick, 3.1e-6 to 12e-6 per K',
    opened: 'excerpt',
  },
  {
    id: 'czech-order-361-2007',
    title:
      'Czech Government Order 361/2007, highest temperatures of touched surfaces, as a glass-trade page quotes a public-health office',
    opened: 'excerpt',
    note: 'The text of the law was not reached; its 10 s figure for metal looks like a copying slip.',
  },
  {
    id: 'burn-institute-list',
    title: "A burn institute's list of temperatures and times, in a standards mailing list, 1999; origin unsure",
    opened: 'excerpt',
  },
  {
    id: 'iso-13732-1',
    title: 'ISO 13732-1:2006, Contact with hot surfaces: burn thresholds from memory, only the scope was seen',
    opened: 'memory',
    note: 'Contact of 0.5 s and more, adult skin, less than about a tenth of the body.',
  },
  { id: 'emissivity-charts', title: "Instrument and thermal-camera makers' emissivity charts", opened: 'excerpt' },
  {
    id: 'perlite-industry-1983',
    title: 'Perlite industry data sheet, 1983: bulk density, moisture, softening, greatest use',
    opened: 'excerpt',
  },
  {
    id: 'vermiculite-makers-sheets',
    title: "Two makers' sheets of expanded vermiculite: density, moisture, conductivity, melting",
    opened: 'excerpt',
  },
  {
    id: 'low-vermiculite',
    title: 'Low, The thermal insulating properties of vermiculite: 0.0633–0.0738 W/mK',
    opened: 'abstract',
  },
  {
    id: 'perlite-guarded-plate',
    title: 'Guarded-hot-plate papers on evacuated and opacified perlite, 295–1073 K',
    opened: 'abstract',
  },
  {
    id: 'sand-porosity-2025',
    title: 'Appl. Sci. 15 (2025) 8566, open access: dry sand, porosity 35–45 %, conductivity falling with temperature',
    opened: 'excerpt',
  },
  {
    id: 'sand-caking-2015',
    title: 'Diago et al., desert sand as heat store, SolarPACES 2015: caking > 800, solid > 1000 °C',
    opened: 'abstract',
  },
  {
    id: 'fibre-supplier-note',
    title: "A supplier's note on fibre of the 1260 °C class: 1180 °C continuous",
    opened: 'excerpt',
  },
  {
    id: 'nist-c16-round-robin',
    title: 'NIST and ASTM C16.30 guarded-hot-plate round robin on fibrous alumina-silica board',
    opened: 'abstract',
  },
  {
    id: 'galvanisers-page',
    title: "A trade association of galvanisers' page: long service of zinc coatings above 200 °C",
    opened: 'excerpt',
  },
  {
    id: 'drum-supplier-tables',
    title: 'Drum suppliers’ tables: 55 US gal, inside 22.5 in, height 33.5 in tight and 32.8 in open head',
    opened: 'excerpt',
  },
  {
    id: 'cfr-49-173-28',
    title: '49 CFR 173.28(b)(4), least thickness of reused steel drums, by way of a reconditioner',
    opened: 'excerpt',
  },
  {
    id: 'propane-consumer-pages',
    title: 'Consumer pages on 20 lb propane cylinders: 12–12.5 in, water capacity 47.6–48 lb',
    opened: 'excerpt',
  },
  {
    id: 'aluminium-pour-pages',
    title: 'Aluminum Association safety page (704–788 °C) and a page quoting a German foundry handbook (620–760 °C)',
    opened: 'excerpt',
  },
  {
    id: 'zinc-pour-en-12844',
    title: 'EN 12844 table of zinc casting alloys: pouring of alloy 3 at 415–435 °C',
    opened: 'table',
  },
  { id: 'iron-pour-page', title: "One foundry's process page: grey iron poured at 1320–1440 °C", opened: 'table' },
] as const satisfies readonly Source[];
