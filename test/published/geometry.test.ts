import { describe, it } from 'vitest';
import { dishVolume_m3, frustumVolume_m3, ringVolume_m3 } from '../../core/shape/volume.ts';
import { librariesOf, stored } from '../reference/stored.ts';
import { outside } from './outside.ts';

type Frustum = Parameters<typeof frustumVolume_m3>[0];
type Inputs =
  | ({ shape: 'frustum' } & Frustum)
  | ({ shape: 'ring' } & Parameters<typeof ringVolume_m3>[0])
  | ({ shape: 'dish' } & Parameters<typeof dishVolume_m3>[0])
  | { shape: 'frustum less frustum'; outer: Frustum; inner: Frustum };

const reference = stored<Inputs>('geometry');

describe('volumes, beside the same bodies summed slice by slice', () => {
  it.each(reference.cases)('$id', ({ id, inputs, expected, tolerance, why }) => {
    outside({
      subject: id,
      quantity: 'volume',
      ours: volume_m3(inputs),
      theirs: expected,
      unit: 'm³',
      source: `${librariesOf(reference)}, numerical integral`,
      tolerance,
      reason: why,
    });
  });
});

function volume_m3(inputs: Inputs): number {
  switch (inputs.shape) {
    case 'frustum':
      return frustumVolume_m3(inputs);
    case 'ring':
      return ringVolume_m3(inputs);
    case 'dish':
      return dishVolume_m3(inputs);
    case 'frustum less frustum':
      return frustumVolume_m3(inputs.outer) - frustumVolume_m3(inputs.inner);
  }
}
