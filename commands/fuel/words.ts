import { doubts } from '../../core/melt/balance-question.ts';
import { efficiencies } from '../../core/melt/fuel-efficiency.ts';
import { tradeSwitch_K } from '../../core/melt/fuel-staging.ts';
import type { Figure } from '../../core/quantity/figure.ts';
import { formatFigure, formatSi } from '../../core/quantity/format.ts';
import type { Table } from '../card.ts';
import { modelErrorNote } from '../model-error.ts';
import { capital } from '../sentence.ts';
import { notSizedFor } from '../size/sized-for.ts';
import { refilledText, unfitSays } from '../wall/unfit.ts';
import { againFigure, costFigure, massFigure, timeFigure, told as toldOf, totals, turnedDown } from './figures.ts';
import type { FuelParts } from './parts.ts';

export function headlineOf(parts: FuelParts): string {
  const { asked, units, staged } = parts;
  const show = (figure: Figure) => {
    const { lead, range } = formatFigure(figure, units);
    return range === undefined ? lead : `${lead} (${range})`;
  };
  const cost = costFigure(parts);
  const { potfuls } = asked;
  const kg = (mass_kg: number) => formatSi(mass_kg, 'kg', units);
  const of = potfuls > 1 ? `the first potful, ${kg(asked.mass_kg)}` : kg(asked.mass_kg);
  const first = `${capital(asked.fuel.name)}: ${show(massFigure(parts))} for ${of} of ${asked.alloy.name} from a cold furnace, ${show(timeFigure(parts))}`;
  const money = cost && cost.value > 0 ? `, about ${formatFigure(cost, units).lead}` : '';
  const again = `The next ${potfuls > 1 ? 'potful' : 'melt'} takes ${show(againFigure(parts))}.`;
  const all =
    potfuls > 1
      ? [
          `The crucible holds less than ${kg(asked.amount_kg)}: all of it takes ${potfuls} melts, ${totals(parts)
            .map((figure) => formatFigure(figure, units).lead)
            .join(', ')}${asked.melts > potfuls ? ` for ${asked.melts} melts` : ''}.`,
        ]
      : [];
  return [`${first}${money}.`, again, ...all, ...(staged ? [stagingSays(parts)] : []), ...liningSays(parts)].join(' ');
}

function liningSays({ unfit, asked, units }: FuelParts): readonly string[] {
  const change = unfit?.fitting && `layers=${refilledText(asked.wall.layers, unfit.fitting)}`;
  return unfitSays(unfit, { metal: asked.alloy.name, change, units });
}

/** Which of the two fuels to burn when. */
function stagingSays({ asked: { cheap, fuel, priceOf }, staged, units }: FuelParts): string {
  if (!staged || !cheap) return '';
  const { staging, switch_K, cost_better_USD } = staged;
  const currency = priceOf(fuel)?.currency ?? 'USD';
  const saved = cost_better_USD - staging.cost_USD;
  const money = formatSi(saved, currency, units);
  if (staging.cheap_kg < 0.01) return `Nothing is saved by ${cheap.name} at these prices: ${fuel.name} alone.`;
  if (switch_K === undefined) return `Cheapest is ${cheap.name} all the way, ${money} less than ${fuel.name}.`;
  return `Cheapest is ${cheap.name} to a hot face of ${formatSi(switch_K, 'K', units)}, then ${fuel.name}: ${money} less than ${fuel.name} alone.`;
}

/** Where the heat of both melts goes; shares of the fuel's lower heat. */
export function flowTable({ balance: { melts }, units }: FuelParts): Table {
  const { first, again } = melts;
  const rows: readonly (readonly [string, keyof typeof first])[] = [
    ['warmth of the flue', 'flue_J'],
    ['unburned CO and hydrogen', 'unburned_J'],
    ['stored in the side wall', 'stored_J'],
    ['through the shell', 'shell_J'],
    ['lid and floor', 'ends_J'],
    ['vent and tuyere, radiated', 'openings_J'],
    ['crucible', 'crucible_J'],
    ['metal', 'metal_J'],
  ];
  const percent = (share: number) => `${(share * 100).toFixed(share < 0.1 ? 1 : 0)} %`;
  const bar = (share: number) => '█'.repeat(Math.round(share * 25));
  return {
    columns: ['where the heat goes', 'first melt', 'share', '', 'next melt', 'share'],
    rows: rows.map(([name, key]) => [
      name,
      formatSi(first[key] as number, 'J', units),
      percent((first[key] as number) / first.fuel_J),
      bar((first[key] as number) / first.fuel_J),
      formatSi(again[key] as number, 'J', units),
      percent((again[key] as number) / again.fuel_J),
    ]),
  };
}

export function doubtOf({ balance: { doubt, ranges } }: FuelParts): string {
  if (!doubt)
    return ranges.fuel ? 'nothing that was sampled' : 'no range: in some of the samples this fire leaves nothing';
  return `${doubt.input} (${Math.round(doubt.share * 100)} % of the spread of the fuel). ${measure(doubt.input)}`.trim();
}

