import type { Source } from './source.ts';

/** Air supply, charcoal beds, gas jets and cylinders. */
export const blastSources = [
  {
    id: 'iso-2533',
    title: 'ISO 2533:1975, Standard atmosphere (US Standard Atmosphere 1976 below 32 km): lapse rate and constants',
    opened: 'memory',
    note: 'Held against the Python library fluids.',
  },
  {
    id: 'coolprop-fit',
    title: 'Fitted here to CoolProp 8 (reference equations of state); the fit error stands at each formula',
    opened: 'derived',
  },
  {
    id: 'magnus-wmo',
    title: 'Magnus formula for water vapour with the constants of the WMO guide CIMO (17.62, 243.12; 22.46, 272.62)',
    opened: 'memory',
    note: 'Held against CoolProp.',
  },
  {
    id: 'colebrook-1939',
    title: 'Colebrook, J. Inst. Civ. Eng. 11 (1939) 133, turbulent flow in pipes; start value by Haaland (1983)',
    opened: 'memory',
    note: 'Held against the Python library fluids.',
  },
  {
    id: 'fluids-fittings',
    title: 'Loss coefficients of fittings (Crane, Idelchik, Miller, Rennels, Blevins, Hooper) in Python library fluids',
    opened: 'library',
    note: 'The books themselves were not opened.',
  },
  {
    id: 'ergun-1952',
    title: 'Ergun, Chem. Eng. Prog. 48 (1952) 89, fluid flow through packed columns',
    opened: 'memory',
  },
  {
    id: 'olatunde-2019',
    title: 'Olatunde and Fasina, KONA 36 (2019) 232, CC BY: Ergun constants 201 and 2.7 for pine grinds',
    opened: 'abstract',
  },
  {
    id: 'fuel-2015-sphericity',
    title: 'Fuel 158 (2015) 232: sphericity of coal 0.73–0.83, char below 0.8, clinkered ash 0.65–0.8',
    opened: 'excerpt',
  },
  {
    id: 'charcoal-lump-density',
    title: 'An overview quoting EN 1860 and Kasetsart ANRES 242470: lump 280–510, bulk 180–220 kg/m³',
    opened: 'table',
  },
  {
    id: 'niosh-mortar-dust',
    title: 'NIOSH mortar-dust study, table B3: flow and pressure of a dust extractor, 40.3 L/s at 0.35 kPa and on',
    opened: 'table',
  },
  {
    id: 'hair-dryer-exercise',
    title: 'A heat-transfer textbook problem: hair dryer of 900 W heating air by 25 K through 60 cm²',
    opened: 'table',
    note: 'An exercise, not a measurement.',
  },
  {
    id: 'vacuum-specifications',
    title: 'General specifications of vacuum cleaners: shut-off about 20 kPa, household 10–20 kPa',
    opened: 'table',
  },
  {
    id: 'api-520-via-fluids',
    title: 'API 520 part 1, gas sizing examples 1 and 2, as carried by the Python library fluids',
    opened: 'library',
  },
  {
    id: 'nbs-tp-193',
    title:
      'NBS Technologic Paper 193 (1921), design of atmospheric gas burners: discharge varies with approach and channel',
    opened: 'abstract',
  },
  {
    id: 'ricou-spalding-1961',
    title: 'Ricou and Spalding, J. Fluid Mech. 11 (1961) 21; near field: Hill, J. Fluid Mech. 51 (1972) 773',
    opened: 'abstract',
  },
  {
    id: 'lewis-von-elbe',
    title: 'Lewis and von Elbe, Combustion, Flames and Explosions of Gases: critical boundary gradients',
    opened: 'memory',
  },
  {
    id: 'lp-gas-vapour-table',
    title: "Two LP-gas suppliers' tables of vapour drawn from a 100 lb cylinder, 100 to 10 lb of gas, 0–70 °F",
    opened: 'table',
    note: 'Straight lines that reach zero at the boiling point: the cylinder is run down to no pressure.',
  },
  {
    id: 'lp-gas-properties',
    title: "LP-gas suppliers' property pages: vapour pressure 28, 122, 190 psi at 0, 70, 100 °F; 21 548 Btu/lb",
    opened: 'table',
  },
  {
    id: 'cfr-29-1910-110-fill',
    title:
      '29 CFR 1910.110(b)(19), filling densities: 42 % by water capacity for small cylinders, with a worked example',
    opened: 'table',
  },
  { id: 'iso-235', title: 'ISO 235, jobber drills: metric diameters in steps of 0.1 mm and 0.05 mm', opened: 'memory' },
  { id: 'asme-b94-11', title: 'ASME B94.11M, twist drills: number and fractional inch sizes', opened: 'memory' },
] as const satisfies readonly Source[];
