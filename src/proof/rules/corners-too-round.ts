import { Length, type Unit } from '../../measure/length.ts';
import type { Size } from '../../measure/size.ts';
import { areAll, CORNERS, type Corner, type RoundedCorners, radiiOf } from '../../project/corners.ts';
import type { Piece } from '../../project/model.ts';
import { boxSize } from '../../shape/net.ts';
import { largestPanel } from '../../shape/panel-area.ts';
import { roomsAt } from '../../shape/rounding.ts';
import type { Shapes } from '../../shape/shapes.ts';
import { ownNet } from '../../shape/sheets.ts';
import type { Rule } from '../rule.ts';
import { sayCorners, sayLength, saySize } from '../words.ts';

type Facts = {
  readonly piece: string;
  readonly radius: Length;
  readonly corners: readonly Corner[];
  /** What is rounded: the piece, or the largest panel of it; or an opening. */
  readonly size: Size;
  /** The largest radius there is room for; half the shorter side of corners that are all alike. */
  readonly most: Length;
  readonly unit: Unit;
};

export const cornersTooRound: Rule<Facts> = {
  severity: 'error',
  summary: 'Rounded corners have room: two on one side by at most half of it, or what the other one leaves.',
  why: 'At half the shorter side two corners meet, and a square becomes a circle. No corner can be rounder than that, and anyone who reads the number looks for a punch that the piece has no room for. A corner whose neighbors are square may take a whole side.',
  fails: { pieces: 'label: { stock: cream, cut: 2 1/2 x 3, corners: 2 }', blames: '2' },
  passes: { with: 'corners: 1 1/4', insteadOf: 'corners: 2' },
  *check({ project: { pieces, unit }, shapes }) {
    for (const [piece, rounded, size] of [...pieces.values()].flatMap((each) => roundedIn(each, shapes))) {
      for (const { corners, radius } of rounded) {
        const most = mostOf(corners, rounded, size);
        const facts = { piece, radius: radius.value, corners, size, most, unit };
        if (radius.value.minus(most).greaterThan(GIVE)) yield { at: radius.at, facts };
      }
    }
  },
  say: ({ piece, radius, corners, size, most, unit }) => {
    const room = areAll(corners) ? 'two corners meet at' : 'there is room for';
    const are = corners.length === 1 ? 'is' : 'are';
    return {
      message: `the ${sayCorners(corners)} of ${piece} ${are} rounded by ${sayLength(radius, unit)}, but it is ${saySize(size, unit)}: ${room} ${sayLength(most, unit)}`,
      remedy: `write at most ${sayLength(most, unit)}`,
    };
  },
};

/** A piece that is rounded, and each such opening of it: what it is called, and how large it is. */
function roundedIn(
  { id, corners, openings }: Piece,
  { nets }: Shapes,
): readonly (readonly [name: string, RoundedCorners, Size])[] {
  const net = ownNet(nets, id.value);
  const largest = net && largestPanel(net);
  const cut = openings.flatMap(({ name, cut }) => {
    if (cut.kind !== 'window' || !cut.corners) return [];
    const size = { width: cut.size.width.value, height: cut.size.height.value };
    return [[`${id.value}.${name.value}`, cut.corners, size] as const];
  });
  return largest && corners ? [[id.value, corners, boxSize(largest.box)], ...cut] : cut;
}

/** The largest radius that some corners have room for beside the others. */
function mostOf(corners: readonly Corner[], rounded: RoundedCorners, { width, height }: Size): Length {
  const sides = [width, height, width, height];
  const rooms = CORNERS.flatMap((corner, index) =>
    corners.includes(corner) ? roomsAt(index, radiiOf(rounded), sides) : [],
  );
  return Length.min(Length.max(width, height), ...rooms);
}

/** A circle of 19 mm has corners of 10 mm in whole millimeters, and is cut round all the same. */
const GIVE: Length = Length.of(1, 32, 'in');
