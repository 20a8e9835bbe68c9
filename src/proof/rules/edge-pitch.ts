import { Length } from '../../measure/length.ts';
import type { PunchedEdge } from '../../project/decoration.ts';
import type { Edge } from '../../project/net-as-written.ts';
import type { Place } from '../../project/source.ts';
import type { EdgeRow } from '../../shape/net.ts';
import { eachEntry, type OnPaper, sayEdge } from '../decoration.ts';
import type { Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

type Facts = OnPaper & {
  readonly side: Edge;
  readonly pitch: Length;
  readonly hole: Length;
  /** The part of the edge that there is for motifs. */
  readonly room: Length;
  readonly misfit: 'fine' | 'hole' | 'pitch' | 'room' | 'round' | { readonly start: Length };
};

export const edgePitch: Rule<Facts> = {
  severity: 'error',
  summary:
    'A motif is shorter than the pitch of its tool, and the pitch is shorter than the edge it runs along.',
  why: 'The pitch is the distance from one motif to the next, so there is paper between them only if the motif is shorter. And an edge with no room for one motif between its corners is not for this tool.',
  fails: {
    pieces: 'mat: { stock: cream, cut: 3 x 4, edge: { along: left, pitch: 4 1/4, hole: 1/8 } }',
    blames: '4 1/4',
  },
  passes: { with: 'pitch: 1/4', insteadOf: 'pitch: 4 1/4' },
  ownEditionOnly: true,
  *check(context) {
    for (const { it, facts } of eachEntry(context, (row) => misfitOf(row) !== undefined)) {
      const { written, side, pitch, hole } = it;
      const misfit = misfitOf(it);
      if (!misfit) continue;
      const room = it.length.minus((written.start ? Length.zero : it.clear).times(2));
      yield { at: placeOf(written, misfit), facts: { ...facts, side, pitch, hole, room, misfit } };
    }
  },
  say: ({ on, unit, side, pitch, hole, room, misfit }) => {
    const [edge, long] = [sayEdge(side, on), sayLength(room, unit)];
    if (typeof misfit === 'object') {
      const start = sayLength(misfit.start, unit);
      return {
        message: `the row along ${edge} begins ${start} from its end, and the edge is ${long} long: there is no room for a motif of ${sayLength(hole, unit)}`,
        remedy: 'put "start:" right, or leave it out',
      };
    }
    switch (misfit) {
      case 'fine':
        return {
          message: `a pitch of ${sayLength(pitch, unit)} is finer than any tool repeats its motif`,
          remedy: `measure from the middle of one motif to the middle of the next: ${sayLength(FINEST, unit)} at least`,
        };
      case 'hole':
        return {
          message: `a motif of ${sayLength(hole, unit)} leaves no paper before the next, ${sayLength(pitch, unit)} on`,
          remedy:
            '"pitch:" is from the middle of one motif to the middle of the next, "hole:" is one motif alone',
        };
      case 'pitch':
        return {
          message: `the pitch is ${sayLength(pitch, unit)}, but ${edge} is ${long} long`,
          remedy: `write a pitch shorter than ${long}, or leave the edge plain`,
        };
      case 'room':
        return {
          message: `${edge} has ${long} between its corners, too little for a motif of ${sayLength(hole, unit)}`,
          remedy: 'leave this edge plain, or round its corners less',
        };
      case 'round':
        return {
          message: `${edge} has no straight stretch for a motif of ${sayLength(hole, unit)}`,
          remedy: 'leave this edge plain, or name one that is straight',
        };
    }
  },
};

/** The finest pitch of a tool; our judgment, no source. */
const FINEST = Length.of(1, 32, 'in');

function misfitOf({ written, pitch, hole, length, cut, count }: EdgeRow): Facts['misfit'] | undefined {
  if (pitch.lessThan(FINEST)) return 'fine';
  if (!hole.lessThan(pitch)) return 'hole';
  if (count === 0 && !cut.times(2).lessThan(length)) return 'round';
  if (pitch.greaterThan(length)) return 'pitch';
  if (count > 0) return undefined;
  return written.start ? { start: written.start.value } : 'room';
}

function placeOf({ pitch, hole, start, at }: PunchedEdge, misfit: Facts['misfit']): Place {
  if (typeof misfit === 'object') return start?.at ?? at;
  if (misfit === 'round') return at;
  return misfit === 'hole' || misfit === 'room' ? hole.at : pitch.at;
}
