import { Length } from '../measure/length.ts';
import type { Size } from '../measure/size.ts';
import type { RoundedCorners } from '../project/corners.ts';
import type { FormSetting } from '../project/grammar/form-grammar.ts';
import type { OutlineAsWritten } from '../project/grammar/outline-grammar.ts';
import type { Piece, PieceBody } from '../project/model.ts';
import type { NetAsWritten } from '../project/net-as-written.ts';
import type { OpeningCut } from '../project/opening.ts';
import type { AtSize, Placement } from '../project/sizes-as-written.ts';
import type { At } from '../project/source.ts';
import type { Layer } from '../shape/shapes.ts';

/** Whether a length is one of the piece's own, or says where it lies on its base. */
type Kind = 'part' | 'place';

/** What a primary length, one that a maker chooses, becomes in the other edition. */
export type NewLength = (own: Length, kind: Kind) => Length;

/** Equal lengths of one kind are one choice, so that they stay equal. */
export function keyOf(own: Length, kind: Kind): string {
  return `${kind} ${own}`;
}

/** How a piece lies on its base as written, and how large that base became. */
export type LayerOnBase = { readonly layer: Layer; readonly base: Size };

/** One primary length of a piece, however often it stands there. */
export type Primary = { readonly key: string; readonly kind: Kind; readonly own: Length };

/** A piece with every primary length moved; whatever else it measures is a sum of them. */
export function movePiece(piece: Piece, ruler: 'in' | 'mm', move: NewLength, lying?: LayerOnBase): Piece {
  const { corners } = piece;
  return {
    ...piece,
    body: moveBody(piece.body, ruler, move, lying),
    placement: movePlacement(piece.placement, move),
    impressions: piece.impressions.map((each) => ({
      ...each,
      placement: movePlacement(each.placement, move),
    })),
    ...(corners && { corners: moveCorners(corners, move) }),
    openings: piece.openings.map((opening) => ({
      ...opening,
      cut: moveOpening(opening.cut, move),
      placement: movePlacement(opening.placement, move),
    })),
  };
}

function moveCorners(corners: RoundedCorners, move: NewLength): RoundedCorners {
  return corners.map((each) => ({ ...each, radius: moveAt(each.radius, 'part', move) }));
}

function moveOpening(cut: OpeningCut, move: NewLength): OpeningCut {
  if (cut.kind === 'slot') return { ...cut, length: moveAt(cut.length, 'part', move) };
  if (cut.kind === 'pop-up') {
    const [one, other] = cut.depths;
    const depths = [moveAt(one, 'part', move), moveAt(other, 'part', move)] as const;
    return { ...cut, width: moveAt(cut.width, 'part', move), depths };
  }
  const { size, outline, corners } = cut;
  const moved = moveOutlined(size, outline, move, undefined);
  return { ...cut, ...moved, ...(corners && { corners: moveCorners(corners, move) }) };
}

/** The primary lengths of a piece, each value once, in the order they are met. */
export function primariesOf(piece: Piece, lying?: LayerOnBase): readonly Primary[] {
  const met = new Map<string, Primary>();
  const note: NewLength = (own, kind) => {
    const key = keyOf(own, kind);
    met.set(key, { key, kind, own });
    return own;
  };
  movePiece(piece, 'mm', note, lying);
  return [...met.values()];
}

/** A border up to so wide is looked at, and is what was chosen; our judgment, no source. */
const WIDEST_BORDER: Length = Length.of(1, 4, 'in');

/**
 * In which directions a layer's border decides its cut, because it is even: the same all round, or the same on two sides
 * and narrow. A label in the middle of something wide is chosen by its own size, and so is a square.
 */
function evenWays({ turn, size, reveals, under }: Layer): {
  readonly across: boolean;
  readonly upright: boolean;
} {
  const { left, right, top, bottom } = reveals;
  if (turn % 90 !== 0 || under.opening) return { across: false, upright: false };
  const all = [right, top, bottom].every((reveal) => reveal.equals(left));
  const isSquare = size.width.equals(size.height);
  const decides = (one: Length, other: Length): boolean =>
    all || (!isSquare && one.equals(other) && one.sign > 0 && !one.greaterThan(WIDEST_BORDER));
  return { across: decides(left, right), upright: decides(top, bottom) };
}

function moveBody(
  body: PieceBody,
  ruler: 'in' | 'mm',
  move: NewLength,
  lying: LayerOnBase | undefined,
): PieceBody {
  if (body.kind === 'flat') {
    const { size, ...moved } = moveOutlined(body.cut, body.outline, move, lying);
    return { ...body, ...moved, cut: { ...size, unit: ruler } };
  }
  if (body.kind === 'net') return { ...body, ...moveNet(body, move) };
  return { ...body, settings: moveSettings(body.settings, move), ruler };
}

