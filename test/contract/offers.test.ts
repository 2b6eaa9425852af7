import { describe, expect, test } from 'vitest';
import type { Reply } from '../../commands/card.ts';
import { cardOf, conversation } from './conversation.ts';

/** Mistakes as people make them, in every command. */
const mistakes = [
  'size melt 5 kg magnesium',
  'size melt 3 kg copper and 1 kg tin',
  'size melt 1 g gold',
  'size melt 14 kg gold',
  'size can 20 gal crucible=0 in x 8 in',
  'size can 20 gal crucible=14 in',
  'size can 20 gal crucible=6 in x 8 in gap=2 mm',
  'size can 20 gal crucible=6 in x 8 in lining=toothpaste',
  'fuel propane amount=5 kg altitude=8000 ft',
  'melt 5 kg aluminium fuel=toothpaste',
  'burner 30 kW place=garage',
  'flame propane phi=1.1',
  'flame propane blast=400 °C',
  'blast 1 kg/h charcoal temperature=-20 C',
  'burner 30 kW altitude=30000 ft',
  'size can 20 gal fuel=uranium',
  'melt 12 soda cans',
  'melt 3 kg copper and 1 kg tin',
  'fuel propane amount=500 kg',
  'fuel propane amount=5000 kg',
  'burner 100000 btu',
  'burner 75k btu',
  'burner 30 kW jet=0.035',
  'melt -5 kg aluminium',
  'melt 5 kg of what?',
  'melt 5 kg',
  'size can 20 gal wall=8 in crucible=6 in x 8 in',
  'size can paint can',
  'size can 20 gal lid=20 in',
  'size can 20 gal crucible=6 in x 8 in tilt=80',
  'size can 20 gal tuyere=8 in',
  'size can 20 gal form=paper',
  'size can 20 gal insulation=gold',
  'size can 20 gal metal=unobtainium',
  'size crucible 2 mL',
  'size crucible 900 L',
  'size crucible A8',
  'size can',
  'size',
  'mix',
  'mix 30 mm',
  'mix 30 L recipe=nothing',
  'mix 30 L have=gold',
  'mix outside=10 in inside=11 in height=19 in',
  'wall',
  'wall 2 in gold',
  'wall 900 in castable',
  'wall 2 in castable hot=100000 °C',
  'wall 2 in castable; 2 in perlite finish=chrome',
  'fuel uranium',
  'fuel propane amount=1 g',
  'fuel propane amount=5 kg metal=gold',
  'fuel propane amount=5 kg crucible=#6',
  'blast 1 kg/h propane',
  'blast 1 kg/h charcoal blower=hairdrier',
  'blast 1 kg/h charcoal pipe=100 km',
  'blast 5000 kg/h charcoal',
  'blast 1 kg/h charcoal tuyere=20 in',
  'burner',
  'burner charcoal',
  'burner 30 GW',
  'burner 30 kW jet=#999',
  'burner 30 kW pressure=500 psi',
  'burner 30 kW bottle=3 lb',
  'burner 30 kW regulator=best',
  'flame',
  'flame wood chips',
  'flame propane excess=900%',
  'flame propane reads=30%',
  'touch',
  'touch 5000 °C',
  'touch hot',
  'dry',
  'dry 3 m castable',
  'dry 30 mm gold',
  'stuff',
  'stuff perlyte',
  'stuff unobtainium',
  'settle wall 2 in castable',
  'settle mix 30 L vs mix 40 L by=colour',
  'claim nothing at all',
  'build show nothing',
  'build save',
  'build save x for=last',
  'build save x for=(mix 30 mm)',
  'build drop nothing',
  'build share nothing',
  'build copy XXXX',
  'build compare a b',
  'log burn',
  'log burn nothing 5 kg',
  'log bucket 5 L',
  'log shell',
  'log weighed',
  'log drying',
  'log drop 9',
  'checklist',
  'checklist tick 1.1',
  'checklist start nothing',
  'checklist tick 99',
  'checklist drop',
  'price sand',
  'price',
  'price gold 5 kg $3',
  'price sand 50 lb 5 florins',
  'price drop sand',
  'remind',
  'remind yesterday',
  'remind in 5 parsecs do it',
  'remind drop 7',
  'units cubits',
  'zone Mars',
  'zone Atlantis/Capital',
  'forget me not',
  'why',
  'again',
  'again wall=2 in',
  'help nothing',
  'xyzzy 30',
  'melting 5 kg aluminium',
  'agian wall=2 in',
  'szie can 20 gal',
  'start metal=gold',
  'wall for=(size can 20 gal gap=2 mm)',
  'mix for=last',
  'mix for=(why)',
  'melt 5 kg aluminium material=gold',
  'melt 5 kg aluminium pour=20 C',
  'melt 5 kg aluminium from=3000 °C',
  'melt 5 kg aluminium scrap=confetti',
  'melt 0 kg aluminium',
  'melt 5 tonnes aluminium',
  'melt 5 kg steel',
  'melt 5 kg propane',
  'melt 5 kg aluminium crucible=1 cm x 2 cm',
  'melt 3 m aluminium',
  'size melt 5 kg',
  'size melt 5 kg steel',
  'size melt 300 kg aluminium vessel=20 gal',
  'size can 15 x',
  'size can 5 in / 45 in x 10 in',
  'size can 0 in x 0 in',
  'size can 20 gal roll=2 mm',
  'size can 20 gal vent=40 in',
  'size can 20 gal rate=3 W',
  'mix 30 L damp=300%',
  'mix 30 L spare=-5%',
  'mix 30 L colour=red',
  'mix 30 L 40 L',
  'mix 30 L ratio=2 sand 1 unobtainium',
];

