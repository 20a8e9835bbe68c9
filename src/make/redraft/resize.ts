import { Length } from '../../measure/length.ts';
import { LONGEST } from '../../measure/notation.ts';
import { roundMillimeters, roundUp } from '../../measure/round.ts';
import type { Piece, Project } from '../../project/model.ts';
import { mergeFindings } from '../../proof/tell.ts';
import { sayLength } from '../../proof/words.ts';
import { buildShapes, buildSheets } from '../../shape/build.ts';
import type { Made } from '../../shape/closed-size.ts';
import type { Cavity } from '../../shape/closure/packing.ts';
import { leftIn, roomsOf } from '../../shape/closure/rooms.ts';
import { baseSize } from '../../shape/layers.ts';
import { choicesOf, choose } from './choices.ts';
import { resizeLayer } from './layers.ts';
import { type Goal, type Holder, map3 } from './room.ts';

/** Why something cannot be had. */
export type Refused = { readonly why: string };

/** Makes the holder of a project so large that a goal is met in it, and what lies on it larger with it. */
export function remake(made: Made, holder: Holder, goal: Goal): { readonly made: Made } | Refused {
  const { project } = made;
  const resized = resize(project, holder, goal);
  if ('why' in resized) return resized;
  const pieces = new Map(project.pieces).set(holder.piece.id.value, resized.piece);
  const { sheets } = buildSheets(resized.piece, project);
  const nets = new Map(made.shapes.nets).set(holder.piece.id.value, sheets);
  for (const layer of made.shapes.layers) {
    const base = baseSize(layer.on, nets);
    const moved = base && resizeLayer(layer, base);
    if (!moved) continue;
    pieces.set(moved.id.value, moved);
    nets.set(moved.id.value, buildSheets(moved, project).sheets);
  }
  const now: Project = { ...project, pieces };
  return { made: { project: now, shapes: buildShapes(now) } };
}

/** More rounds than any form needs: where the room follows each length by itself, two do. */
const ROUNDS = 12;

/**
 * The holder with other lengths, in steps that a score board has. Nothing is known of any form: each length is tried a
 * little longer, and what the room gains by it says which length makes room which way. One that can be no longer stays,
 * and another makes the room.
 */
function resize(project: Project, holder: Holder, { block, spare }: Goal): Attempt | Refused {
  const pitch = project.unit === 'in' ? Length.of(1, 8, 'in') : Length.of(1, 1, 'mm');
  const attempt: TryLengths = (lengths) => tryLengths(project, holder, lengths, block);
  const stays = new Set<number>();
  let values = choicesOf(holder.piece);
  let now = attempt(values);
  for (let round = 0; round < ROUNDS && !('why' in now); round += 1) {
    const { left } = now;
    const lacks = map3((way) => left[way] && spare[way]?.minus(left[way]));
    if (lacks.every((lack) => !lack || roundUp(lack, pitch).sign === 0)) return now;
    const gains = values.map((_, index) =>
      stays.has(index) ? NO_GAIN : gainsOf(index, values, left, pitch, attempt),
    );
    const growths = growthsFor(lacks, gains, pitch);
    const next = values.map((value, index) => value.plus(growths[index] ?? Length.zero));
    const tried = attempt(next);
    if ('why' in tried) {
      const isAtFault = (index: number): boolean =>
        !('why' in attempt(next.with(index, values[index] ?? Length.zero)));
      const culprit = growths.findIndex(({ sign }, index) => sign !== 0 && isAtFault(index));
      if (culprit < 0) return tried;
      stays.add(culprit);
    } else if (growths.every(({ sign }) => sign === 0)) {
      return lacks.every((lack) => !lack || lack.sign <= 0)
        ? now
        : { why: unmakeable(holder.piece.id.value) };
    } else [values, now] = [next, tried];
  }
  return 'why' in now ? now : { why: unmakeable(holder.piece.id.value) };
}

function unmakeable(name: string): string {
  return `${name} of that size cannot be made by its width, height and depth alone`;
}

/** A piece with some lengths chosen anew, and what is left in its room. */
type Attempt = { readonly piece: Piece; readonly left: Cavity };

type TryLengths = (values: readonly Length[]) => Attempt | Refused;

function tryLengths(
  project: Project,
  { piece, index, room: old }: Holder,
  values: readonly Length[],
  block: Goal['block'],
): Attempt | Refused {
  const name = piece.id.value;
  const tooLong = values.find((value) => value.greaterThan(LONGEST));
  if (tooLong) {
    const long = sayLength(tooLong, project.unit);
    return { why: `${name} would measure ${long}, and no length may be over 1 m` };
  }
  if (values.some(({ sign }) => sign <= 0)) return { why: unmakeable(name) };
  const chosen = choose(piece, values, !old.round);
  const { sheets, findings } = buildSheets(chosen, project);
  const [fault] = mergeFindings(findings);
  if (fault) return { why: [fault.message, ...(fault.remedy ? [fault.remedy] : [])].join('; ') };
  const [first] = sheets;
  const room = first && roomsOf(first.net)[index];
  return room ? { piece: chosen, left: leftIn(room, block) } : { why: unmakeable(name) };
}

/** How much room a length makes each way for each bit of itself. */
type Gain = readonly [number, number, number];

const NO_GAIN: Gain = [0, 0, 0];

/** Below this share a length only makes room by the way. */
const LEAST_GAIN = 0.05;

/** By how much each length is to grow: the one that makes most room one way, by as much as is wanted that way. */
function growthsFor(lacks: Cavity, gains: readonly Gain[], pitch: Length): readonly Length[] {
  const growths = map3((way) => {
    const [lack, most] = [lacks[way], Math.max(...gains.map((gain) => gain[way]))];
    const index = most < LEAST_GAIN ? -1 : gains.findIndex((gain) => gain[way] === most);
    return { index, growth: lack && index >= 0 ? roundUp(shareOf(lack, most), pitch) : Length.zero };
  });
  return gains.map((_, index) => {
    const [first, ...others] = growths.flatMap((each) => (each.index === index ? [each.growth] : []));
    return first ? Length.max(first, ...others) : Length.zero;
  });
}

/** How much room each way gains by each bit that one length is longer, or loses by what it is shorter. */
function gainsOf(
  index: number,
  values: readonly Length[],
  left: Cavity,
  pitch: Length,
  attempt: TryLengths,
): Gain {
  for (const nudge of [pitch.times(4), pitch, pitch.times(-1)]) {
    const tried = attempt(values.map((value, place) => (place === index ? value.plus(nudge) : value)));
    if ('why' in tried) continue;
    return map3((way) => {
      const [before, after] = [left[way], tried.left[way]];
      return before && after ? after.minus(before).mm / nudge.mm : 0;
    });
  }
  return NO_GAIN;
}

/** How much longer a length has to be that makes so much room for each bit of itself; exact where that is all of it. */
function shareOf(lack: Length, gain: number): Length {
  return Math.abs(gain - 1) < 1e-6 ? lack : roundMillimeters(lack.mm / gain, 1000);
}
