import type { PropertyName } from '../../core/materials/material.ts';
import type { Figure } from '../../core/quantity/figure.ts';

interface Label {
  readonly label: string;
  readonly unit: Figure['unit'];
  readonly shown?: NonNullable<Figure['shown']>;
}

const share = { unit: '1', shown: 'percent' } as const;

/** How each property of the catalogue is named and shown. */
export const propertyLabels: Readonly<Record<PropertyName, Label>> = {
  density_kg_m3: { label: 'density, dry', unit: 'kg/m3' },
  loose_density_kg_m3: { label: 'bulk density, loose', unit: 'kg/m3' },
  service_limit_K: { label: 'service limit', unit: 'K' },
  maturing_K: { label: 'matures at', unit: 'K' },
  pce_K: { label: 'cone equivalent', unit: 'K' },
  melting_K: { label: 'melts at', unit: 'K' },
  moisture: { label: 'moisture, air-dry', ...share },
  mixing_water: { label: 'mixing water', ...share },
  porosity: { label: 'porosity', ...share },
  emissivity: { label: 'emissivity', unit: '1' },
  drying_shrinkage: { label: 'shrinks drying', ...share },
  firing_shrinkage: { label: 'shrinks firing', ...share },
  ignition_loss: { label: 'loss on firing', ...share },
  thermal_expansion_per_K: { label: 'thermal expansion', unit: '1/K' },
  tensile_strength_Pa: { label: 'strength, bending or tensile', unit: 'Pa' },
  settling: { label: 'settles when tamped', ...share },
  ramming_ratio: { label: 'loose over rammed volume', unit: '1' },
};
