import type { SourceId } from '../../core/sources/source.ts';

/** One thing that has happened, and what to do in the first minutes. */
export interface FirstAid {
  readonly name: string;
  /** How people say it, lower case. The longest that is found in what was typed decides. */
  readonly said: readonly string[];
  /** The one action that matters most, and whom to call. */
  readonly first: string;
  readonly steps: readonly string[];
  readonly sources: readonly SourceId[];
}

/** Public first-aid guidance in our own words, the gravest and commonest first. */
export const firstAid: readonly FirstAid[] = [
  {
    name: 'burns',
    said: ['burn', 'burns', 'burnt', 'burned', 'scald', 'scalded', 'blister', 'hot steel', 'steam'],
    first:
      'Cool the burn under cool running water for 20 minutes, and call 112, 911 or 999 for face, hands, airway, a child, or anything deep or larger than a palm.',
    steps: [
      'Get the person away from the heat, without danger to yourself, and out of reach of the metal.',
      'Cool running water on the burn now, for 20 minutes. No ice, no iced water, no cream, no butter.',
      'Rings, watch and loose clothing off while the water runs; leave whatever sticks to the skin.',
      'Call 112, 911 or 999 for face, hands, feet, groin or airway, a child, a deep or white burn, one larger than their palm, or any burn from molten metal.',
      'Then lay clean film or a clean sheet loosely over it; do not wind it round, and not over the face. Leave blisters whole.',
      'Keep the rest of the person warm, and stay with them.',
    ],
    sources: ['nhs-burns', 'kent-fire'],
  },
  {
    name: 'metal on skin',
    said: ['skin', 'on skin', 'metal on skin', 'metal in boot', 'boot', 'glove', 'splash', 'splashed', 'molten metal'],
    first:
      'Away from the melt, then cool running water over the metal and the skin for 20 minutes; call 112, 911 or 999 for any molten-metal burn.',
    steps: [
      'Step away from the furnace and the spill. Shake off glove, boot or jacket that holds metal, if it comes.',
      'Cool running water on the place for 20 minutes, well away from the melt. No ice, no cream.',
      'Leave metal and cloth that stick to the skin: do not pull them off.',
      'Call 112, 911 or 999: burns from molten metal are deep, however small they look.',
      'Cover loosely with clean film or a clean sheet, and keep the person warm.',
      'A helper shuts off gas and blower, and keeps others off the spilled metal.',
    ],
    sources: ['nhs-burns', 'first-aid-general'],
  },
  {
    name: 'metal in eye',
    said: ['eye', 'eyes', 'in eye', 'metal in eye', 'metal in my eye', 'lime in eye', 'cement in eye', 'grit'],
    first:
      'Rinse with gently running clean water for 20 minutes, do not rub, do not pull metal out, and call 112, 911 or 999.',
    steps: [
      'Do not rub, and do not pull out anything that is stuck.',
      'Hot splash, dust, lime or cement: hold the lids open and rinse with gently running clean water, 20 minutes, from the nose outwards.',
      'Contact lens out if it comes easily while you rinse.',
      'The eye is cut, or something stands in it: do not rinse or press. Set a clean cup or loose pad over it.',
      'Call 112, 911 or 999, or go to an eye emergency department at once; for lime, cement or flux ask your local poison centre too.',
      'Do not drive yourself. Keep both eyes still.',
    ],
    sources: ['hospital-eye', 'baycare-eye', 'first-aid-general'],
  },
  {
    name: 'clothing fire',
    said: [
      'clothes',
      'clothing',
      'clothing fire',
      'clothes on fire',
      'hair',
      'sleeve',
      'person on fire',
      'i am on fire',
    ],
    first: 'Stop, drop to the ground, cover the face and roll, then cool with water and call 112, 911 or 999.',
    steps: [
      'Stop: running feeds the flames.',
      'Drop to the ground, away from the metal; cover the face with the hands and roll.',
      'A helper smothers the flames with a wool blanket or heavy coat, or douses them with water if no liquid metal is near.',
      'Cool running water on the burns for 20 minutes; leave cloth that sticks.',
      'Call 112, 911 or 999, and keep the person warm.',
    ],
    sources: ['first-aid-general', 'nhs-burns'],
  },
  {
    name: 'metal fire',
    said: [
      'metal fire',
      'magnesium',
      'swarf',
      'swarf fire',
      'spill',
      'run-out',
      'runout',
      'spilled metal',
      'burning metal',
    ],
    first: 'Never water: dry sand from a distance, or class D powder, then back off and call 112, 911 or 999.',
    steps: [
      'No water, no foam, no CO2, no ordinary powder on burning or liquid metal.',
      'Everyone back and up-wind; gas and blower off if you can reach them safely.',
      'Dry sand gently over it with a dry shovel, or class D powder made for that metal. Do not throw it.',
      'Burning magnesium: do not look into the light.',
      'Out of hand, or no dry sand: leave it and call 112, 911 or 999. Say that metal is burning.',
      'Leave it until it is cold; a crust hides liquid metal for long.',
    ],
    sources: ['metal-fire-trade', 'aluminium-sds'],
  },
  {
    name: 'fire',
    said: ['fire', 'grass', 'shed', 'flames', 'smoke', 'oil fire'],
    first:
      'Everyone out and away, then call 112, 911 or 999; fight it only while it is small and the way out is behind you.',
    steps: [
      'Shout, and get everyone away, up-wind. Gas and blower off if you can reach them safely.',
      'Call 112, 911 or 999, and say if there are gas cylinders or liquid metal.',
      'Small, with the way out behind you: multi-purpose extinguisher, or water on grass and wood only, far from metal, oil and mains.',
      'Oil or fuel: smother it or use the extinguisher, no water. Metal: dry sand, never water.',
      'A cylinder in the flames: leave, far, and keep others away.',
    ],
    sources: ['first-aid-general', 'metal-fire-trade'],
  },
  {
    name: 'gas leak',
    said: ['gas', 'gas leak', 'leak', 'leaking', 'smell', 'smell gas', 'smell of gas', 'hissing'],
    first:
      'Switch nothing, no flame, everyone away up-wind; shut the cylinder valve if it is safe, then call 112, 911 or 999 from there.',
    steps: [
      'No flame and no switch, on or off; no phone, engine or lighter near it.',
      'Shut the cylinder valve, clockwise, only if you can reach it without walking through the gas.',
      'Everyone away, up-wind and uphill: the gas lies low and gathers in pits, drains and cellars.',
      'From there call 112, 911 or 999, and the gas supplier.',
      'Nobody goes back or lights anything until they say so. Have the joint mended and soap-tested.',
    ],
    sources: ['propane-leak-trade', 'osha-1910-110'],
  },
  {
    name: 'propane',
    said: ['propane', 'butane', 'lpg', 'cylinder', 'bottle', 'hose', 'regulator', 'flame at the cylinder', 'frostbite'],
    first:
      'Shut the cylinder valve if you can reach it safely; if not, leave the flame burning, everyone far away, and call 112, 911 or 999.',
    steps: [
      'Burning at hose or regulator: shut the cylinder valve if you can reach it without passing the flame.',
      'You cannot: do not put the flame out, for unlit gas is worse. Everyone far away, behind something solid.',
      'Call 112, 911 or 999 and say that a gas cylinder is in the fire.',
      'Leaking unlit: no flame, no switch, away up-wind and uphill, call from there.',
      'Liquid gas on the skin: lukewarm water for 20 minutes, no rubbing, leave cloth that is frozen on, see a doctor.',
    ],
    sources: ['propane-leak-trade', 'osha-1910-110', 'first-aid-general'],
  },
  {
    name: 'carbon monoxide',
    said: ['co', 'carbon monoxide', 'monoxide', 'headache', 'dizzy', 'alarm', 'co alarm', 'charcoal', 'unconscious'],
    first: 'Everyone out into open air at once, then call 112, 911 or 999; nobody goes back in.',
    steps: [
      'Out into open air, everyone, pets too. Headache, dizzy, sick or confused means now.',
      'Call 112, 911 or 999 from outside, and say carbon monoxide.',
      'Do not go back for anything, not to put out the fire either; rescuers fall beside the one they came for.',
      'Not breathing normally: start chest compressions, the operator will talk you through.',
      'Everyone who was there is seen by a doctor, also those who feel better; your local poison centre can advise.',
      'Back in only when the fire service has measured the air.',
    ],
    sources: ['hrsa-poison-help', 'cpsc-co', 'first-aid-general'],
  },
  {
    name: 'fumes',
    said: [
      'fume',
      'fumes',
      'fever',
      'zinc',
      'cadmium',
      'chlorine',
      'breathless',
      'cough',
      'poison',
      'swallowed',
      'lead',
    ],
    first:
      'Into fresh air and rest; short of breath means 112, 911 or 999, otherwise call a doctor or your local poison centre today.',
    steps: [
      'Out of the fume, into fresh air; fire off only if it is on the way.',
      'Short of breath, blue, chest pain, drowsy: call 112, 911 or 999.',
      'Otherwise sit and rest, and call a doctor or your local poison centre. Swallowed: do not bring it up again.',
      'Say "metal fume", name metals, coatings and flux, and when it was.',
      'Zinc fever comes hours later and passes in a day or two. Breathless the next day is an emergency: cadmium or chlorine.',
    ],
    sources: ['niosh-zinc-fume', 'osha-cadmium', 'first-aid-general'],
  },
  {
    name: 'electric shock',
    said: ['shock', 'electric', 'electric shock', 'electricity', 'electrocuted', 'mains', 'blower'],
    first: 'Do not touch the person: cut the current at plug or breaker first, then call 112, 911 or 999.',
    steps: [
      'Do not touch the person, or the cord, while the current may be on.',
      'Pull the plug or switch off at the breaker; the switch on the machine is not enough.',
      'You cannot: stand on something dry and push the cord away with dry wood. Nothing wet, nothing metal.',
      'Call 112, 911 or 999.',
      'Not breathing normally: chest compressions, hard and fast; the operator will talk you through.',
      'Cool the burns with water once the current is off. See a doctor even if all seems well.',
    ],
    sources: ['utility-electric-shock', 'first-aid-general'],
  },
];

/** Where nothing was said, or nothing that is known. */
export const anyEmergency: Omit<FirstAid, 'name' | 'said'> = {
  first: 'Get away from the danger, call 112, 911 or 999, and cool any burn under cool running water for 20 minutes.',
  steps: [
    'Look first: no second casualty. Everyone back from metal, flame and gas, up-wind.',
    'Gas valve and blower off, if you can reach them safely. No water near liquid metal.',
    'Call 112, 911 or 999: where you are, what happened, how many are hurt, metal or gas in play.',
    'Burn: cool running water for 20 minutes. Not breathing normally: chest compressions, the operator will talk you through.',
    'Fume or something swallowed: your local poison centre. Keep the person warm, and stay.',
  ],
  sources: ['nhs-burns', 'first-aid-general'],
};
