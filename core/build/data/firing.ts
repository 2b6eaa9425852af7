import type { Stage } from '../stage.ts';

const hour = 3600;
const day = 24 * hour;
const practice = { source: 'common-practice', standing: 'common practice' } as const;

const rammed = { lining: ['rammed'] } as const;
const cast = { lining: ['cast'] } as const;
const gas = { fuel: ['gas'] } as const;
const charcoal = { fuel: ['charcoal'] } as const;
const oil = { fuel: ['oil'] } as const;
const blown = { fuel: ['charcoal', 'oil'] } as const;

/** What burns brings these wherever it is lit. */
const burning = [
  { when: gas, fact: 'propane' },
  { when: charcoal, fact: 'charcoal' },
  { when: blown, fact: 'mains-blower' },
] as const;

/** From a wet lining to the first pour. */
export const firing: readonly Stage[] = [
  {
    id: 'dry',
    name: 'Slow dry',
    do: [
      {
        when: rammed,
        text: 'In the shade, loosely covered for a day or two, then open, with air through the tuyere. No sun, no wind, no fire.',
      },
      {
        when: cast,
        text: 'Covered and wet for 24 h or more between 10 and 30 °C (50 and 86 °F), then open in the shade.',
      },
      'Weigh it, or a block made the same day; dry gives the days and dates.',
    ],
    done: ['One even colour, not cool to the cheek, and it loses less than 0.5 % a day on the scale.'],
    wrong: ['Sun or wind dries one side; frost; a fire in it to save the wait.'],
    time_s: { low: 2 * day, typical: 7 * day, high: 16 * day },
    holds: ['wet'],
    items: [
      { id: 'covered', text: 'covered for its first days, never below 5 °C (41 °F)' },
      { id: 'opened', text: 'opened in the shade, air through the tuyere' },
      { id: 'weight-steady', text: 'loses less than 0.5 % a day on the scale', holds: ['opened'] },
    ],
    facts: ['damp-lining', 'lift'],
    takes: ['lining'],
    logged: 'drying',
    source: 'luz-2022',
    standing: 'common practice',
  },
  {
    id: 'small-fires',
    name: 'Small fires',
    do: [
      'A lamp, or three to five lit lumps of charcoal on the floor: lid on a brick’s gap, no blast, fed each half hour.',
      'Hold below 120 °C (250 °F) while it steams. Out with coals if it jumps 50 °C (90 °F) in ten minutes.',
    ],
    done: ['A cold glass held over the vent for ten seconds stays clear, three times, a quarter of an hour apart.'],
    wrong: ['Too many coals: 300 °C (570 °F) in minutes, and the lining bursts.'],
    time_s: { low: 1 * day, typical: 2 * day, high: 3 * day },
    holds: ['dry', 'place'],
    items: [
      { id: 'lumps-only', text: 'warmed on a few lumps, no blast, until steam stopped' },
      { id: 'glass-clear', text: 'cold glass clear three times', holds: ['lumps-only'] },
    ],
    facts: ['hot-work', 'charcoal', 'damp-lining'],
    takes: ['lining'],
    source: 'luz-2022',
    standing: 'common practice',
  },
  {
    id: 'assemble',
    name: 'Assemble',
    do: [
      'Pot into the shell on its bricks, sleeve through shell and lining, lid on its seat. Two people for what size says takes two.',
    ],
    done: ['The tuyere runs through in one line, the lid lifts level with one tool.'],
    wrong: ['A lid that needs a hand over the vent; a sleeve that lets fill into the tuyere.'],
    time_s: { low: 1 * hour, typical: 3 * hour, high: 1 * day },
    holds: ['small-fires', 'shell'],
    items: [
      { id: 'pot-set', text: 'pot set on its bricks, upright and centred' },
      { id: 'sleeve-set', text: 'sleeve through shell and lining, tabs bent' },
      { id: 'lid-seats', text: 'lid seats, and lifts with one tool' },
    ],
    facts: ['lift', 'cut-wire'],
    takes: ['vessel'],
    ...practice,
  },
  {
    id: 'fill',
    name: 'Insulate',
    when: { fill: ['loose', 'blanket'] },
    do: [
      { when: { fill: ['loose'] }, text: 'Fill dry, tap, top up, close the rim; the steam holes stay open.' },
      {
        when: { fill: ['blanket'] },
        text: 'Mist the blanket, cut it with a knife, lay it without gaps or folds; scraps into a bag.',
      },
    ],
    done: [
      { when: { fill: ['loose'] }, text: 'No hollow sound; what went in agrees with the list.' },
      { when: { fill: ['blanket'] }, text: 'No gap at a seam, no bare edge where a hand or a flame goes.' },
    ],
    wrong: [
      { when: { fill: ['loose'] }, text: 'Wet fill: weeks of steam.' },
      { when: { fill: ['blanket'] }, text: 'Squeezed flat it insulates less; torn when dry it sheds.' },
    ],
    time_s: { low: 0.5 * hour, typical: 1 * hour, high: 3 * hour },
    holds: ['assemble'],
    items: [
      { id: 'filled', text: 'filled dry and tapped, no hollow sound', when: { fill: ['loose'] } },
      { id: 'blanket-laid', text: 'blanket laid without gaps, scraps bagged', when: { fill: ['blanket'] } },
      { id: 'holes-open', text: 'steam holes still open' },
    ],
    facts: ['dry-powder'],
    takes: ['fill'],
    ...practice,
  },
  {
    id: 'cold-test',
    name: 'Air or gas, cold',
    do: [
      {
        when: gas,
        text: 'Soap every joint at working pressure, twice. Off valve within reach, away from the vent. Nothing is lit.',
      },
      { when: charcoal, text: 'Blower on, no fire: air at the tuyere measured, the duct comes off or has a flap.' },
      {
        when: oil,
        text: 'Feed by gravity, no tank under pressure: shut-off tried, no drip, blower and flap tried. Nothing is lit.',
      },
    ],
    done: [
      { when: gas, text: 'No bubbles, twice; the off valve works; hose clear of everything hot.' },
      { when: blown, text: 'As much air as was worked out; the cord is off the path and behind an RCD or GFCI.' },
    ],
    wrong: [
      { when: gas, text: 'A leak at a home-drilled joint; the hose below the shell.' },
      { when: charcoal, text: 'A pipe too narrow for the blower; no way to cut the duct off.' },
      { when: oil, text: 'A drip under the burner; a tank above the flame.' },
    ],
    time_s: { low: 1 * hour, typical: 2 * hour, high: 4 * hour },
    holds: ['assemble', 'source'],
    items: [
      { id: 'no-bubbles', text: 'no bubbles at any joint, twice', when: gas },
      { id: 'off-valve', text: 'off valve within reach, tried with gloves on', when: gas },
      { id: 'air-measured', text: 'air at the tuyere measured, enough', when: blown },
      { id: 'duct-flap', text: 'duct comes off or has a flap; RCD or GFCI tried', when: blown },
      { id: 'oil-shut', text: 'oil shut-off tried, no drip, tank away from heat', when: oil },
    ],
    facts: ['hot-work', ...burning],
    source: 'osha-hib-1996',
    standing: 'common practice',
  },
  {
    id: 'first-burn',
    name: 'First burn, empty',
    do: [
      'No crucible, no metal. In the steps that dry gives: slowly through 100 to 350 °C (210 to 660 °F), hold while steam comes, slowly again from 500 to 650 °C (930 to 1200 °F), once to working heat.',
      'Then off, lid closed, overnight.',
    ],
    done: ['One colour all round, the face rings harder, no steam and no wet spot on the shell.'],
    wrong: ['Hurried through 100 to 350 °C: pieces fly. Lid off while hot: it cracks.'],
    time_s: { low: 6 * hour, typical: 12 * hour, high: 1 * day },
    holds: ['dry', 'small-fires', 'fill', 'cold-test', 'place'],
    items: [
      { id: 'in-steps', text: 'heated in steps, held while steam came' },
      { id: 'no-steam', text: 'no steam and no wet shell left', holds: ['in-steps'] },
      { id: 'cooled-closed', text: 'cooled closed, overnight', holds: ['in-steps'] },
    ],
    facts: ['hot-work', 'damp-lining', 'looking-in', 'hot-steel', ...burning],
    takes: ['vessel', 'lining'],
    source: 'luz-2022',
    standing: 'common practice',
  },
  {
    id: 'look',
    name: 'Look again, cold',
    do: [
      'Cracks by width and place, lid seat, tuyere, plinth, paint, fill. Patch with the same mix on damp, scored edges; a patch is dried like a lining.',
    ],
    done: ['A photo and the hottest shell in the log; nothing loose above where the crucible stands.'],
    wrong: ['A patch fired wet.'],
    time_s: { low: 0.5 * hour, typical: 1 * hour, high: 2 * day },
    holds: ['first-burn'],
    items: [
      { id: 'cracks-noted', text: 'cracks measured and noted, photo taken' },
      { id: 'nothing-loose', text: 'nothing loose above the crucible' },
      { id: 'patches-dry', text: 'patches dried and warmed slowly, or none needed' },
    ],
    facts: ['silica-dust', 'damp-lining', 'hot-steel'],
    takes: ['lining'],
    ...practice,
  },
  {
    id: 'rehearse',
    name: 'Cold rehearsal',
    do: [
      'In full gear, with the helper: lid off, lift, carry, pour, with the crucible full of dry sand at the weight of the melt. Twice.',
    ],
    done: ['Two clean runs, under 30 s from lid off to mould, nobody in the way.'],
    wrong: ['Tongs slip, the wrong side, gloves too stiff: now it costs nothing.'],
    time_s: { low: 0.5 * hour, typical: 1 * hour, high: 3 * hour },
    holds: ['look', 'place'],
    items: [
      { id: 'tongs-hold', text: 'tongs hold this crucible below its widest part' },
      { id: 'two-runs', text: 'two clean runs in full gear, each under 30 s' },
      { id: 'words-agreed', text: 'stop, clear and pouring: words agreed with the helper' },
    ],
    facts: ['hot-work', 'lift', 'child-near'],
    ...practice,
  },
  {
    id: 'melt',
    name: 'First melt',
    do: [
      'Half a charge of clean ingot or castings, aluminium first. Crucible dried, everything that touches metal warmed above 150 °C (300 °F).',
      { when: gas, text: 'Flame at the port first, then gas; gas off before the lift.' },
      { when: blown, text: 'Low blast until the crucible glows; blower off and duct open before the lift.' },
    ],
    done: ['Poured, the rest in warm ingot moulds, the crucible empty, the furnace closed and cooling.'],
    wrong: ['Cold or damp metal, tongs tried for the first time, a hurry.'],
    time_s: { low: 2 * hour, typical: 3 * hour, high: 5 * hour },
    holds: ['rehearse', 'look', 'first-burn', 'dry'],
    items: [
      { id: 'crucible-dried', text: 'crucible looked at, rung, dried above 120 °C (250 °F)' },
      { id: 'moulds-ready', text: 'mould dry, vented, weighted; spill tray and warm ingot mould ready' },
      { id: 'no-rain', text: 'no rain or snow to come for the melt and two hours after' },
      {
        id: 'all-clear',
        text: 'fire off, path clear, children out, shields down, temperature read',
        holds: ['crucible-dried', 'moulds-ready', 'no-rain'],
      },
      { id: 'poured', text: 'poured, crucible emptied, shut down', holds: ['all-clear'] },
    ],
    facts: ['hot-work', 'molten-metal', 'damp-charge', 'child-near', 'hot-steel', ...burning],
    takes: ['metal', 'vessel'],
    source: 'hse-molten-metal',
    standing: 'common practice',
  },
];
