import { AskError } from '../../core/ask-error.ts';
import { blastPoint } from '../../core/fire/air/operating-point.ts';
import type { Gain } from './parts.ts';
import { type BlastQuestion, blastInput, typicalOf } from './question.ts';

/** Half as wide again; twice as strong. */
const WIDER = 1.5;
const STRONGER = 2;

/**
 * A bigger blower, or a bigger pipe: the same furnace worked out again with each, the steps between pipe and tuyere with
 * it. A tuyere as wide as the pipe goes with it. Left out: what leads past these formulas.
 */
export function gainsOf(question: BlastQuestion): readonly Gain[] {
  const typical = typicalOf(question);
  const now = blastPoint(blastInput(question, typical)).flow_m3_s;
  const { pipe, tuyere_m } = question;
  const narrow = tuyere_m < pipe.bore_m * (1 - 1e-9);
  const wider = {
    ...question,
    pipe: { ...pipe, bore_m: WIDER * pipe.bore_m },
    tuyere_m: narrow ? tuyere_m : WIDER * tuyere_m,
  };
  const asked = [
    { change: 'pipe', says: `a pipe half as wide again${narrow ? '' : ', tuyere too'}`, of: [wider, typical] },
    ...(narrow
      ? [
          {
            change: 'tuyere',
            says: 'a tuyere half as wide again',
            of: [{ ...question, tuyere_m: Math.min(WIDER * tuyere_m, pipe.bore_m) }, typical],
          } as const,
        ]
      : []),
    {
      change: 'flow',
      says: 'a blower of twice the free flow',
      of: [question, { ...typical, free_m3_s: STRONGER * typical.free_m3_s }],
    },
    {
      change: 'pressure',
      says: 'a blower of twice the pressure',
      of: [question, { ...typical, shut_Pa: STRONGER * typical.shut_Pa }],
    },
  ] as const;
  return asked
    .flatMap(({ change, says, of: [changed, inputs] }) => {
      try {
        return [{ change, says, gain: blastPoint(blastInput(changed, inputs)).flow_m3_s / now - 1 }];
      } catch (error) {
        if (error instanceof AskError) return [];
        throw error;
      }
    })
    .toSorted((a, b) => b.gain - a.gain);
}

/** The pipe that is wide enough for these formulas, for an error's example; `undefined` where none is. */
export function wideEnough_m(question: BlastQuestion): number | undefined {
  const typical = typicalOf(question);
  for (let bore_m = WIDER * question.pipe.bore_m; bore_m < 0.4; bore_m *= WIDER) {
    try {
      blastPoint(blastInput({ ...question, pipe: { ...question.pipe, bore_m }, tuyere_m: bore_m }, typical));
      return bore_m;
    } catch (error) {
      if (!(error instanceof AskError)) throw error;
    }
  }
  return undefined;
}
