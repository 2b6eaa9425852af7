/** Every fact a rule may ask for, with what it means. A command that names another fact is caught by a test. */
export const factMeanings = {
  // What is done
  'hot-work': 'Anything is lit, fired, melted or poured, or is planned to be.',
  'fast-firing': 'Heated faster than the drying schedule of its material.',
  'molten-metal': 'Metal is or will be liquid.',
  lift: 'Something heavy is lifted or carried by hand.',
  'looking-in': 'Someone looks into a glowing bore.',
  'flame-out': 'The burner went out while the chamber was hot.',
  'rich-flame': 'A flame has less air than it needs.',
  'blower-off': 'The blower stopped while the fire was hot.',
  unattended: 'Nobody, or nobody sober, is watching, or the melter is alone.',
  'child-near': 'A child, a pet or a visitor is within reach or splash.',
  'synthetic-clothes': 'Synthetic cloth, bare skin, laces, rolled trousers or wet gloves near metal.',
  'hot-day': 'Above about 28 °C, in leathers, for more than half an hour.',
  burn: 'Someone has been burned.',
  fever: 'Someone feels ill in the hours after a melt.',
  'metal-fire': 'Metal or swarf is burning, or liquid metal has been spilled.',
  // Dust and lining
  'dry-powder': 'A dry powder is tipped, weighed or mixed.',
  'silica-dust': 'The dust may hold crystalline silica: clay, sand, grog, cement, old lining.',
  'damp-lining': 'The lining holds water: fresh, wetted, or left in the weather.',
  gypsum: 'Gypsum or plaster of Paris is in the lining.',
  portland: 'Portland cement binds the lining.',
  'lining-short': 'A layer of the lining is below what the metal asks of it.',
  'ceramic-fibre': 'Refractory ceramic fibre: blanket, board or paper.',
  'fired-fibre': 'Ceramic fibre that has been hot for long.',
  caustic: 'Wet cement, lime, castable or sodium silicate.',
  'old-vermiculite': 'Vermiculite, whose age may be unknown or which may come from a loft.',
  // Metal
  'zinc-alloy': 'The melt holds zinc: brass, zinc casting alloy, galvanised scrap.',
  'lead-alloy': 'The melt holds lead: leaded brass or bronze, solder, wheel weights, old paint.',
  magnesium: 'Magnesium, or a light metal that may be.',
  beryllium: 'Beryllium copper: springs, non-sparking tools, mould inserts.',
  cadmium: 'Cadmium plate or cadmium-bearing silver braze.',
  oxidiser: 'Nitrate, fertiliser, heavy rust or a metal oxide near liquid aluminium.',
  'closed-scrap': 'Scrap that is hollow, crimped, pressurised or not opened.',
  'damp-charge': 'Cold, damp or rusty metal, tools or flux are to touch the melt.',
  'damp-mould': 'The mould is wet, unvented, or its plaster is not baked out.',
  'chlorine-flux': 'Degassing tablets with chlorine, pool chlorine or a flux of unknown make-up.',
  dross: 'Dross, fines or swarf are kept.',
  'overfull-pot': 'Charge above the rim, a bar longer than the pot, a wedged or bridged charge.',
  'light-cope': 'The computed lift on cope and cores is not held by weights or clamps.',
  'infrared-gun': 'An infrared thermometer is used on bright metal.',
  'reused-pot': 'Cookware, or a pot that has held lead, copper-beryllium or something unknown.',
  'worn-crucible': 'The crucible is cracked, thin, dull in ring, or iron for a copper alloy.',
  // Shell and vessel
  galvanised: 'Zinc-coated steel in the shell or near the fire.',
  'shell-not-computed': 'A shell is planned and nobody has worked out how hot it gets.',
  mesh: 'Wire mesh or expanded metal is handled.',
  'cut-wire': 'Wire or sheet has been cut and its ends are bare.',
  cylinder: 'A gas cylinder is in use or is looked at as a shell.',
  'cylinder-cutting': 'A gas cylinder is to be cut, drilled, ground or welded.',
  'sealed-vessel': 'A closed drum, can or tank is to be cut, welded or heated.',
  'warmed-cylinder': 'A cylinder is warmed by flame, hot water, radiation or sun.',
  'frosted-cylinder': 'The cylinder is frosted or its flame died of cold.',
  'hot-steel': 'The shell or a casting is or was lately hot.',
  // Fire and place
  charcoal: 'Charcoal, coke or wood is burned, embers too.',
  propane: 'Propane, butane or their mixture is burned or kept.',
  indoors: 'In a house, garage, shed, tent, cellar or under a closed roof.',
  'low-ground': 'A pit, a drain or low ground is near.',
  accelerant: 'Petrol, thinner or paraffin is to start the fire.',
  'oil-fire': 'Oil is burned.',
  'used-oil': 'The oil has been in an engine or a machine.',
  'pressurised-oil': 'Waste oil is fed from a tank under pressure.',
  'dry-weather': 'Strong wind, dry grass or a burn ban.',
  rain: 'Rain, snow or a drip may reach the fire or the metal.',
  'wet-ground': 'Concrete, paving, tarmac, ice or wet soil under the furnace or the pour.',
  'mains-blower': 'A blower or tool on mains power.',
  'water-near-metal': 'Water is near liquid metal or is meant to put it out.',
} as const;

export type Fact = keyof typeof factMeanings;

export const facts = Object.freeze(Object.keys(factMeanings) as Fact[]);

export const isFact = (name: string): name is Fact => Object.hasOwn(factMeanings, name);

/** Every number a rule may ask for, in SI, the unit as suffix. Give the adverse end of a range. */
export const numberMeanings = {
  shell_K: 'Hottest outer shell temperature.',
  hot_face_K: 'Temperature the lining meets at its hot face.',
  interface_K: 'Temperature where the hot face meets the backing.',
  melt_K: 'Temperature of the liquid metal.',
  cylinder_K: 'Skin temperature of a gas cylinder.',
  lift_kg: 'Mass lifted at once: pot, metal and tongs, or a full tub.',
  lining_water: 'Water left in the lining as a share of its dry mass.',
  mould_water: 'Water in the moulding sand as a share of its mass.',
  irradiance_W_m2: 'Radiant heat at the eye.',
} as const;

export type HazardNumber = keyof typeof numberMeanings;

export const hazardNumbers = Object.freeze(Object.keys(numberMeanings) as HazardNumber[]);
