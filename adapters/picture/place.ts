import { type Box, crosses, liesOn, meet, overlaps, type Segment } from './box.ts';

/** One way to set a label, the lower its price the better. */
export interface Candidate {
  readonly box: Box;
  readonly lines: readonly string[];
  /** From the label to what it is about, where it does not stand beside it. */
  readonly leader?: Segment;
  readonly price: number;
}

export interface Wanted {
  readonly near: readonly Candidate[];
  /** Many more, none of them below its price: made only where no near one is good enough. */
  readonly far: { readonly price: number; readonly candidates: () => readonly Candidate[] };
  /** Lines of the mark itself, which no label should cover. */
  readonly strokes: readonly Segment[];
  /** Lines that only lead to it: still plain where a label interrupts them. */
  readonly witnesses?: readonly Segment[];
}

/** Dear enough that no mark takes one while it has another way: text over text can't be read. */
const textOverText = 10_000;
const leaderThroughText = 400;
const textOverStroke = 70;
const textOverWitness = 16;
const leaderOverStroke = 12;
const textOverEdge = 14;
const mostForEdges = 170;
const rounds = 3;

/**
 * Chooses a candidate for each label: first in order, then each again beside what the others chose. `also` is
 * what a place costs for a reason of the page's own.
 */
export function placed(
  wanted: readonly Wanted[],
  edges: readonly Segment[],
  also: (box: Box) => number = () => 0,
): readonly Candidate[] {
  const order = wanted.map(({ near, far }) => ({
    near: near.toSorted(byPrice),
    far: { ...far, sorted: undefined as readonly Candidate[] | undefined },
  }));
  const chosen: (Candidate | undefined)[] = wanted.map(() => undefined);
  for (let round = 0; round < rounds; round++) {
    let settled = true;
    for (const [index, { near, far }] of order.entries()) {
      const priced = (candidate: Candidate, enough: number) =>
        priceBeside(candidate, { index, wanted, chosen, edges, also, enough });
      let best = cheapest(near, priced);
      if (far.price < best.price) {
        far.sorted ??= far.candidates().toSorted(byPrice);
        best = cheapest(far.sorted, priced, best);
      }
      settled &&= best.candidate === chosen[index];
      chosen[index] = best.candidate;
    }
    if (settled) break;
  }
  return chosen.map((candidate) => candidate!);
}

const byPrice = (a: Candidate, b: Candidate): number => a.price - b.price;

interface Best {
  readonly candidate: Candidate | undefined;
  readonly price: number;
}

/** Candidates come cheapest first, so the search ends where even an unhindered one would be dearer. */
function cheapest(
  candidates: readonly Candidate[],
  priced: (candidate: Candidate, enough: number) => number,
  before: Best = { candidate: undefined, price: Infinity },
): Best {
  let best = before;
  for (const candidate of candidates) {
    if (candidate.price >= best.price) break;
    const price = priced(candidate, best.price);
    if (price < best.price) best = { candidate, price };
  }
  return best;
}

interface Beside {
  readonly index: number;
  readonly wanted: readonly Wanted[];
  readonly chosen: readonly (Candidate | undefined)[];
  readonly edges: readonly Segment[];
  readonly also: (box: Box) => number;
  readonly enough: number;
}

const none: readonly Segment[] = [];

/** Its own price and that of every hindrance; stops counting once it is dearer than `enough`. */
function priceBeside(
  { box, leader, price: own }: Candidate,
  { index, wanted, chosen, edges, also, enough }: Beside,
): number {
  let price = own + also(box);
  // The dearest first, so that the count ends early.
  for (let at = 0; at < chosen.length; at++) {
    const other = chosen[at];
    if (at === index || !other) continue;
    if (overlaps(box, other.box)) price += textOverText;
    if (leader && crosses(other.box, leader)) price += leaderThroughText;
    if (other.leader && crosses(box, other.leader)) price += leaderThroughText;
    if (leader && other.leader && meet(leader, other.leader)) price += textOverStroke;
    if (price >= enough) return price;
  }
  for (let at = 0; at < wanted.length; at++) {
    const { strokes, witnesses = none } = wanted[at]!;
    for (const stroke of strokes) {
      if (crosses(box, stroke)) price += textOverStroke;
      if (leader && at !== index && meet(leader, stroke)) price += leaderOverStroke;
      if (leader && at !== index && liesOn(leader, stroke)) price += textOverStroke;
    }
    if (at !== index) for (const stroke of witnesses) if (crosses(box, stroke)) price += textOverWitness;
    if (price >= enough) return price;
  }
  let onEdges = 0;
  for (const edge of edges) if (crosses(box, edge)) onEdges += textOverEdge;
  return price + Math.min(onEdges, mostForEdges);
}
