const gases =
  'propane|lpg|gas|butane|oxygen|oxy|acetylene|helium|balloon|argon|nitrogen|nitrous|hydrogen|chlorine|ammonia|co2|carbon dioxide|welding|freon|refrigerant|air|scuba|diving|camping';

/** What keeps gas under pressure, by name of the vessel or of its gas. `bottle=` is an option, not a bottle. */
const pressureVessel =
  /\b(?:cylinders?|tanks?|bottles?|extinguishers?|acetylene|oxygen|helium|argon|nitrogen|nitrous|hydrogen|chlorine|ammonia|co2|refrigerant|freon|r-?(?:12|22|32|134a|404a|410a|600a)|compressors?|receivers?|air ?bags?|scuba|dewars?|lpg|propane|butane|pressure (?:vessel|cooker|pot))\b(?!\s*=)/i;
const closedVessel =
  /\b(?:closed|sealed|tight[- ]?head|kegs?|boilers?|water heaters?|aerosols?|spray cans?|jerry ?cans?)\b/i;

/** What is dangerous to open up for a shell, in a text that names one, in any of the ways people name it. */
export const shellFactsIn = (text: string): readonly string[] => {
  const plain = text.replaceAll('-', ' ');
  return [
    ...(pressureVessel.test(text) || pressureVessel.test(plain) ? ['cylinder', 'cylinder-cutting'] : []),
    ...(closedVessel.test(plain) ? ['sealed-vessel'] : []),
  ];
};

/** Words that people type and the facts they mean, so that a caution reaches refusals and errors too. */
const words: readonly (readonly [RegExp, string])[] = [
  [/galvani[sz]ed|\bzinc[- ]?(?:plated|coated)|trash can|garbage can/i, 'galvanised'],
  [/gypsum|plaster of paris|\bplaster\b|drywall/i, 'gypsum'],
  [/portland|(?<!low[- ])\bcement\b|concrete/i, 'portland'],
  [
    new RegExp(String.raw`\b(?:${gases}|\d ?(?:lb|kg))s?[- ](?:\w+ )?(?:cylinder|bottle|tank)|extinguisher`, 'i'),
    'cylinder',
  ],
  [
    /\bwarm(?:ed|ing)\b|warm water|\b(?:cylinder|bottle|tank)\b[^;]*\b(?:warm|torch|hot water)\b|\b(?:warm|torch)\b[^;]*\b(?:cylinder|bottle|tank)\b|heat blanket|heat(?:ed|ing)? (?:the |a |my )?(?:cylinder|bottle|tank)/i,
    'warmed-cylinder',
  ],
  [/(?:cut|drill|grind|weld)\w*[^;]*(?:cylinder|tank|bottle|drum)/i, 'cylinder-cutting'],
  [/(?:closed|sealed) (?:drum|can|tin|vessel|scrap)/i, 'sealed-vessel'],
  [/cadmium/i, 'cadmium'],
  [/petrol|gasoline|thinner|kerosene/i, 'accelerant'],
  [/\brain\b|\bsnow\b/i, 'rain'],
  [/propane|\blpg\b/i, 'propane'],
  [/charcoal|briquette/i, 'charcoal'],
  [/magnesium/i, 'magnesium'],
  [/beryllium/i, 'beryllium'],
  [/\blead(?:ed)?\b|solder|wheel weight/i, 'lead-alloy'],
  [/\bbrass\b|zinc alloy|pure zinc|(?:kg|lbs?|g|l) (?:of )?zinc\b|pot metal|gun ?metal|\bza-?\d/i, 'zinc-alloy'],
  [
    /aerosol|spray can|shock absorber|\bstruts?\b|gas spring|airbag|ammunition|\bammo\b|batter(?:y|ies)|unopened|(?:closed|sealed) scrap/i,
    'closed-scrap',
  ],
  [/blanket|ceramic fib(?:re|er)|\bwool\b/i, 'ceramic-fibre'],
  [/garage|indoors?|basement|cellar|kitchen|\bshed\b|\bworkshop\b|\bbarn\b|\btent\b/i, 'indoors'],
  [/hardware cloth|\bmesh\b/i, 'mesh'],
];

export const factsIn = (text: string): readonly string[] =>
  words.filter(([pattern]) => pattern.test(text)).map(([, fact]) => fact);
