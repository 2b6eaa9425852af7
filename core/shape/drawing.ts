/** A point in the drawing's own plane, m: x to the right, y up. */
export type Point = readonly [x_m: number, y_m: number];

/** What a shape is made of; adapters give each a fill and a hatch, so that colour is never the only sign. */
export type Matter =
  | 'shell'
  | 'hot face'
  | 'insulation'
  | 'brick'
  | 'hollow'
  | 'crucible'
  | 'metal'
  | 'charcoal'
  | 'sleeve'
  | 'sheet'
  | 'mesh'
  | 'wire'
  | 'roll'
  | 'ground';

/** Closed outline, curves already cut into chords fine enough for print (0.2 mm off at most). */
export interface Area {
  readonly kind: 'area';
  /** As the legend names it: `hot-face lining`. */
  readonly name: string;
  readonly matter: Matter;
  readonly outline: readonly Point[];
  readonly holes?: readonly (readonly Point[])[];
}

/** An open or closed line: an edge to cut, a fold, an axis. */
export interface Line {
  readonly kind: 'line';
  readonly name: string;
  readonly stroke: 'cut' | 'fold' | 'axis' | 'wire' | 'hidden';
  readonly points: readonly Point[];
}

/** What is measured between two points; the adapter prints the value in both systems, so it can't contradict the drawing. */
export interface LengthMark {
  readonly kind: 'length';
  /** A word or two: `bore`, `outer radius`; empty where the place says it. */
  readonly name: string;
  readonly from: Point;
  readonly to: Point;
  /** How far the dimension line stands off the line between the points, m; positive to its left. 0 runs through the points. */
  readonly off_m: number;
}

export interface AngleMark {
  readonly kind: 'angle';
  readonly name: string;
  readonly corner: Point;
  readonly from: Point;
  readonly to: Point;
}

/** Words with a leader to the point they are about. */
export interface Callout {
  readonly kind: 'callout';
  readonly text: string;
  readonly at: Point;
  /** Where the words stand. */
  readonly words: Point;
}

/** Shapes and dimensions to scale. Plain data: `adapters/picture` draws it. */
export interface Drawing {
  /** `section`, `plan`, `inner-form`: names the file beside others of one answer. */
  readonly id: string;
  readonly title: string;
  /** Says in words what the picture shows, its main numbers included. */
  readonly alt: string;
  readonly shapes: readonly (Area | Line)[];
  readonly marks: readonly (LengthMark | AngleMark | Callout)[];
  /** A pattern to be printed 1 : 1 over several sheets, with a check length. */
  readonly fullSize?: true;
}
