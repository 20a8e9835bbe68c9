import type { Edition, Editions } from '../edition/editions.ts';
import { wordFinder } from '../project/prose/word-finder.ts';
import { readRef } from '../project/ref.ts';
import { layDown, sharesOf } from '../shape/fold.ts';
import { type FoldMove, moveFlat, moveInto } from '../shape/fold-moves.ts';
import type { Net } from '../shape/net.ts';
import { foldPaper, type PaperSheet } from '../shape/paint/paper-sheet.ts';
import { type Look, placeInPicture, USUAL_LOOK } from '../shape/paint/picture.ts';
import { type Pose, placed, posesOf } from '../shape/paint/pose.ts';
import { sheetsNamed } from '../shape/sheets.ts';
import { glueAreas } from '../shape/stacking/glue-areas.ts';
import { paperOf } from '../shape/view/paper-of.ts';
import { FLAT_TUBE_VIEW } from '../shape/view/views.ts';
import { arranged, drawFace, pointsOf, type SheetPicture } from './arranged.ts';
import { setCallouts } from './callouts.ts';
import { Canvas, type Drawing } from './canvas.ts';
import { drawOnce } from './draw-once.ts';
import { isHiddenFrom } from './hidden.ts';
import { type NamedPanel, otherPanels, placeNames, turningPanels } from './move-names.ts';
import { boxOf } from './region.ts';
import { seenOf } from './seen.ts';
import { facesSeen, paperLook } from './seen-paper.ts';
import type { DrawingRoom, DrawingStyle } from './style.ts';
import { caption, listed } from './words.ts';

/**
 * A move of the folding, halfway: `fold-2` the one into the second stage, `glued-flat` a tube that is stuck while it
 * lies flat. What turns is named, an arrow shows which way, dots where glue goes; seen from where most of that is seen.
 * Undefined when there is no such piece or move.
 * @param told what is told beside the drawing: every panel in it that this calls by its name is named, if it is seen
 */
export function moveDrawing(
  editions: Editions,
  id: string,
  view: string,
  room: DrawingRoom,
  style: DrawingStyle,
  told = '',
): Drawing | undefined {
  const draw = (): Drawing | undefined => drawMoves(editions, id, view, room, style, told);
  return drawOnce(editions, style, ['move', id, view, room, told], draw);
}

function drawMoves(
  editions: Editions,
  id: string,
  view: string,
  room: DrawingRoom,
  style: DrawingStyle,
  told: string,
): Drawing | undefined {
  const isTold = ({ name }: NamedPanel): boolean => wordFinder(name(style)).test(told);
  const moves = seeMoves(editions[style.shown[0]], id, view).map((seen) => ({
    ...seen,
    named: seen.named.map((each) => ({ ...each, isIdle: each.isIdle && !isTold(each) })),
  }));
  if (moves.length === 0) return undefined;
  const names = moves.flatMap(({ turning }) => turning.map(({ name }) => name(style)));
  const panels = listed([...new Set(names)], style.say);
  const alternative = style.say('drawing-move', { name: caption(id, style.say), panels });
  return drawnToFit(moves, alternative, room, style);
}

/** No picture is drawn narrower than this, in millimeters, for the sake of its labels. */
const NARROWEST = 20;

/** As large as the room, or so much smaller that what stands beside it has room as well. */
function drawnToFit(
  moves: readonly MoveSeen[],
  alternative: string,
  room: DrawingRoom,
  style: DrawingStyle,
): Drawing {
  const { widest = Number.POSITIVE_INFINITY } = room;
  for (let { width } = room; ; ) {
    const canvas = new Canvas(style);
    const pictures = arranged(
      moves.map(({ picture }) => picture),
      { ...room, width },
    );
    for (const [index, picture] of pictures.entries()) drawMove(canvas, picture, moves[index]?.named ?? []);
    const drawing = canvas.drawing('move', alternative);
    const excess = drawing.width - widest;
    const { left, right } = boxOf(pictures.flatMap(pointsOf));
    width = right - left - Math.max(excess, 1);
    if (excess <= 0 || width < NARROWEST) return drawing;
  }
}

function moveOf(net: Net, view: string): FoldMove | undefined {
  if (view === FLAT_TUBE_VIEW) return moveFlat(net);
  const [, stage] = /^fold-(\d{1,3})$/u.exec(view) ?? [];
  return stage === undefined ? undefined : moveInto(net, Number(stage));
}

type MoveSeen = {
  readonly picture: SheetPicture;
  readonly turning: readonly NamedPanel[];
  /** Those first, then what else is called by its name. */
  readonly named: readonly NamedPanel[];
};

const seenMoves = new WeakMap<Edition, Map<string, readonly MoveSeen[]>>();

/** A move of every sheet of a piece that takes part in it: seen once, however large and with what words it is drawn. */
function seeMoves(edition: Edition, id: string, view: string): readonly MoveSeen[] {
  const known = seenMoves.get(edition) ?? new Map<string, readonly MoveSeen[]>();
  seenMoves.set(edition, known);
  const key = `${id} ${view}`;
  const seen =
    known.get(key) ??
    sheetsNamed(edition.shapes.nets, readRef(id)).flatMap(({ net }) => {
      const move = moveOf(net, view);
      return move ? [seeMove(edition, id, net, move)] : [];
    });
  known.set(key, seen);
  return seen;
}

/** The usual view is kept unless another shows so much more. */
const WORTH_A_TURN = 1.25;

