import type { Source } from './source.ts';

/** Water, steam and drying. */
export const drySources = [
  {
    id: 'iapws-if97',
    title:
      'IAPWS R7-97(2012), Industrial Formulation 1997 for water and steam, region 4: equations 29 to 31, tables 34 to 36',
    opened: 'memory',
    note: "Coefficients from memory; they give the standard's own verification values to nine digits, and CoolProp's pressures.",
  },
  {
    id: 'crank-1975',
    title: 'Crank, The Mathematics of Diffusion, 2nd edition, 1975, chapter 4: plane sheet, surface evaporation',
    opened: 'memory',
    note: 'Held against a numerical solution of the same equation.',
  },
  {
    id: 'lewis-analogy',
    title:
      'Heat and mass transfer analogy of a wet surface in air (Chilton and Colburn 1934; Lewis number 0.85 to 0.9)',
    opened: 'memory',
    note: 'Held against wet-bulb temperatures of CoolProp.',
  },
  {
    id: 'vasic-2012',
    title:
      "Vasić, Radojević, Grbavčić, effective diffusion coefficient of clay while drying, J. Serb. Chem. Soc. 77 (2012) 523: Crank's equation gives drying curves to 90 %",
    opened: 'abstract',
    note: 'Their coefficients were not seen.',
  },
  {
    id: 'castable-makers-dry-out',
    title: "A castable maker's instruction and two engineers' threads: cure, ramps, holds and cooling of castables",
    opened: 'excerpt',
  },
  {
    id: 'plastic-makers-dry-out',
    title: "A maker's sheet of clay-bonded ramming plastic: 107 °C, 316 °C, 649 °C with holds",
    opened: 'excerpt',
    note: 'One printed rate looks like a scan error; the thickness it is meant for is not stated.',
  },
  {
    id: 'castable-makers-cure',
    title: "A castable maker's curing standard, and a supplier's winter guide",
    opened: 'excerpt',
  },
  {
    id: 'studio-fog-test',
    title: "A pottery studio's page and a potters' list: cold glass over the vent",
    opened: 'excerpt',
  },
] as const satisfies readonly Source[];
