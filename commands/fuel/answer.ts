import { dryAshFreeSpread_J_kg } from '../../core/fire/fuel/fuel-spread.ts';
import { answerBalance, type Balance } from '../../core/melt/balance.ts';
import { RISE } from '../../core/melt/balance-charge.ts';
import { balanceModel } from '../../core/melt/balance-question.ts';
import { ashRoom_kg, type StagedMelt, stageMelt } from '../../core/melt/fuel-staging.ts';
import type { Answer, AnswerContext } from '../command.ts';
import { shortOf, tellEarly } from '../early.ts';
import { calibrated } from '../log/measured.ts';
import { typedNumber } from '../melt/question.ts';
import { pricesFor, whosePrices } from '../prices.ts';
import { layerText } from '../wall/layers.ts';
import { unfitIn } from '../wall/unfit.ts';
import { lossChart } from './chart.ts';
import { figuresOf } from './figures.ts';
import { byBurns } from './log.ts';
import type { FuelOptions } from './options.ts';
import type { FuelParts } from './parts.ts';
import { type AskedFuel, askedFuel } from './question.ts';
import { doubtOf, flowTable, headlineOf, notesOf } from './words.ts';

export async function fuelAnswer(options: FuelOptions, context: AnswerContext): Promise<Answer> {
  const asked = askedFuel(options, context, await pricesFor(context));
  const found = byBurns(asked, options, context);
  const answer = (ranged: boolean) => {
    const balance = answerBalance(asked.question, { ranged, moved: found?.draw });
    return calibrated(answered(asked, balance, options, context), found, context.units);
  };
  if (!context.plain) await tellEarly(context.early, async () => shortOf(answer(false)));
  return answer(!context.plain);
}

function answered(asked: AskedFuel, balance: Balance, options: FuelOptions, context: AnswerContext): Answer {
  const { units } = context;
  const room_kg = options.ashes?.si ?? ashRoom_kg(asked.question.wall.bore_m);
  const parts: FuelParts = {
    asked,
    options,
    balance,
    burnt: balance.fire.fuel,
    staged: stagedOf(asked, balance, room_kg),
    unfit: unfitIn(asked.wall.question),
    ashRoom_kg: room_kg,
    units,
    context,
  };
  const working = [...balance.steps(), ...(parts.staged?.staging.steps() ?? [])];
  return {
    headline: headlineOf(parts),
    figures: figuresOf(parts),
    table: flowTable(parts),
    chart: lossChart(parts, units),
    notes: notesOf(parts),
    given: whosePrices(keptPrices(asked), context.now, units),
    assumed: asked.assumed,
    doubt: doubtOf(parts),
    sources: [...new Set([...working.map(({ source }) => source), ...sourcesOf(asked)])],
    working,
    handsOver: handsOver(parts),
    hazards: {
      facts: [
        ...new Set([
          ...asked.fuel.hazards,
          ...(asked.cheap?.hazards ?? []),
          ...asked.alloy.hazards,
          ...asked.question.wall.layers.flatMap(({ material }) => material.hazards),
          ...asked.wall.finish.hazards,
          ...(parts.unfit ? ['lining-short'] : []),
          ...(options.place === 'indoors' ? ['indoors'] : []),
          ...(options.damp && options.damp.si > 0.01 ? ['damp-lining', 'fast-firing'] : []),
        ]),
      ],
    },
    next: nextLines(parts),
  };
}

const keptPrices = ({ cheap, fuel, priceOf }: AskedFuel) =>
  [cheap, fuel].flatMap((one) => {
    const known = one && priceOf(one)?.known;
    return known && known !== 'shops' ? [known] : [];
  });

const sourcesOf = ({ fuel, alloy }: AskedFuel): readonly string[] => [
  fuel.lower_heat_J_kg.source,
  fuel.ash.source,
  alloy.melting_correction_J_kg.source,
  'common-practice',
];

/** The first fuel's share of the work, where both are priced in one money. */
function stagedOf(asked: AskedFuel, balance: Balance, ash_limit_kg: number): StagedMelt | undefined {
  const { cheap, fuel, priceOf, question } = asked;
  const prices = [cheap, fuel].map((one) => one && priceOf(one));
  const [first, second] = prices;
  if (!cheap || !first || !second || first.currency !== second.currency) return undefined;
  const firing = {
    ...question.firing,
    fuel: cheap,
    ash: cheap.ash,
    moisture: cheap.moisture.typical,
    dry_J_kg: dryAshFreeSpread_J_kg(cheap),
  };
  const { fire, typical } = balanceModel({ ...question, firing }, balance.ends);
  return stageMelt(balance, {
    cheap: { fire: fire(typical), price_USD_kg: first.per_kg.typical },
    better: { fire: balance.fire, price_USD_kg: second.per_kg.typical },
    ash_limit_kg,
  });
}

