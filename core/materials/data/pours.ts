import type { Pour } from '../pour.ts';
import { degrees, MEMORY, published } from './make.ts';

const FACE = 'Pour plus 100–200 K, judged; near a tuyere or flame 100–300 K more.';

export const pours = [
  {
    id: 'aluminium',
    name: 'aluminium',
    aliases: ['al', 'alu', 'aluminium alloy', 'cast aluminium', 'engine scrap', 'piston scrap'],
    liquidus_K: degrees(604, 615, 660.3, MEMORY, 'Casting alloys to pure metal.'),
    pour_K: degrees(620, 700, 790, published('aluminium-pour-pages'), 'Heavy 620 to thin 760; handled at 704–788.'),
    hot_face_K: degrees(800, 850, 960, MEMORY, FACE),
    failsWhen: 'Above 760 °C it takes up hydrogen and dross.',
    hazards: ['hot-work'],
  },
  {
    id: 'zinc-alloy',
    name: 'zinc alloy',
    aliases: ['zinc', 'pot metal', 'zinc die-cast', 'za alloy'],
    liquidus_K: degrees(387, 419.5, 484, MEMORY),
    pour_K: degrees(
      395,
      430,
      600,
      published('zinc-pour-en-12844'),
      'Alloy 3 395–435; ZA-12 and ZA-27 to 600 from memory.',
    ),
    hot_face_K: degrees(500, 580, 700, MEMORY, FACE),
    failsWhen: 'White fume above 500 °C; lead, tin or cadmium traces ruin it.',
    hazards: ['hot-work', 'zinc'],
  },
  {
    id: 'brass',
    name: 'yellow brass',
    aliases: ['brass', 'cartridge brass', 'cuzn'],
    liquidus_K: degrees(917, 941, 955, MEMORY),
    pour_K: degrees(1010, 1070, 1150, MEMORY),
    hot_face_K: degrees(1120, 1220, 1350, MEMORY, FACE),
    failsWhen: 'Zinc fumes 100–200 K below its boil; cover it, never overheat.',
    hazards: ['hot-work', 'zinc', 'lead'],
  },
  {
    id: 'bronze',
    name: 'bronze',
    aliases: ['tin bronze', 'silicon bronze', 'gunmetal', 'aluminium bronze'],
    liquidus_K: degrees(971, 1000, 1038, MEMORY),
    pour_K: degrees(1040, 1130, 1260, MEMORY),
    hot_face_K: degrees(1160, 1280, 1450, MEMORY, FACE),
    failsWhen: 'Gas and tin sweat when overheated.',
    hazards: ['hot-work'],
  },
  {
    id: 'copper',
    name: 'copper',
    aliases: ['cu', 'pure copper', 'copper scrap'],
    liquidus_K: degrees(1084.6, 1084.6, 1085, MEMORY),
    pour_K: degrees(1130, 1180, 1230, MEMORY),
    hot_face_K: degrees(1240, 1330, 1430, MEMORY, FACE),
    failsWhen: 'Takes up oxygen and hydrogen; deoxidise.',
    hazards: ['hot-work'],
  },
  {
    id: 'grey-iron',
    name: 'grey cast iron',
    aliases: ['iron', 'cast iron', 'grey iron'],
    liquidus_K: degrees(1130, 1200, 1250, MEMORY),
    pour_K: degrees(1300, 1370, 1440, published('iron-pour-page'), '1320–1440 on the page, 1300 from memory.'),
    hot_face_K: degrees(1420, 1520, 1640, MEMORY, FACE),
    failsWhen: 'Beyond most home linings and crucibles; slag eats fireclay.',
    hazards: ['hot-work'],
  },
] as const satisfies readonly Pour[];
