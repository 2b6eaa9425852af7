import type { UnitSystem } from '../../core/quantity/figure.ts';
import type { Matter } from '../../core/shape/drawing.ts';

/** Told, never guessed: a PNG can't ask its reader for it. Light is black on white, for print. */
export type Theme = 'light' | 'dark';

export interface PictureLook {
  readonly units: UnitSystem;
  readonly theme: Theme;
  readonly width_px?: number;
}

/**
 * Pictures are laid out this wide, then scaled. At 550 px, as a chat shows it, the letters are 11 px.
 */
export const layout_px = 1100;
export const letter_px = 22;
export const heading_px = 28;

export interface Colours {
  readonly page: string;
  readonly ink: string;
  /** Lines and words that stand back. */
  readonly faint: string;
  readonly measure: string;
  readonly limit: string;
  readonly danger: string;
  readonly series: readonly string[];
  readonly fills: Readonly<Record<Matter, string>>;
  readonly hatch: string;
}

const light: Colours = {
  page: '#ffffff',
  ink: '#161616',
  faint: '#5d5d5d',
  measure: '#0b3d6b',
  limit: '#9c2f0a',
  danger: '#b3261e',
  series: ['#b3300c', '#0b5c8a', '#4d6b00', '#6b3fa0', '#7a5a00', '#00695c'],
  fills: {
    shell: '#5a6570',
    'hot face': '#f7d3ae',
    insulation: '#fdf3cb',
    brick: '#eec3a6',
    hollow: '#ffffff',
    crucible: '#cfcbd9',
    metal: '#f3a58c',
    charcoal: '#b9b4ae',
    sleeve: '#cde5d3',
    sheet: '#d3dde6',
    mesh: '#eef0f2',
    wire: '#8d98a3',
    roll: '#e6e0f2',
    ground: '#e6dac3',
  },
  hatch: '#3c3c3c',
};

const dark: Colours = {
  page: '#1c1e21',
  ink: '#f1eee8',
  faint: '#b3b0aa',
  measure: '#9fd0ff',
  limit: '#ff9d75',
  danger: '#ff5449',
  series: ['#ff8a65', '#7cc7f2', '#b5d55c', '#c9a7f5', '#e6c35c', '#6fd6c3'],
  fills: {
    shell: '#98a4b0',
    'hot face': '#6e4425',
    insulation: '#57501f',
    brick: '#6b3f28',
    hollow: '#1c1e21',
    crucible: '#4b4760',
    metal: '#8a3a22',
    charcoal: '#101113',
    sleeve: '#2b5738',
    sheet: '#33475a',
    mesh: '#2c3136',
    wire: '#7f8b97',
    roll: '#413a5c',
    ground: '#4d4230',
  },
  hatch: '#d9d4cb',
};

export const coloursOf = (theme: Theme): Colours => (theme === 'dark' ? dark : light);