async function mistaken(line: string) {
  const ask = conversation();
  const reply = await ask(line);
  if (reply.kind === 'card') throw new Error(`"${line}" was answered: ${reply.card.headline}`);
  return { ...reply, ask };
}

const offerOf = async (line: string): Promise<string> => (await mistaken(line)).error.example;

const headlineOf = (reply: Reply): string => (reply.kind === 'card' ? reply.card.headline : reply.error.what);

describe('what a refusal offers is answered when it is sent', () => {
  test.each(mistakes)('%s', async (line) => {
    const { error, ask } = await mistaken(line);
    const answered = await ask(error.example);
    expect(answered.kind, `${error.example}: ${headlineOf(answered)}`).toBe('card');
  });
});

describe('what is offered is near to what was meant', () => {
  test.each([
    ['size can 20 gal crucible=6 in x 8 in gap=2 mm', 'size can 20 gal crucible=6 in x 8 in gap=40 mm'],
    ['size can 20 gal crucible=0 in x 8 in', 'size can 20 gal crucible=6 in x 8 in'],
    ['size melt 5 kg magnesium', 'size melt 5 kg aluminium'],
    ['size melt 3 kg copper and 1 kg tin', 'size melt 3 kg copper'],
    ['fuel propane amount=5 kg altitude=8000 ft', 'fuel propane amount=5 kg'],
    ['burner 30 kW place=garage', 'burner 30 kW'],
    ['flame propane phi=1.1', 'flame propane'],
    ['flame propane blast=400 °C', 'flame propane air=400 °C'],
    ['blast 1 kg/h charcoal temperature=-20 C', 'blast 1 kg/h charcoal air=-20 C'],
    ['burner 30 kW altitude=30000 ft', 'burner 30 kW altitude=1000 ft'],
    ['melt 12 soda cans', 'melt 0.16 kg aluminium cans'],
    ['burner 100000 btu', 'burner 100000 Btu/h'],
    ['burner 75k btu', 'burner 75000 Btu/h'],
    ['burner 30 kW jet=0.035', 'burner 30 kW jet=0.035 in'],
    ['szie can 20 gal', 'size can 20 gal'],
    ['miks 30 L', 'mix 30 L'],
    ['what is this', 'help'],
    ['size can 20 gal fuel=gsa', 'size can 20 gal fuel=gas'],
    ['forget me not', 'forget'],
  ])('%s', async (line, offer) => expect(await offerOf(line)).toBe(offer));

  test('mends two mistakes of one line', async () => {
    const offer = await offerOf('size can 30 gallon garbage can crucible=0 in x 8 in');
    expect(offer).toBe('size can galvanised-can-31-gal crucible=6 in x 8 in');
  });

  test('gives sizes in the units they were typed in', async () => {
    const { error } = await mistaken('size can 20 gal crucible=6 in x 8 in wall=8 in');
    expect(error.what).toMatch(/^walls of 8 in/);
    expect(error.example).toBe('size can 20 gal crucible=6 in x 8 in wall=1.5 in');
    expect((await mistaken('size can 20 gal lid=20 in')).error.example).toBe('size can 20 gal lid=2 in');
  });

  test('changes nothing while it is tried', async () => {
    const ask = conversation();
    await ask('mix 30 L');
    expect(await offerOf('build save x for=(mix 30 mm)')).toBe('build save x for=(mix 9 L)');
    const reply = await ask('build save x for=(mix 30 mm)');
    expect(reply.kind).toBe('error');
    expect((await cardOf('build list', ask)).headline).not.toMatch(/1 build/);
    expect((await cardOf('why', ask)).headline).toMatch(/mix/);
  });
});

describe('what people type is read', () => {
  test.each([
    ['size crucible 6in x 8in tall', 'size crucible 6 in x 8 in'],
    ['size crucible 8 in tall x 6 in wide', 'size crucible 6 in x 8 in'],
    ['size crucible 6 in across and 8 in high', 'size crucible 6 in x 8 in'],
    ['size can 15 in across x 22 in deep', 'size can 15 in x 22 in'],
    ['size melt aluminium 5 kg', 'size melt 5 kg aluminium'],
    ['size can 20 gal fuel=lump', 'size can 20 gal fuel=charcoal'],
    ['size can 20 gal fuel=propane', 'size can 20 gal fuel=gas'],
    ['burner 75k Btu/h', 'burner 75000 Btu/h'],
  ])('%s', async (line, plain) => {
    const [card, same] = [await cardOf(line), await cardOf(plain)];
    expect(card.figures).toEqual(same.figures);
  });

  test('the least crucible and the coldest air', async () => {
    expect((await cardOf('size crucible 5 ml')).command).toBe('size crucible');
    expect((await cardOf('blast 1 kg/h charcoal air=-30 °C')).command).toBe('blast');
  });

  test('a can that is too small is said to be, whatever its tuyere would do', async () => {
    expect((await cardOf('size can 1 gal crucible=2 in x 3 in')).headline).toMatch(/^Does not fit: .*too wide/);
  });
});
