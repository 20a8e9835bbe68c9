import { columnName } from '../shape/cells.ts';
import { distanceOutside, type Point2 } from '../shape/flat-polygon.ts';
import type { FlatBox, Net, Panel } from '../shape/net.ts';
import { boxCorners } from '../shape/outline.ts';
import type { Say } from '../words/labels.ts';
import { partNamed } from '../words/names.ts';
import type { Canvas } from './canvas.ts';
import { DESCENT, extentOf, type Label, plain } from './lettering.ts';
import { type DrawingFrame, place, placeAll, sheetBox } from './outline.ts';
import type { DrawnBox } from './region.ts';
import type { DrawnNet } from './style.ts';
import { roomiestSpot } from './visible.ts';

/** A panel's name that found no room on it: the number or letter that stands there, and the name to explain it. */
export type Numbered = { readonly sign: string; readonly name: string };

type NameSetting = {
  /** Whether a number stands for a name that finds no room; else it is left out. */
  readonly numbering: boolean;
  /** The part of the drawing to keep to; the whole sheet when absent. */
  readonly within?: DrawnBox;
};

/**
 * Writes each panel's name on it, or that of its cell; a number or letter where the name finds no room.
 * @returns those, for a list beside the drawing.
 */
export function drawNames(
  canvas: Canvas,
  drawn: DrawnNet,
  frame: DrawingFrame,
  { numbering, within = sheetBox(drawn.drawn, frame) }: NameSetting,
): readonly Numbered[] {
  const numbered: Numbered[] = [];
  for (const panel of drawn.drawn.panels) {
    const name = nameIn(drawn, panel, canvas.style.say);
    if (name === undefined) continue;
    const spot = spotOn(drawn, panel, frame, within);
    const { width, height, halo } = spot;
    const setting = settingOn(spot, name, canvas.lettering);
    if (setting) {
      canvas.label(setting.label, setting.center, { ...setting, halo });
      continue;
    }
    const last = [...spot.centers()].at(-1);
    // What has no name but its cell's is told by the letters and numbers round the sheet.
    if (numbering && last && panel.name !== undefined) {
      const sign = signFor(drawn.drawn, numbered.length);
      const size = Math.min(canvas.lettering, width, height);
      const at = settingOn(spot, sign, size)?.center ?? last;
      canvas.label([plain(sign)], at, { size, halo, strong: true });
      numbered.push({ sign, name });
    }
  }
  return numbered;
}

/** A number, or a letter where panels are called by numbers of their own: 3 under wall 2 would be taken for wall 3. */
function signFor({ panels }: Net, index: number): string {
  const isCalledByNumbers = panels.some(({ name }) => name !== undefined && /\d$/u.test(name));
  return isCalledByNumbers ? columnName(index).toLowerCase() : String(index + 1);
}

/** Where a panel's name belongs, and the room there. */
type NameSpot = {
  readonly outline: readonly Point2[];
  readonly width: number;
  readonly height: number;
  /** The middle, and where there is the most room, which is looked for once it is asked for. */
  readonly centers: () => Iterable<Point2>;
  /** Whether something lies under it that it has to stand out from. */
  readonly halo: boolean;
};

function spotOn(
  { drawn: net, glued }: DrawnNet,
  panel: Panel,
  frame: DrawingFrame,
  within: DrawnBox,
): NameSpot {
  const [width, height, middle] = roomOn(panel.box, frame, within);
  const holes = (net.openings ?? []).filter((opening) => opening.panel === panel.id);
  const outline = placeAll(panel.outline, frame);
  const cut = holes.map((hole) => placeAll(hole.outline, frame));
  const halo = holes.length > 0 || glued.some(({ panel: id }) => id === panel.id);
  let roomiest: readonly Point2[] | undefined;
  // The middle of a panel that is no rectangle may lie in an opening or at its very edge.
  function* centers(): Generator<Point2> {
    if (cut.length === 0) yield middle;
    roomiest ??= [roomiestSpot(outline, cut, [])?.at].flatMap((at) => at ?? []);
    yield* roomiest;
  }
  return { outline, width, height, centers, halo };
}

type NameLabel = {
  readonly label: Label;
  readonly size: number;
  readonly center: Point2;
  readonly upright?: true;
};

/** Small lettering as a share of the usual, where a name finds no room otherwise. */
const SMALL = 0.84;

/** Level or upright, in one line or in several, in the usual lettering or a little smaller: the first that fits. */
function settingOn(spot: NameSpot, name: string, usual: number): NameLabel | undefined {
  const words = name.split(' ');
  const labels = words.length > 1 ? [[plain(name)], words.map(plain)] : [[plain(name)]];
  for (const size of [usual, usual * SMALL]) {
    for (const center of spot.centers()) {
      const choices = [
        ...labels.map((label): NameLabel => ({ label, size, center })),
        ...labels.map((label): NameLabel => ({ label, size, center, upright: true })),
      ];
      const found = choices.find((choice) => hasRoomFor(choice, spot));
      if (found) return found;
    }
  }
  return undefined;
}

function hasRoomFor({ label, size, center, upright }: NameLabel, spot: NameSpot): boolean {
  const { width, height } = extentOf(label);
  const [long, high] = [width * size + 1.2, height * size + 1.2];
  const [across, down] = upright ? [high, long] : [long, high];
  const hasRoom = across <= spot.width && down <= spot.height;
  // What it stands out from, it hides: a plate must not reach over the cut beside it.
  const plate = spot.halo ? 2 * DESCENT * size : 0;
  const [wider, higher] = upright ? [plate, 0] : [0, plate];
  return hasRoom && liesOn(spot.outline, center, across - 1.2 + wider, down - 1.2 + higher);
}

/** Whether all of a name lies on a panel, which may be no rectangle. */
function liesOn(outline: readonly Point2[], { x, y }: Point2, width: number, height: number): boolean {
  const [across, down] = [width / 2, height / 2];
  const corners = boxCorners({ left: x - across, right: x + across, top: y - down, bottom: y + down });
  return corners.every((corner) => distanceOutside(corner, outline) < 0.5);
}

/** A panel's name, or that of its cell; of a flat piece the piece's own. Strips of a pop-up have none. */
function nameIn({ drawn: { folds }, hasCells }: DrawnNet, { id, name }: Panel, say: Say): string | undefined {
  if (name === undefined) return hasCells ? id : undefined;
  return (folds.length === 0 ? say.pieces.get(name) : undefined) ?? partNamed(name, say);
}

/** Width, height and middle of what is seen of a panel; neither where it isn't seen. */
function roomOn(box: FlatBox, frame: DrawingFrame, within: DrawnBox): readonly [number, number, Point2] {
  const from = place({ x: box.left, y: box.top }, frame);
  const to = place({ x: box.right, y: box.bottom }, frame);
  const left = Math.max(from.x, within.left);
  const top = Math.max(from.y, within.top);
  const right = Math.min(to.x, within.right);
  const bottom = Math.min(to.y, within.bottom);
  return [right - left, bottom - top, { x: (left + right) / 2, y: (top + bottom) / 2 }];
}