/** How to know better at home what is doubted most. */
function measure(input: string): string {
  const ways: Readonly<Record<string, string>> = {
    [doubts.drop]: 'Hold a thermocouple in the vent at full heat and say flue=',
    [doubts.co]: 'A blue flame on the vent is CO burning too late; give less depth or second air, and say co=',
    [doubts.excess]: 'Read the oxygen in the flue and ask flame reads=; then say excess=',
    [doubts.power]:
      'Weigh fuel or bottle before and after half an hour: rate= for its heat, or blast= for what the blower gives',
    [doubts.ash]: 'Burn a weighed kilogram out and weigh the ash: ash=',
    [doubts.dry]: 'A bag with its analysis, or a melt weighed once, narrows it',
    [doubts.film]: 'Time one melt from lighting to pour',
    [doubts.ends]: 'Lid and floor as layers: lid= and floor=',
    [doubts.price]: 'price= for what you pay',
  };
  const way = ways[input];
  if (way) return `${way}.`;
  return input.startsWith('how well') || input.startsWith('how dense')
    ? 'Weigh a dry cube of the lining you rammed.'
    : '';
}

export function notesOf(parts: FuelParts): readonly string[] {
  const { balance, asked, units, staged } = parts;
  const { melts, fire } = balance;
  const { first, again } = melts;
  const saved = 1 - again.fuel_kg / first.fuel_kg;
  const rows: (string | undefined)[] = [
    notSizedFor(parts.options.sized, asked.fuel, units),
    turnedDown(first)
      ? `Full blast for ${minutes(first.climb_s)}, until the hot face is up to heat; then turned down for ${minutes(first.hold_s)} while the metal catches up. More fire then goes up the vent.`
      : first.hold_s > 60
        ? `Full blast for ${minutes(first.time_s)}: the hot face is up to heat ${minutes(first.hold_s)} before the metal.`
        : `Full blast for ${minutes(first.climb_s)}: the metal is ready as the hot face is up to heat.`,
    saved > 0.02
      ? `A melt right after takes ${Math.round(saved * 100)} % less fuel: the wall has its heat. Melt in a row.`
      : undefined,
    modelErrorNote(['fuel.mass'], units),
    flowsNote(parts),
    fire.unburned > 0.05
      ? `${Math.round(fire.unburned * 100)} % of the heat leaves as unburned gas: that is the flame above the lid.`
      : undefined,
    efficiencyNote(parts),
    staged ? tradeNote(parts) : undefined,
    asked.cheap && !staged ? 'No split was worked out: both prices are needed in one currency.' : undefined,
    first.fuel_kg * fire.fuel.ash > parts.ashRoom_kg
      ? `Its ash, ${formatSi(first.fuel_kg * fire.fuel.ash, 'kg', units)}, fills the bed: rake it out.`
      : undefined,
  ];
  return rows.filter((one) => one !== undefined);
}

/** Computed of a fire that never idles: held against what is told of those that do. */
function efficiencyNote({ balance: { melts } }: FuelParts): string | undefined {
  const above = [
    { says: 'in the first melt', got: melts.first.efficiency, told: efficiencies.single },
    { says: 'in the next', got: melts.again.efficiency, told: efficiencies.repeated },
  ].filter(({ got, told }) => got > told.high);
  if (above.length === 0) return undefined;
  const percent = (share: number) => `${Math.round(share * 100)} %`;
  const said = above.map(({ says, got, told }) => `${percent(got)} of the heat ${says}, where ${toldOf(told)} is told`);
  return `Metal gets ${said.join(', and ')} of hobby furnaces (from memory). That is computed at best: heating up slowly, waiting with the fire on and charging late all cost beyond it, and the model itself may be off besides.`;
}

function flowsNote({ balance: { melts } }: FuelParts): string | undefined {
  const { first } = melts;
  const wall_J = first.stored_J + first.shell_J + first.ends_J;
  return wall_J > first.metal_J
    ? `Wall, lid and floor take ${(wall_J / first.metal_J).toFixed(1)} times what the metal takes: a lighter lining saves more than a better burner.`
    : undefined;
}

function tradeNote({ staged, asked, units }: FuelParts): string {
  const { cost_trade_USD, cost_better_USD, cost_cheap_USD } = staged!;
  const money = (value: number) => formatSi(value, asked.priceOf(asked.fuel)?.currency ?? 'USD', units);
  return `${capital(asked.cheap!.name)} to ${formatSi(tradeSwitch_K, 'K', units)} and ${asked.fuel.name} from there (common practice, no source): ${money(cost_trade_USD)}; ${asked.fuel.name} alone ${money(cost_better_USD)}, ${asked.cheap!.name} alone ${money(cost_cheap_USD)}. By price either fuel wins nearly everywhere or nowhere; what speaks for the change is ash, the bed and the power at the end.`;
}

const minutes = (time_s: number): string => `${Math.round(time_s / 60)} min`;
