import type { Stage } from '../stage.ts';

const hour = 3600;
const day = 24 * hour;
const practice = { source: 'common-practice', standing: 'common practice' } as const;

const rammed = { lining: ['rammed'] } as const;
const cast = { lining: ['cast'] } as const;

/** From an empty yard to a wet lining with every hole in it. */
export const making: readonly Stage[] = [
  {
    id: 'place',
    name: 'Place and gear',
    do: [
      'Bare soil, or slab and path under at least 50 mm (2 in) of dry sand. In the open, two sides free, nothing overhead.',
      'Furnace to mould in three level steps, walked cold; spill sand beside the furnace, burn water away from it.',
    ],
    done: ['A photo of the place, and everything below in it.'],
    wrong: ['Bare concrete under the metal, no water for a burn, nobody beside you who knows the off valve.'],
    time_s: { low: 2 * hour, typical: 4 * hour, high: 8 * hour },
    holds: [],
    items: [
      { id: 'ground-sand', text: 'dry sand, 50 mm (2 in) deep, under furnace, mould and the way between' },
      { id: 'open-air', text: 'in the open, two sides free, nothing overhead, no burn ban' },
      { id: 'burn-water', text: 'running tap or 20 L (5 gal) of clean water, phone and address beside it' },
      { id: 'fire-means', text: 'extinguisher, two buckets of dry sand, a dry steel shovel' },
      { id: 'gear-tried', text: 'shield, gloves, jacket, boots tried on, with nothing synthetic below' },
      { id: 'helper-told', text: 'a helper who knows the off valve and the burn drill, and does nothing else' },
    ],
    facts: ['hot-work', 'wet-ground', { when: { fuel: ['charcoal', 'oil'] }, fact: 'mains-blower' }],
    source: 'hse-molten-metal',
    standing: 'common practice',
  },
  {
    id: 'decide',
    name: 'Decide and measure',
    do: [
      'The metal, the fuel, and the crucible in your hand: measure it before anything is cut.',
      'Bore = widest crucible + two gaps; height = plinth or bed + crucible + room above.',
    ],
    done: ['One sheet with sizes, weights, heat and cost, and a crucible and tongs that fit the drawing.'],
    wrong: ['The crucible comes after the bore; tongs do not fit the gap.'],
    time_s: { low: 1 * hour, typical: 3 * hour, high: 7 * day },
    holds: [],
    items: [
      { id: 'rules-asked', text: 'local fire and gas rules, landlord and insurer asked' },
      { id: 'crucible-fits', text: 'crucible and tongs in hand, measured, and they fit the drawing' },
      { id: 'sizes-written', text: 'sizes, weights and cost on one sheet' },
      { id: 'zinc-cleared', text: 'shell worked out with wall, below 200 °C (392 °F)', when: { zinc: ['yes'] } },
    ],
    facts: [{ when: { zinc: ['yes'] }, fact: 'shell-not-computed' }],
    takes: ['metal', 'vessel'],
    ...practice,
  },
  {
    id: 'source',
    name: 'Buy and collect',
    do: [
      'Everything of the shopping list (checklist shop), new and dry where it must be: a shell of known contents, fill in closed bags.',
      { when: { fuel: ['gas'] }, text: 'Hose and regulator made for propane, in date.' },
    ],
    done: ['Every line of the list is in the shed and dry.'],
    wrong: ['Old loft fill, a drum of unknown contents, hose not made for gas.'],
    time_s: { low: 1 * day, typical: 5 * day, high: 21 * day },
    holds: ['decide'],
    items: [
      { id: 'lining-bought', text: 'the lining’s bags, dry', when: rammed },
      { id: 'castable-bought', text: 'castable in date, its sheet with the water and the set time', when: cast },
      { id: 'fill-bought', text: 'fill bought new, with a statement on asbestos', when: { fill: ['loose'] } },
      { id: 'blanket-bought', text: 'blanket, and bags for its scraps', when: { fill: ['blanket'] } },
      { id: 'fire-bought', text: 'burner, regulator, hose and cylinder', when: { fuel: ['gas'] } },
      { id: 'blower-bought', text: 'blower, blast pipe, charcoal in dry bags', when: { fuel: ['charcoal'] } },
      {
        id: 'oil-bought',
        text: 'burner, blower, gravity tank, shut-off valve and hose for oil',
        when: { fuel: ['oil'] },
      },
      { id: 'gear-bought', text: 'protective gear and tools' },
    ],
    facts: [],
    takes: ['fill', 'vessel'],
    ...practice,
  },
  {
    id: 'shell',
    name: 'Cut the shell',
    do: [
      {
        when: { vessel: ['open'] },
        text: 'An open container of known contents, washed. Bare or painted steel is better than stripped zinc.',
      },
      {
        when: { vessel: ['cylinder'] },
        text: 'Cut no cylinder yourself: a licensed shop takes the valve out and fills it with water first, or take an open drum instead.',
      },
      'Hole for the tuyere at the drawn height and slant, a drain, six to eight steam holes of 5 to 6 mm (1/4 in) low and high; legs; handles clear of the vent.',
    ],
    done: ['No sharp edge, it rocks on no leg, a rod passes every hole.'],
    wrong: ['A sealed drum is cut, zinc stays where it gets hot, steam holes are forgotten.'],
    time_s: { low: 3 * hour, typical: 1 * day, high: 2 * day },
    holds: ['source'],
    items: [
      { id: 'contents-known', text: 'open vessel, known contents, washed', when: { vessel: ['open'] } },
      {
        id: 'cylinder-opened',
        text: 'cylinder opened by a licensed shop, with its word for it',
        when: { vessel: ['cylinder'] },
      },
      { id: 'tuyere-cut', text: 'tuyere and drain cut where the drawing has them' },
      { id: 'steam-holes', text: 'six to eight steam holes of 5 to 6 mm (1/4 in), low and high' },
      { id: 'edges-filed', text: 'edges filed, legs and carrying handles on' },
    ],
    facts: [
      'cut-wire',
      { when: { zinc: ['yes'] }, fact: 'galvanised' },
      { when: { vessel: ['cylinder'] }, fact: 'cylinder-cutting' },
    ],
    takes: ['vessel'],
    source: 'aws-f4-1',
    standing: 'common practice',
  },
  {
    id: 'forms',
    name: 'Make the forms',
    do: [
      {
        when: { forms: ['mesh'] },
        text: 'Cut the mesh from the flat patterns of size, bend, lap and tie the seams, clip the shells apart.',
      },
      { when: { forms: ['card'] }, text: 'A smooth waxed card tube for the bore, another form for the outside.' },
      'A former for tuyere and drain that can be drawn out, with a little draft.',
    ],
    done: ['Bore centred within 3 mm (1/8 in), the tuyere rises outward and points as drawn.'],
    wrong: ['The tuyere falls outward; a former cannot be drawn.'],
    time_s: { low: 1 * hour, typical: 4 * hour, high: 1 * day },
    holds: ['decide'],
    items: [
      { id: 'bore-form', text: 'bore and outside forms, centred' },
      { id: 'tuyere-form', text: 'tuyere and drain formers, at angle and height' },
      { id: 'lid-form', text: 'lid form with its vent' },
    ],
    facts: [{ when: { forms: ['mesh'] }, fact: 'mesh' }],
    ...practice,
  },
  {
    id: 'trial',
    name: 'Test batch',
    do: [
      {
        when: rammed,
        text: 'One litre (a quart): squeeze it, ram a bar with two marks 100 mm apart, dry it, fire it beside charcoal.',
      },
      {
        when: cast,
        text: 'One small block with the maker’s water: cover it a day, dry it, warm it slowly beside charcoal.',
      },
    ],
    done: [
      { when: rammed, text: 'It shrank 1.5 mm in 100 or less, rings when knocked, did not slump.' },
      { when: cast, text: 'Hard all through, rings when knocked, no crack.' },
    ],
    wrong: ['Left out: then the whole lining cracks.'],
    time_s: { low: 2 * day, typical: 4 * day, high: 7 * day },
    holds: ['source'],
    items: [
      {
        id: 'squeeze-test',
        text: 'a squeezed handful holds and breaks clean; the water is written down',
        when: rammed,
      },
      { id: 'block-cast', text: 'block cast, its water weighed and written down', when: cast },
      { id: 'bar-measured', text: 'bar dried and measured: 1.5 % or less', when: rammed },
      { id: 'sample-fired', text: 'dry sample fired: it rings, no slump, no burst', holds: ['place'] },
    ],
    facts: ['silica-dust', 'dry-powder', 'hot-work', 'charcoal', 'damp-lining'],
    takes: ['lining'],
    ...practice,
  },
  {
    id: 'temper',
    name: 'Mix and temper',
    do: [
      'Outdoors, mask on. Weigh the dry parts, damp them, blend.',
      { when: rammed, text: 'Water in small shares, then 12 to 24 h to rest in a closed bag.' },
      {
        when: cast,
        text: 'The maker’s water, clean and weighed; only what is placed within its set time. Nothing is re-wetted.',
      },
    ],
    done: [
      { when: rammed, text: 'The squeeze test is right, no dry seams.' },
      { when: cast, text: 'It flows when shaken, and the water is within the sheet’s range.' },
    ],
    wrong: ['Water by eye; a batch stirred up again after it set.'],
    time_s: { low: 2 * hour, typical: 1 * day, high: 2 * day },
    holds: ['trial'],
    items: [
      { id: 'parts-weighed', text: 'dry parts weighed, damped and blended' },
      { id: 'mix-rested', text: 'rested 12 to 24 h in a closed bag, squeezed again', when: rammed },
      { id: 'water-weighed', text: 'water weighed, within the sheet’s range', when: cast },
    ],
    facts: ['silica-dust', 'dry-powder', 'lift'],
    takes: ['lining'],
    source: 'osha-1910-1053',
    standing: 'common practice',
  },
  {
    id: 'floor',
    name: 'Floor and plinth',
    do: [
      'Bricks or insulation below, then 40 to 50 mm (1 3/4 in) of hard floor with a fall to the drain. The plinth of the same mix, loose on it.',
    ],
    done: ['Level and firm, a thumb leaves no mark, a rod passes the drain.'],
    wrong: ['Loose fill alone under the floor: the plinth sinks.'],
    time_s: { low: 2 * hour, typical: 3 * hour, high: 1 * day },
    holds: ['forms', 'temper'],
    items: [
      { id: 'floor-laid', text: 'floor laid, firm, with its fall' },
      { id: 'drain-open', text: 'a rod passes the drain' },
      { id: 'plinth-made', text: 'plinth of the same mix, loose' },
    ],
    facts: ['silica-dust'],
    takes: ['lining'],
    ...practice,
  },
  {
    id: 'ram',
    name: 'Ram pot and lid',
    do: [
      {
        when: rammed,
        text: 'Layers of 40 to 50 mm (1 3/4 in), each scored 5 to 10 mm deep before the next; no smooth skin between.',
      },
      { when: cast, text: 'Pour and shake until the air stops coming; pot in one go, lid in one go.' },
      'The lid at least as thick as the wall, its seat flat.',
    ],
    done: ['Sounds solid; what went in is within 10 % of the mass that was worked out.'],
    wrong: ['Smooth joints between layers, a dry layer, hollows round the tuyere.'],
    time_s: { low: 3 * hour, typical: 6 * hour, high: 2 * day },
    holds: ['floor'],
    items: [
      { id: 'pot-rammed', text: 'pot rammed or cast, no hollows round the tuyere' },
      { id: 'lid-rammed', text: 'lid rammed or cast, at least as thick as the wall' },
      { id: 'mass-agrees', text: 'mass used within 10 % of the list' },
    ],
    facts: ['silica-dust', 'lift'],
    takes: ['lining'],
    ...practice,
  },
  {
    id: 'wet',
    name: 'Handles, anchors and every hole, while it is wet',
    do: [
      'Now and not later: lifting eyes and anchors into the lid, the vent, tuyere, burner port and drain cut clean, steam holes pricked through.',
    ],
    done: ['Every hole open with a clean edge; every anchor 20 mm (3/4 in) or more behind the hot face.'],
    wrong: ['A hole drilled into a dry lining cracks it; wire near the hot face splits it.'],
    time_s: { low: 0.5 * hour, typical: 1 * hour, high: 3 * hour },
    holds: ['ram'],
    items: [
      { id: 'anchors-set', text: 'anchors and lifting eyes set, 20 mm (3/4 in) behind the hot face' },
      { id: 'lid-handles', text: 'lid handles where no hand goes over the vent' },
      { id: 'vent-cut', text: 'vent cut to the drawn width' },
      { id: 'tuyere-reamed', text: 'tuyere or burner port drawn and reamed' },
      { id: 'drain-reamed', text: 'drain and steam holes pricked clear' },
    ],
    facts: ['damp-lining', 'cut-wire', 'lift'],
    takes: ['lining'],
    ...practice,
  },
];
