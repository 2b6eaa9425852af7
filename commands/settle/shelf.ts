/** A standing argument of the trade. What it comes to is computed when asked; nothing here knows the verdict. */
export interface Argument {
  readonly name: string;
  readonly aliases: readonly string[];
  readonly question: string;
  readonly sides: readonly {
    /** Short, for the card. */
    readonly name: string;
    /** What people on this side say, in fair words. */
    readonly says: string;
    /** What is computed for it; the asker's options go before these. */
    readonly line: string;
  }[];
  /** Figures it is weighed by. */
  readonly by: string;
  readonly leavesOut: string;
}

const wallLining = '1.5 in clay-sand lining';

export const shelf: readonly Argument[] = [
  {
    name: 'lump or briquettes',
    aliases: ['briquettes', 'lump charcoal or briquettes'],
    question: 'Lump charcoal or briquettes?',
    sides: [
      { name: 'lump charcoal', says: 'hotter and with little ash, so less of it burns', line: 'fuel lump charcoal' },
      { name: 'briquettes', says: 'cheaper by the bag and even in size', line: 'fuel briquettes' },
    ],
    by: 'cost, fuel, time',
    leavesOut: 'ash that clogs the bed, and how briquettes hold together under the blast',
  },
  {
    name: 'briquettes then lump or lump',
    aliases: ['when to switch', 'briquettes first'],
    question: 'Start on briquettes and finish on lump, or burn lump all through?',
    sides: [
      { name: 'briquettes, then lump', says: 'the cheap fuel warms the lining', line: 'fuel briquettes then lump' },
      { name: 'lump all through', says: 'changing fuels saves less than it bothers', line: 'fuel lump charcoal' },
    ],
    by: 'cost',
    leavesOut: 'the trouble of changing over, and briquettes still smouldering when lump goes on',
  },
  {
    name: 'charcoal or propane',
    aliases: ['propane'],
    question: 'Charcoal or propane for a melt?',
    sides: [
      { name: 'charcoal', says: 'cheap, hot, no bottle to freeze', line: 'fuel lump charcoal' },
      { name: 'propane', says: 'clean, even, off at a turn of the valve', line: 'fuel propane' },
    ],
    by: 'cost, time',
    leavesOut: 'what blower, burner, regulator and hose cost, and fumes',
  },
  {
    name: 'hottest fuel',
    aliases: ['charcoal or propane flame', 'which burns hottest'],
    question: 'Which fuel burns hottest?',
    sides: [
      { name: 'charcoal', says: 'smiths have melted iron with it', line: 'flame lump charcoal' },
      { name: 'propane', says: 'a roaring burner looks hotter', line: 'flame propane' },
      { name: 'waste oil', says: 'nothing beats oil', line: 'flame waste oil' },
    ],
    by: 'flame, left',
    leavesOut: 'that each is set with its own usual excess of air: excess= sets them alike',
  },
  {
    name: 'rich or lean flame',
    aliases: ['rich flame', 'is a rich flame hotter'],
    question: 'Is a rich flame hotter?',
    sides: [
      {
        name: 'rich, a tenth short of air',
        says: 'a soft yellow flame soaks the metal',
        line: 'flame propane excess=-10%',
      },
      { name: 'lean, a twentieth over', says: 'all of the fuel has to burn', line: 'flame propane excess=5%' },
    ],
    by: 'flame, left',
    leavesOut: 'the carbon monoxide of the rich flame, and the scale of the lean one',
  },
  {
    name: 'warm or cold blast',
    aliases: ['preheated blast', 'preheating the blast'],
    question: 'Does warming the blast pay?',
    sides: [
      {
        name: 'blast at 300 °C',
        says: 'heat that went up the vent comes back',
        line: 'flame lump charcoal air=300 °C',
      },
      { name: 'blast from outside', says: 'not worth the plumbing', line: 'flame lump charcoal air=20 °C' },
    ],
    by: 'left, flame',
    leavesOut: 'what the pipes cost and how long they last in the fire',
  },
  {
    name: 'bigger blower or wider pipe',
    aliases: ['bigger blower', 'bigger pipe'],
    question: 'More air: a bigger blower, or a wider pipe?',
    sides: [
      { name: 'bigger blower', says: 'push harder', line: 'blast charcoal blower=forge blower pipe=1 in x 4 ft' },
      {
        name: 'wider pipe',
        says: 'stop choking what you have',
        line: 'blast charcoal blower=hair dryer pipe=2 in x 4 ft',
      },
    ],
    by: 'air, power',
    leavesOut: 'noise and price, and whether the fire can use the air',
  },
  {
    name: 'deep or shallow bed',
    aliases: ['deep fuel bed', 'deep bed'],
    question: 'Does a deep bed of charcoal make more heat?',
    sides: [
      { name: 'bed of 16 in', says: 'more fuel, more fire', line: 'blast charcoal bed=16 in' },
      { name: 'bed of 6 in', says: 'the blast has to get through it', line: 'blast charcoal bed=6 in' },
    ],
    by: 'power',
    leavesOut: 'that a deeper bed leaves more of its carbon as CO, which burns above the lid: co= says how much',
  },
  {
    name: 'sea level or mountain',
    aliases: ['altitude'],
    question: 'Does a furnace high up lack air?',
    sides: [
      { name: 'sea level', says: 'a blower moves the same volume anywhere', line: 'blast charcoal altitude=0 m' },
      { name: '2000 m', says: 'thin air, thin fire', line: 'blast charcoal altitude=2000 m' },
    ],
    by: 'power',
    leavesOut: 'weather, which moves the pressure by a few per cent',
  },
  {
    name: 'perlite or vermiculite',
    aliases: ['vermiculite'],
    question: 'Perlite or vermiculite behind the lining?',
    sides: [
      { name: 'perlite', says: 'lighter and cheaper', line: 'wall 2 in clay-sand lining; 2 in perlite' },
      { name: 'vermiculite', says: 'stands more heat', line: 'wall 2 in clay-sand lining; 2 in vermiculite' },
    ],
    by: 'shell, stored',
    leavesOut: 'settling over the years, and the limit of each: the side’s own card holds it against its heat',
  },
  {
    name: 'blanket or loose fill',
    aliases: ['ceramic blanket', 'blanket or vermiculite'],
    question: 'Fibre blanket or loose fill behind the lining?',
    sides: [
      { name: 'blanket', says: 'thin and it stays where it is put', line: `wall ${wallLining}; 2 in fibre blanket` },
      { name: 'vermiculite', says: 'no fibres in the lungs', line: `wall ${wallLining}; 2 in vermiculite` },
    ],
    by: 'shell, stored',
    leavesOut: 'price, and what loose fibre does to lungs',
  },
  {
    name: 'heavy or light lining',
    aliases: ['thick dense wall or light one', 'dense or light'],
    question: 'A heavy lining that holds heat, or a light one?',
    sides: [
      {
        name: 'heavy',
        says: 'it holds the heat for the next melt',
        line: 'wall 3 in dense castable; 1 in vermiculite',
      },
      { name: 'light', says: 'less to warm before anything melts', line: 'wall 2 in fibre blanket' },
    ],
    by: 'heat, shell',
    leavesOut: 'the second melt of the day, which heavy linings are for: settle fuel … melts=3 by=fuel weighs that',
  },
  {
    name: 'heavy or light for three melts',
    aliases: ['heavy lining for many melts'],
    question: 'Does a heavy lining pay when melt follows melt?',
    sides: [
      {
        name: 'heavy',
        says: 'after the first melt it is hot already',
        line: 'fuel propane layers=2 in dense castable; 2 in vermiculite melts=3',
      },
      {
        name: 'light',
        says: 'it is hot in minutes every time',
        line: 'fuel propane layers=2 in fibre blanket melts=3',
      },
    ],
    by: 'fuel, time',
    leavesOut: 'how many knocks a blanket takes',
  },
  {
    name: 'two inches or four',
    aliases: ['two or four inches', 'more fill'],
    question: 'Two inches of fill, or four?',
    sides: [
      { name: 'two inches', says: 'the rest hardly shows in one firing', line: `wall ${wallLining}; 2 in vermiculite` },
      { name: 'four inches', says: 'twice the fill, half the loss', line: `wall ${wallLining}; 4 in vermiculite` },
    ],
    by: 'shell, loss, heat',
    leavesOut: 'room in the can and the price of the fill',
  },
  {
    name: 'more lining or more fill',
    aliases: ['does more fill cure a hot shell'],
    question: 'A hot shell: another inch of lining, or of fill?',
    sides: [
      {
        name: 'another inch of lining',
        says: 'mass holds it back',
        line: 'wall 2.5 in clay-sand lining; 2 in vermiculite',
      },
      {
        name: 'another inch of fill',
        says: 'insulation is what keeps heat in',
        line: 'wall 1.5 in clay-sand lining; 3 in vermiculite',
      },
    ],
    by: 'shell, heat',
    leavesOut: 'lid, tuyere and seams, where shells are often hottest',
  },
  {
    name: 'thin or thick lining over the fill',
    aliases: ['does the lining protect the fill'],
    question: 'Does a thicker lining protect the fill behind it?',
    sides: [
      { name: 'half an inch', says: 'a skin is enough', line: 'wall 0.5 in clay-sand lining; 3 in vermiculite' },
      {
        name: 'two inches',
        says: 'mass keeps the fill below its limit',
        line: 'wall 2 in clay-sand lining; 3 in vermiculite',
      },
    ],
    by: 'behind, stored',
    leavesOut: 'cracks, through which the flame finds the fill whatever the thickness',
  },
  {
    name: 'clay-sand or castable',
    aliases: ['clay or castable'],
    question: 'Clay and sand, or castable?',
    sides: [
      {
        name: 'clay and sand',
        says: 'a tenth of the price and mended with a handful',
        line: 'wall 1.5 in clay-sand lining; 2 in vermiculite',
      },
      {
        name: 'dense castable',
        says: 'it does not crack on the first fire',
        line: 'wall 1.5 in dense castable; 2 in vermiculite',
      },
    ],
    by: 'heat, shell',
    leavesOut: 'how long each lasts, and price: that is “clay-sand or castable, the price”',
  },
  {
    name: 'clay-sand or castable, the price',
    aliases: ['price of castable'],
    question: 'What does castable cost beside clay and sand?',
    sides: [
      { name: 'clay and sand', says: 'two bags from the builders’ yard', line: 'mix 30 L' },
      { name: 'castable', says: 'dear, but once', line: 'mix 30 L recipe=castable' },
    ],
    by: 'cost, weight',
    leavesOut: 'freight, and how often each is made again',
  },
  {
    name: 'zinc or paint',
    aliases: ['shiny zinc or paint', 'galvanised or painted'],
    question: 'Which shell stays cooler: shiny zinc or paint?',
    sides: [
      {
        name: 'galvanised',
        says: 'shiny reflects the heat',
        line: `wall ${wallLining}; 2 in vermiculite finish=galvanised`,
      },
      { name: 'painted', says: 'paint radiates it away', line: `wall ${wallLining}; 2 in vermiculite finish=painted` },
    ],
    by: 'shell, loss',
    leavesOut: 'that zinc fumes when it gets hot enough: the cautions say when',
  },
  {
    name: 'lid on or off after a melt',
    aliases: ['close or open the lid', 'lid on or off'],
    question: 'After a melt: lid on, or off?',
    sides: [
      { name: 'lid on', says: 'cool slowly, crack less', line: `wall ${wallLining}; 2 in vermiculite after=lid on` },
      {
        name: 'lid off',
        says: 'let the heat out upward, not through the shell',
        line: `wall ${wallLining}; 2 in vermiculite after=lid off`,
      },
    ],
    by: 'shell, touch',
    leavesOut: 'what fast cooling does to a lining, and embers and fumes from an open top',
  },
  {
    name: 'fast or slow firing',
    aliases: ['fast firing to cure a lining'],
    question: 'Does a fast fire bake the lining as deep as a slow one?',
    sides: [
      {
        name: 'up in 20 min',
        says: 'hot is hot',
        line: 'wall 2 in clay-sand lining; 2 in vermiculite ramp=20 min hold=40 min',
      },
      {
        name: 'up in 2 h',
        says: 'heat needs time to soak in',
        line: 'wall 2 in clay-sand lining; 2 in vermiculite ramp=2 h hold=40 min',
      },
    ],
    by: 'depth900, heat',
    leavesOut: 'steam: a damp lining fired fast bursts, whatever the depth',
  },
  {
    name: 'fired hard or gently',
    aliases: ['hard or gentle fire'],
    question: 'Fire hard and finish soon, or gently and save fuel?',
    sides: [
      { name: 'hard, 30 kW', says: 'every minute loses heat', line: 'fuel propane rate=30 kW' },
      { name: 'gently, 15 kW', says: 'a roaring fire goes up the vent', line: 'fuel propane rate=15 kW' },
    ],
    by: 'fuel, time',
    leavesOut: 'flue gas that leaves hotter when fired hard: flue= says how hot',
  },
  {
    name: 'one big melt or three small',
    aliases: ['one melt or several', 'one big melt or several small'],
    question: 'One big melt, or three small ones?',
    sides: [
      { name: 'one of 6 kg', says: 'the furnace is warmed once', line: 'fuel lump charcoal amount=6 kg' },
      { name: 'three of 2 kg', says: 'small pots melt fast', line: 'fuel lump charcoal amount=2 kg melts=3' },
    ],
    by: 'fuel, time',
    leavesOut: 'whether the big crucible fits, and who lifts it',
  },
  {
    name: 'steel or clay-graphite crucible',
    aliases: ['steel crucible', 'steel or graphite'],
    question: 'A steel pot or a clay-graphite crucible for aluminium?',
    sides: [
      { name: 'steel pot', says: 'thin and quick', line: 'fuel lump charcoal material=steel' },
      { name: 'clay-graphite', says: 'made for it', line: 'fuel lump charcoal material=clay-graphite' },
    ],
    by: 'fuel, time',
    leavesOut: 'that aluminium eats steel, slowly and then at once, and picks up its iron',
  },
  {
    name: 'preheated or cold scrap',
    aliases: ['preheat the scrap'],
    question: 'Does it pay to warm the scrap on the rim first?',
    sides: [
      { name: 'warmed to 200 °C', says: 'dry, and part of the heat is in', line: 'melt 5 kg aluminium from=200 °C' },
      { name: 'as it comes', says: 'the heat comes from the same fire', line: 'melt 5 kg aluminium from=20 °C' },
    ],
    by: 'heat',
    leavesOut: 'the reason that counts: damp scrap in molten metal throws it out of the pot',
  },
  {
    name: 'cool shell or little heat',
    aliases: ['does a cool shell prove good insulation'],
    question: 'Does a cool shell prove good insulation?',
    sides: [
      {
        name: 'thick and dense',
        says: 'the shell stayed cool, so it insulates',
        line: 'wall 6 in dense castable hold=30 min',
      },
      {
        name: 'thin and light',
        says: 'look at the fuel, not at the shell',
        line: 'wall 2 in fibre blanket hold=30 min',
      },
    ],
    by: 'shell, heat',
    leavesOut: 'firings of many hours, in which the dense wall warms through: at=hold 6 h',
  },
];