/** A size and the outline in it. What is drawn is as large as it is drawn. */
function moveOutlined(
  size: AtSize,
  outline: OutlineAsWritten | undefined,
  move: NewLength,
  lying: LayerOnBase | undefined,
): { readonly size: AtSize; readonly outline?: OutlineAsWritten } {
  if (outline?.kind === 'drawn') return { size, outline };
  const settings = outline && moveSettings(outline.settings, move);
  return {
    size: moveCut(size, move, lying),
    ...(outline && settings && { outline: { ...outline, settings } }),
  };
}

type Settings = ReadonlyMap<string, FormSetting>;

function moveSettings(settings: Settings, move: NewLength): Settings {
  return new Map([...settings].map(([key, setting]) => [key, moveSetting(setting, move)]));
}

function moveSetting(setting: FormSetting, move: NewLength): FormSetting {
  if (setting.kind !== 'lengths') return setting;
  return { ...setting, lengths: setting.lengths.map((length) => moveAt(length, 'part', move)) };
}

function moveCut(cut: AtSize, move: NewLength, lying: LayerOnBase | undefined): AtSize {
  const { width, height } = cut;
  const turned = lying !== undefined && lying.layer.turn % 180 !== 0;
  const [wide, high] = [
    borderedSize(lying, turned ? 'upright' : 'across', move),
    borderedSize(lying, turned ? 'across' : 'upright', move),
  ];
  return {
    ...cut,
    width: wide ? { ...width, value: wide } : moveAt(width, 'part', move),
    height: high ? { ...height, value: high } : moveAt(height, 'part', move),
  };
}

/** What a layer measures one way on its base where its border decides that; undefined where its own size does. */
function borderedSize(
  lying: LayerOnBase | undefined,
  way: 'across' | 'upright',
  move: NewLength,
): Length | undefined {
  if (!lying || !evenWays(lying.layer)[way]) return undefined;
  const { layer, base } = lying;
  const [border, extent] =
    way === 'across' ? [layer.reveals.left, base.width] : [layer.reveals.top, base.height];
  return extent.minus(moveSigned(border, 'place', move).times(2));
}

type Scored = Pick<NetAsWritten, 'score'> & { readonly cut: AtSize };

/** The gaps between neighboring score lines and edges are moved; positions and the cut are what they come to. */
function moveNet({ cut, score }: Scored, move: NewLength): Scored {
  const width = moveLines(cut.width.value, linesFrom('left', 'right', score, cut.width.value), move);
  const height = moveLines(cut.height.value, linesFrom('top', 'bottom', score, cut.height.value), move);
  return {
    cut: {
      ...cut,
      width: { ...cut.width, value: width.extent },
      height: { ...cut.height, value: height.extent },
    },
    score: score.map(({ from, at }) => {
      const [own, moved] =
        from.value === 'left' || from.value === 'right' ? [cut.width, width] : [cut.height, height];
      const isFar = from.value === 'right' || from.value === 'bottom';
      return {
        from,
        at: at.map((line) => {
          const near = isFar ? own.value.minus(line.value) : line.value;
          const there = moved.at(near);
          return { ...line, value: isFar ? moved.extent.minus(there) : there };
        }),
      };
    }),
  };
}

/** The lines of one direction, measured from its near edge. */
function linesFrom(near: string, far: string, score: NetAsWritten['score'], extent: Length): Length[] {
  return score.flatMap(({ from, at }) => {
    if (from.value === near) return at.map(({ value }) => value);
    return from.value === far ? at.map(({ value }) => extent.minus(value)) : [];
  });
}

type MovedLines = { readonly extent: Length; readonly at: (own: Length) => Length };

function moveLines(extent: Length, lines: readonly Length[], move: NewLength): MovedLines {
  const edges = [...lines, extent].sort((a, b) => a.compare(b));
  const moved = new Map<string, Length>();
  let [before, there] = [Length.zero, Length.zero];
  for (const edge of edges) {
    there = there.plus(moveSigned(edge.minus(before), 'part', move));
    moved.set(edge.toString(), there);
    before = edge;
  }
  return { extent: there, at: (own) => moved.get(own.toString()) ?? own };
}

function movePlacement({ left, right, top, bottom, turn }: Placement, move: NewLength): Placement {
  return {
    ...(left && { left: moveDistance(left, move) }),
    ...(right && { right: moveDistance(right, move) }),
    ...(top && { top: moveDistance(top, move) }),
    ...(bottom && { bottom: moveDistance(bottom, move) }),
    ...(turn && { turn }),
  };
}

function moveDistance({ value, at }: At<Length>, move: NewLength): At<Length> {
  return { value: moveSigned(value, 'place', move), at };
}

function moveAt({ value, at }: At<Length>, kind: Kind, move: NewLength): At<Length> {
  return { value: move(value, kind), at };
}

/** Nothing stays nothing, and what is less than nothing stays that. */
function moveSigned(length: Length, kind: Kind, move: NewLength): Length {
  if (length.sign === 0) return length;
  return length.sign > 0 ? move(length, kind) : Length.zero.minus(move(length.abs(), kind));
}