/** For `wall`, `blast`, `burner` and `flame`: as it would be typed. */
function handsOver({ asked, options, balance, burnt, units }: FuelParts): Record<string, string> {
  const { wall, fuel, alloy, amount_kg, potfuls } = asked;
  const { first } = balance.melts;
  const { question } = wall;
  const US = units === 'US';
  const mass = (kg: number) => (US ? `${typedNumber(kg / pound_kg)} lb` : `${typedNumber(kg)} kg`);
  const length = (m: number) => (US ? `${typedNumber(m / 0.0254)} in` : `${typedNumber(m * 1000)} mm`);
  const burns_kg_h = (first.power_W / burnt.lower_heat_J_kg) * 3600;
  const passed = Object.fromEntries(
    (['lid', 'floor', 'finish'] as const).flatMap((name) =>
      options[name] === undefined ? [] : [[name, options[name]]],
    ),
  );
  return {
    fuel: fuel.id,
    rate: US ? `${typedNumber(first.power_W / btu_h_W)} Btu/h` : `${typedNumber(first.power_W / 1000)} kW`,
    flow: `${mass(burns_kg_h * balance.fire.air_kg_kg)}/h`,
    ...(fuel.hazards.includes('propane') ? { propane: `${mass(burns_kg_h)}/h`, each: mass(first.fuel_kg) } : {}),
    ...(options.co ? { co: options.co.text } : {}),
    ...(options.excess
      ? { excess: options.excess.text }
      : fuel.kind === 'gas' && 'excess_air' in asked.question.firing.air
        ? { excess: `${Number((100 * asked.question.firing.air.excess_air.typical).toPrecision(6))}%` }
        : {}),
    // Before the hot face, which says less of the same.
    ...(options.flue ? { flue: `${Number((options.flue.si - 273.15).toFixed(2))} °C` } : {}),
    ...(options.tuyere ? { tuyere: length(options.tuyere.si) } : {}),
    ...(options.sized ? { sized: options.sized } : {}),
    layers: wall.layers.map(layerText).join('; '),
    bore: length(question.bore_m),
    height: length(question.height_m),
    hot: `${Number((question.hot_K.typical - 273.15).toFixed(2))} °C`,
    // To the hundredth of a second: `wall` then stores the same.
    ramp: `${((RISE * first.climb_s) / 60).toFixed(4)} min`,
    hold: `${(((1 - RISE) * first.climb_s + first.hold_s) / 60).toFixed(4)} min`,
    vent: length(2 * question.vent_radius_m),
    shell: length(question.shell_m),
    ...passed,
    metal: alloy.id.replaceAll('-', ' '),
    amount: `${Number(amount_kg.toPrecision(6))} kg`,
    pour: `${Number((asked.question.charge.pour_K - 273.15).toFixed(2))} °C`,
    heat: `${((potfuls * asked.question.charge.metal_J.typical) / 1e6).toPrecision(6)} MJ`,
    crucible: asked.crucible,
  };
}

const pound_kg = 0.45359237;
const btu_h_W = 0.29307107017;

/** With the air and the flue of this fire. */
function flameLine(parts: FuelParts): string {
  const { fuel, excess, flue, hot } = handsOver(parts);
  const air = excess === undefined ? [] : [`excess=${excess}`];
  return [`flame ${fuel}`, ...air, flue === undefined ? `hot=${hot}` : `flue=${flue}`].join(' ');
}

function nextLines(parts: FuelParts): NonNullable<Answer['next']> {
  const { asked, options, context } = parts;
  const { commands } = context;
  const has = (name: string) => commands.some((one) => one.name === name);
  const { fuel, cheap } = asked;
  const gas = fuel.kind === 'gas';
  const bottled = fuel.hazards.includes('propane');
  return [
    ...(gas
      ? [{ label: 'the same over charcoal', line: 'again fuel=lump charcoal' }]
      : [{ label: 'the same with propane', line: 'again fuel=propane' }]),
    ...(fuel.id === 'lump-charcoal' && !cheap
      ? [{ label: 'briquettes first', line: 'again fuel=briquettes then lump' }]
      : []),
    ...(options.melts === undefined ? [{ label: 'three in a row', line: 'again melts=3' }] : []),
    ...(has('wall') ? [{ label: 'the wall through this melt', line: 'wall for=last' }] : []),
    ...(bottled && has('burner') ? [{ label: 'the burner for it', line: 'burner for=last' }] : []),
    ...(!gas && has('blast') ? [{ label: 'the blower for it', line: 'blast for=last' }] : []),
    ...(has('flame') ? [{ label: 'how hot it burns', line: flameLine(parts) }] : []),
    { label: 'how that was worked out', line: 'why' },
  ];
}
