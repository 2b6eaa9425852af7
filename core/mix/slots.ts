import { AskError } from '../ask-error.ts';
import type { Material } from '../materials/material.ts';
import type { Slot } from './recipe.ts';

const light = new Set(['perlite', 'vermiculite', 'expanded-clay']);

/** What a catalogue material does in a mix. */
export function slotOf({ id, kind, name }: Material): Slot {
  if (id === 'sawdust') return 'organic';
  if (id === 'grog') return 'grog';
  if (light.has(id)) return 'light';
  if (kind === 'clay') return 'clay';
  if (kind === 'aggregate' || id.endsWith('sand')) return 'sand';
  if (kind === 'binder') return 'binder';
  if (kind === 'castable') return 'castable';
  throw new AskError({
    code: 'unfit',
    what: `${name} is no ingredient of a mix`,
    expected: 'clay, sand, grog, perlite, vermiculite, cement or a castable',
    example: '2 sand 1 clay',
    option: 'ratio',
  });
}