function seeMove(edition: Edition, id: string, net: Net, move: FoldMove): MoveSeen {
  const { hung } = layDown(net);
  const turning = turningPanels(net, hung, move);
  const own = new Set(turning.map(({ panel }) => panel));
  const sheet = paperWithGlue(edition, id, net, move);
  const shares = (more: number): readonly number[] => sharesOf(hung, (fold) => move.at(fold, more));
  const views = LOOKS.map(({ look, isOver }) => {
    const seen = isOver ? { ...sheet, rest: turnedOver(sheet.rest) } : sheet;
    const { tree } = foldPaper(seen, shares(0));
    const faces = facesSeen(tree, look);
    const lines = turning.map(({ panel }) => pathOf(seen, panel, shares, look));
    return { faces, lines, worth: seenOf(faces, own) };
  });
  const [usual] = views;
  const best = views.reduce((most, view) => (view.worth > most.worth ? view : most));
  const picture = usual && usual.worth * WORTH_A_TURN >= best.worth ? usual : best;
  return { picture, turning, named: [...turning, ...otherPanels(net, hung, move, turning)] };
}

/** From the right and above, from behind, and both with the shape upside down, as a box lies when its bottom is closed. */
const LOOKS: readonly { readonly look: Look; readonly isOver: boolean }[] = [false, true].flatMap(
  (isOver) => [
    { look: USUAL_LOOK, isOver },
    { look: { ...USUAL_LOOK, turn: USUAL_LOOK.turn + 180 }, isOver },
  ],
);

function turnedOver({ right, up, outside, origin }: Pose): Pose {
  const [a, b, c, d] = [right, up, outside, origin].map(({ x, y, z }) => ({ x: -x, y: -y, z }));
  return { right: a ?? right, up: b ?? up, outside: c ?? outside, origin: d ?? origin };
}

/** The paper without what lies on it, but with the areas that take glue in this move. */
function paperWithGlue(edition: Edition, id: string, net: Net, { glued }: FoldMove): PaperSheet {
  const look = paperLook(edition, readRef(id).piece);
  const areas = glueAreas(net, look.caliper).filter(({ mate }) => glued.includes(mate));
  const layers = areas.flatMap(({ from: { panel, face, areas: outlines } }) =>
    outlines.map((outline) => ({ panel, face, outline, openings: [], color: look[face] })),
  );
  return paperOf(net, { ...look, layers });
}

/** How far an arrow shows a panel turn, as a share of its whole turn. */
const ARROW = 0.44;
const STEPS = 12;

/** The way of the middle of a panel's free edge, from where it is to where it goes. */
function pathOf(
  sheet: PaperSheet,
  panel: number,
  shares: (more: number) => readonly number[],
  look: Look,
): SheetPicture['lines'][number] {
  const { outline = [], hinge } = sheet.panels[panel] ?? {};
  const tip = farthestFrom(hinge?.line ?? [0, 0, 1, 0], outline);
  const points = Array.from({ length: STEPS + 1 }, (_, step) => {
    const pose = posesOf(sheet.panels, sheet.rest, shares((ARROW * (step + 1)) / (STEPS + 1)))[panel];
    return placed(pose ?? sheet.rest, tip);
  });
  const isHidden = isHiddenFrom(sheet, shares(0), look);
  return { points: points.map(placeInPicture(look)), hidden: points.map(isHidden) };
}

/** The middle of what of an outline is farthest from a line. */
function farthestFrom(
  [x0, y0, x1, y1]: readonly [number, number, number, number],
  outline: readonly number[],
) {
  const points = Array.from({ length: outline.length / 2 }, (_, at) => ({
    x: outline[2 * at] ?? 0,
    y: outline[2 * at + 1] ?? 0,
  }));
  const away = ({ x, y }: { x: number; y: number }): number =>
    Math.abs((x1 - x0) * (y - y0) - (y1 - y0) * (x - x0)) / Math.hypot(x1 - x0, y1 - y0);
  const most = Math.max(...points.map(away));
  const { left, top, right, bottom } = boxOf(points.filter((point) => away(point) > most * 0.98));
  return { x: (left + right) / 2, y: (top + bottom) / 2, z: 0 };
}

function drawMove(canvas: Canvas, picture: SheetPicture, named: readonly NamedPanel[]): void {
  const { faces, lines } = picture;
  for (const face of faces) {
    if (face.level === 0) drawFace(canvas, face);
    else {
      canvas.face(face.points, face.color, face.shade);
      canvas.glue('outside', face.points);
    }
  }
  const { spots, callouts } = placeNames(canvas, picture, named);
  for (const line of lines.filter((_, index) => spots[index])) drawArrow(canvas, line);
  for (const spot of spots) {
    if (spot?.hasRoom) canvas.label(spot.label, spot.at, { halo: spot.isOnGlue });
  }
  setCallouts(canvas, boxOf(pointsOf(picture)), callouts);
}

/** What the paper hides of an arrow is dashed, as a workshop draws hidden edges. */
function drawArrow(canvas: Canvas, { points, hidden }: SheetPicture['lines'][number]): void {
  const [from, to] = points.slice(-2);
  const start = points[0];
  if (!from || !to || !start || Math.hypot(to.x - start.x, to.y - start.y) < 2) return;
  for (const { from: first, to: last, isHidden } of stretches(hidden))
    canvas.line(isHidden ? 'move-hidden' : 'move', points.slice(first, last + 1));
  canvas.arrow(to, (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI, 2.6);
}

/** Runs of points that are all seen or all hidden, each up to where the next begins. */
function stretches(hidden: readonly boolean[]): readonly HingeStretch[] {
  const last = hidden.length - 1;
  const starts = hidden.flatMap((isHidden, index) =>
    index < last && (index === 0 || hidden[index - 1] !== isHidden) ? [index] : [],
  );
  return starts.map((from, index) => ({
    from,
    to: starts[index + 1] ?? last,
    isHidden: hidden[from] ?? false,
  }));
}

type HingeStretch = { readonly from: number; readonly to: number; readonly isHidden: boolean };
