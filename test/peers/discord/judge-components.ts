import type { APIModalInteractionResponseCallbackData } from 'discord.js';
import { repeated } from './judge-command.ts';

/** A component of a message or a modal, as far as the rules look at it. */
export interface Component {
  readonly type: number;
  readonly custom_id?: string | null;
  readonly style?: number;
  readonly label?: string | null;
  readonly description?: string | null;
  readonly content?: string;
  readonly url?: string | null;
  readonly sku_id?: string | null;
  readonly emoji?: unknown;
  readonly disabled?: boolean | null;
  readonly required?: boolean | null;
  readonly placeholder?: string | null;
  readonly value?: string | null;
  readonly min_length?: number | null;
  readonly max_length?: number | null;
  readonly min_values?: number | null;
  readonly max_values?: number | null;
  readonly options?: readonly SelectOption[];
  readonly components?: readonly Component[];
  readonly component?: Component;
  readonly accessory?: Component;
}

export interface SelectOption {
  readonly label: string;
  readonly value: string;
  readonly description?: string | null;
  readonly default?: boolean | null;
}

export const kind = { row: 1, button: 2, stringSelect: 3, textInput: 4, label: 18 } as const;

const selects = new Set([3, 5, 6, 7, 8]);

/** Every component of a tree, outer before inner. */
export function* everyComponent(components: readonly Component[]): Generator<Component> {
  for (const component of components) {
    yield component;
    yield* everyComponent(component.components ?? []);
    yield* everyComponent([component.component, component.accessory].filter((each) => each !== undefined));
  }
}

export const countComponents = (components: readonly Component[]) => [...everyComponent(components)].length;

/** What is wrong with a message's components beyond their schema, in words. */
export function componentFaults(components: readonly Component[], v2: boolean): readonly string[] {
  const all = [...everyComponent(components)];
  const rows = all.filter((component) => component.type === kind.row);
  return [
    ...customIdFaults(all),
    ...(v2 || components.every((component) => component.type === kind.row)
      ? []
      : ['components other than rows need the flag 1<<15']),
    ...(v2 || rows.length <= 5 ? [] : [`${rows.length} rows: at most 5`]),
    ...rows.flatMap((row) => rowFaults(row.components ?? [])),
    ...all.filter((component) => component.type === kind.button).flatMap(buttonFaults),
    ...all.filter((component) => component.type === kind.stringSelect).flatMap(selectFaults),
    ...textDisplayFaults(all),
  ];
}

/** What is wrong with a modal beyond its schema, in words. The documentation says 5 components, the schema 40: 5. */
export function modalFaults(modal: APIModalInteractionResponseCallbackData): readonly string[] {
  const top = modal.components as readonly Component[];
  const all = [...everyComponent(top)];
  return [
    ...(top.length > 5 ? [`a modal with ${top.length} components: at most 5`] : []),
    ...customIdFaults(all),
    ...(top.some((component) => component.type === kind.row) ? ['a row in a modal: use a label'] : []),
    ...all.filter((component) => component.type === kind.stringSelect).flatMap(selectFaults),
    ...all.filter((component) => component.type === kind.textInput).flatMap(textInputFaults),
  ];
}

function customIdFaults(all: readonly Component[]): readonly string[] {
  const ids = all.flatMap((component) => (component.custom_id ? [component.custom_id] : []));
  return repeated(ids).map((id) => `two components have the custom_id ${id}`);
}

function rowFaults(inside: readonly Component[]): readonly string[] {
  const buttons = inside.filter((component) => component.type === kind.button).length;
  const menus = inside.filter((component) => selects.has(component.type)).length;
  if (menus > 1 || (menus > 0 && buttons > 0)) return ['a row holds up to 5 buttons or one select'];
  return [];
}

function buttonFaults(button: Component): readonly string[] {
  const name = button.custom_id ?? button.url ?? button.label ?? '?';
  const wanted = button.style === 5 ? 'url' : button.style === 6 ? 'sku_id' : 'custom_id';
  const ways = (['custom_id', 'url', 'sku_id'] as const).filter((way) => button[way]);
  return [
    ...(ways.length === 1 && ways[0] === wanted
      ? []
      : [`button ${name}: style ${button.style} needs ${wanted} and nothing else`]),
    ...(button.style !== 6 && !button.label && !button.emoji ? [`button ${name}: neither label nor emoji`] : []),
  ];
}

function selectFaults(select: Component): readonly string[] {
  const options = select.options ?? [];
  const { min_values, max_values } = select;
  const [least, most] = [min_values ?? 1, max_values ?? 1];
  const preset = options.filter((option) => option.default).length;
  const faults = [
    ...repeated(options.map((option) => option.value)).map((value) => `two options have the value ${value}`),
    ...(least > most ? [`at least ${least} of at most ${most} values`] : []),
    ...(most > options.length ? [`up to ${most} values of ${options.length} options`] : []),
    ...(preset > most ? [`${preset} options preset, at most ${most}`] : []),
  ];
  return faults.map((fault) => `select ${select.custom_id}: ${fault}`);
}

function textInputFaults(input: Component): readonly string[] {
  const value = input.value ?? '';
  const least = input.min_length ?? 0;
  const most = input.max_length ?? 4000;
  return [
    ...(least > most ? [`text input ${input.custom_id}: min_length over max_length`] : []),
    ...(value.length > most || (value !== '' && value.length < least)
      ? [`text input ${input.custom_id}: its value breaks its own limits`]
      : []),
  ];
}

function textDisplayFaults(all: readonly Component[]): readonly string[] {
  const texts = all.flatMap((component) => (component.type === 10 ? [component.content ?? ''] : []));
  const sum = texts.reduce((total, text) => total + text.length, 0);
  return sum > 4000 ? [`text displays have ${sum} characters together: at most 4000`] : [];
}
