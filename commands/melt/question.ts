import { AskError } from '../../core/ask-error.ts';
import { factsIn } from '../../core/hazard/words.ts';
import type { Pour } from '../../core/materials/pour.ts';
import { exactly, type Spread } from '../../core/materials/spread.ts';
import { withWall } from '../../core/melt/crucible-heat.ts';
import { pots } from '../../core/melt/data/pots.ts';
import { scrapForms } from '../../core/melt/data/scrap-forms.ts';
import type { MeltQuestion } from '../../core/melt/melt.ts';
import { pourFor, type Section } from '../../core/melt/melt-heat.ts';
import { findForm } from '../../core/melt/melt-loss.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { formatSi } from '../../core/quantity/format.ts';
import { type Crucible, crucibleFromWorking } from '../../core/shape/crucible.ts';
import type { Assumption } from '../card.ts';
import type { AnswerContext } from '../command.ts';
import { about } from '../options.ts';
import { readCrucible } from '../size/question.ts';
import type { MeltOptions } from './options.ts';
import { refuseFumeIndoors, refuseSoftPot } from './refuse.ts';
import { readSubject } from './subject.ts';

export interface AskedMelt {
  readonly question: MeltQuestion;
  /** As typed; of a volume, its mass. */
  readonly amount: string;
  readonly section: Section;
  /** The crucible was said, not made to fit the melt. */
  readonly crucibleGiven: boolean;
  readonly crucible: Crucible;
  readonly assumed: readonly Assumption[];
}

/** Rows that stand for a whole family. */
const anyKind: readonly string[] = ['aluminium', 'bronze', 'brass', 'zinc-alloy'];
const usualStart_K = 293.15;
/** A pour is met to about this, with a probe; judged. */
const pourSpread_dK = 15;

/** The question with every default filled in, each default said. */
export function askedMelt(
  options: MeltOptions,
  { units, commands }: Pick<AnswerContext, 'units' | 'commands'>,
): AskedMelt {
  const assumed: Assumption[] = [];
  const assume = <T>(value: T | undefined, otherwise: T, text: string, override?: string): T => {
    if (value !== undefined) return value;
    assumed.push(override === undefined ? { text } : { text, override });
    return otherwise;
  };
  const show = (kelvin: number) => formatSi(kelvin, 'K', units);
  const { said, place } = withoutRoom(options);
  const {
    alloy,
    amount,
    form: named,
  } = about('melt', () => readSubject({ said, metal: options.metal, units, commands }));
  if (amount.assumedUnit !== undefined)
    assumed.push({ text: `${amount.text} means ${amount.text} ${amount.assumedUnit}` });
  if (anyKind.includes(alloy.id))
    assumed.push({ text: `${alloy.name} of no particular kind: an alloy's name narrows the range` });
  refuseFumeIndoors(alloy, place);
  assume(place, 'outdoors', 'outdoors', 'place=indoors');
  const section = assume(options.section, 'medium', 'sections of medium thickness', 'section=thin');
  const pour_K = options.pour ? around(options.pour.si, pourSpread_dK) : pourFor(alloy, section);
  if (!options.pour)
    assumed.push({
      text: `poured at ${show(pour_K.typical)}`,
      override: `pour=${rounded(pour_K.typical + 30, units)}`,
    });
  const pot = pots.find(
    ({ id }) => id === assume(options.material, 'clay-graphite', 'a crucible of clay-graphite', 'material=steel'),
  )!;
  refuseSoftPot(pot, pour_K.typical, alloy, units);
  const typed = options.scrap === undefined ? undefined : about('scrap', () => findForm(options.scrap!));
  const form = assume(
    typed ?? named,
    scrapForms.find(({ id }) => id === 'castings')!,
    'broken castings',
    'scrap=sheet',
  );
  const from_K = assume(options.from?.si, usualStart_K, `charged at ${show(usualStart_K)}`, 'from=200 °C');
  const mass_kg = massOf(amount, alloy);
  const crucible = options.crucible
    ? about('crucible', () => readCrucible(options.crucible!.text, units))
    : crucibleFor(mass_kg.typical / alloy.liquid_density_kg_m3.typical);
  if (!options.crucible) assumed.push({ text: 'a crucible that just holds it', override: 'crucible=6 in x 8 in' });
  const zincInBrass = alloy.family === 'copper' && (alloy.composition.Zn ?? 0) > 0;
  if (zincInBrass && options.cover === undefined)
    assumed.push({ text: 'covered or not: the loss spans both', override: 'cover=yes' });
  const measured = /\bx\b|×|\bby\b/i.test(options.crucible?.text ?? '');
  return {
    amount:
      amount.dimension === 'mass' ? `${amount.text} ${amount.assumedUnit ?? ''}`.trim() : massText(mass_kg, units),
    section,
    crucible,
    crucibleGiven: options.crucible !== undefined,
    assumed,
    question: {
      alloy,
      mass_kg,
      from_K,
      pour_K,
      crucible: pot.wall_m ? withWall(crucible, pot.wall_m.typical, measured) : crucible,
      pot,
      form,
      cover: options.cover === undefined ? undefined : options.cover === 'yes',
    },
  };
}

/** `2 kg brass in the garage` says where as well; the place that has its own option goes before it. */
function withoutRoom({ melt, place }: MeltOptions): { said: string; place: MeltOptions['place'] } {
  const [, said, room = ''] = /^(.*\S)\s+((?:in|inside)\s+(?:an?|the|my|our)\s.+|indoors)$/i.exec(melt.text) ?? [];
  return said !== undefined && factsIn(room).includes('indoors')
    ? { said, place: place ?? 'indoors' }
    : { said: melt.text, place };
}

/** Six digits, and never three decimals, which could be thousands. */
export const typedNumber = (value: number): string => value.toPrecision(6).replace(/(\.\d{3})$/, '$10');

const massText = ({ typical }: Spread, units: UnitSystem): string =>
  units === 'US' ? `${typedNumber(typical / 0.45359237)} lb` : `${typedNumber(typical)} kg`;

const around = (typical: number, spread: number): Spread => ({
  low: typical - spread,
  typical,
  high: typical + spread,
});

/** To tens of degrees, as it would be typed. */
const rounded = (kelvin: number, units: UnitSystem): string =>
  units === 'US'
    ? `${Math.round(((kelvin - 273.15) * 1.8 + 32) / 10) * 10} °F`
    : `${Math.round((kelvin - 273.15) / 10) * 10} °C`;

function massOf(
  amount: { readonly dimension: string; readonly si: number },
  { liquid_density_kg_m3: density }: Pour,
): Spread {
  if (amount.dimension === 'mass') return exactly(amount.si);
  return { low: amount.si * density.low, typical: amount.si * density.typical, high: amount.si * density.high };
}

function crucibleFor(working_m3: number): Crucible {
  try {
    return crucibleFromWorking({ working_m3 });
  } catch (error) {
    if (!(error instanceof AskError)) throw error;
    throw error.with({ option: 'melt', expected: 'a melt for a crucible of 5 ml to 200 L', example: '5 kg aluminium' });
  }
}
