import { AskError } from '../ask-error.ts';
import { finder, findMaterial } from '../materials/catalogue.ts';
import type { Datum, Material } from '../materials/material.ts';
import type { SourceId, Standing } from '../sources/source.ts';
import type { AirDry } from './air-drying.ts';
import { kindData } from './data/kinds.ts';

/** A class of lining as drying sees it. */
export interface DryKind {
  readonly id: string;
  readonly name: string;
  readonly aliases: readonly string[];
  /** Ids of the catalogue that are dried so. */
  readonly materials: readonly string[];
  /** Air takes the water out first; or it is kept moist to harden; or it goes to the fire soon. */
  readonly before: 'air-dry' | 'cure' | 'start soon';
  /** As such linings are made, where nobody says. */
  readonly thickness_m?: Datum;
  /** Under cover before it is aired, kept moist, or left to set. */
  readonly wait_s: Datum;
  /** Of moisture at 20 °C, m²/s. */
  readonly diffusivity_m2_s?: Datum;
  /** Where the air has done enough. */
  readonly until?: AirDry & { readonly source: SourceId; readonly standing: Standing };
  /** Tensile strength before the fire. Judge by `low`. */
  readonly strength_Pa: Datum;
  readonly schedule: string;
  /** Divides every heating rate of the schedule; multiplies its holds as far as the bound water. */
  readonly slower: number;
  readonly longer: number;
  /** Where its first firing ends if nothing else is said. */
  readonly ends_K: number;
  readonly cool_K_per_s: Datum;
  readonly note: string;
}

export const kinds: readonly DryKind[] = Object.freeze([...kindData]);

const findByName = finder('kind of lining', kinds);

export const kindOfMaterial = ({ id }: Pick<Material, 'id'>): DryKind | undefined =>
  kinds.find(({ materials }) => materials.includes(id));

/** A lining by what the catalogue calls it, or by its kind: `clay-sand`, `low-cement castable`, `ramming plastic`. */
export interface Lining {
  readonly kind: DryKind;
  readonly material?: Material;
}

/** @throws AskError `unknown-name`, or `unfit` for what nobody should dry and fire. */
export function findLining(text: string): Lining {
  const material = attempt(() => findMaterial(text));
  if (material === undefined) return liningOfKind(findByName(text));
  const kind = kindOfMaterial(material);
  if (kind) return { kind, material };
  const named = attempt(() => findByName(text));
  if (named) return liningOfKind(named);
  throw unfit(material);
}

function liningOfKind(kind: DryKind): Lining {
  const [first] = kind.materials;
  return first === undefined ? { kind } : { kind, material: findMaterial(first) };
}

function attempt<T>(find: () => T): T | undefined {
  try {
    return find();
  } catch (error) {
    if (error instanceof AskError && error.code === 'unknown-name') return undefined;
    throw error;
  }
}

const unfit = ({ name, hotFace, failsWhen, properties }: Material) =>
  new AskError({
    code: 'unfit',
    what:
      hotFace?.fit === 'never'
        ? `${name} is no lining to dry and fire: ${hotFace.why}`
        : properties.mixing_water
          ? `there is no drying schedule for ${name}: ${failsWhen}`
          : `${name} is put in dry: there is no water in it to drive out`,
    expected: `a lining that is rammed, cast or laid: ${kinds.map(({ id }) => id).join(', ')}`,
    example: 'dry 1.5 in clay-sand',
  });
