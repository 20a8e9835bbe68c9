import type { Face } from '../project/ref.ts';
import type { Point2 } from '../shape/flat-polygon.ts';
import { boxCorners } from '../shape/outline.ts';
import { type LabelSetting, labelBox } from './label-box.ts';
import { CAPITAL, DESCENT, type Label, LINE_HEIGHT, letteringMarkup, plain, unitOf } from './lettering.ts';
import { LINES, type LineKind, type LineType } from './lines.ts';
import { boxOf, type DrawnBox, dotGrid, hatchLines, type Segment, samePoint } from './region.ts';
import type { DrawingStyle } from './style.ts';
import { coordinate, element, pathData } from './svg.ts';
import { shaded, tint } from './tint.ts';

/** What a drawing keeps free around its ink, in millimeters: half the width of its lines, and a hair. */
export const MARGIN = 0.5;

/** A drawing ready to be set in a page. */
export type Drawing = {
  /** A complete `<svg>` element: role="img", an aria-label, a viewBox in millimeters of paper, no fixed colors of text. */
  readonly svg: string;
  /** What the drawing shows, with its measurements, for who cannot see it. */
  readonly alternative: string;
  /** The size it wants on paper, in millimeters. */
  readonly width: number;
  readonly height: number;
};

/**
 * A sheet of drawing paper, in millimeters, and the style it is drawn in. What is put on it becomes SVG at once; how far
 * it reaches is kept, so that the drawing ends where its ink does.
 */
export class Canvas {
  readonly style: DrawingStyle;
  /** The height of the lettering in millimeters of paper. */
  readonly lettering: number;
  readonly #marks: string[] = [];
  #ink: DrawnBox | undefined;

  constructor(style: DrawingStyle) {
    this.style = style;
    this.lettering = style.lettering ?? 3;
  }

  /** Everything drawn so far reaches this far, half the width of lines not counted. */
  get ink(): DrawnBox {
    return this.#ink ?? { left: 0, top: 0, right: 0, bottom: 0 };
  }

  /** A line that comes back to where it began is closed. */
  line(kind: LineKind, points: readonly Point2[], closed = false): void {
    const [start, end] = [points[0], points.at(-1)];
    const comesBack = points.length > 3 && start && end && samePoint(start, end);
    const data = comesBack ? pathData(points.slice(0, -1), true) : pathData(points, closed);
    this.#path(kind, data, points);
  }

  /** Many separate lines of one kind as one path. */
  lines(kind: LineKind, lines: readonly (readonly Point2[])[]): void {
    if (lines.length > 0) this.#path(kind, lines.map((line) => pathData(line, false)).join(''), lines.flat());
  }

  /** Paper: white, or lightly tinted in the stock's color. Covers what lies under it. */
  paper(outline: readonly Point2[], color?: string): void {
    const tinted =
      color === undefined ? { class: 'paper', fill: '#fff' } : { class: 'paper tint', fill: tint(color) };
    this.#put(outline, 'path', { ...tinted, d: pathData(outline, true) });
  }

  /** A face of something solid, in paper of a color (as it is in full light), `shade` from 0 (dark) to 1 (light). */
  face(outline: readonly Point2[], color: string, shade: number): void {
    const fill = shaded(color, shade);
    // A hair of its own color round it, so that nothing shines through between the strips of a bent panel.
    const seam = { stroke: fill, 'stroke-width': 0.15, 'stroke-linejoin': 'round' };
    this.#put(outline, 'path', { class: 'face tint', fill, ...seam, d: pathData(outline, true) });
  }

  /** Waste: hatched. */
  hatch(outline: readonly Point2[]): void {
    this.lines('hatch', hatchLines(outline, 1.6, 135));
  }

  /** Glue: dots on the outside, which is drawn; upright crosses on the inside, which faces away. */
  glue(face: Face, outline: readonly Point2[]): void {
    if (face === 'inside') {
      const crosses = dotGrid(outline, 3, 0.9);
      this.lines('glue-inside', [...crosses.map(levelStretch(0.55)), ...crosses.map(uprightStretch(0.55))]);
    } else {
      // A stretch too short to see with round ends is a dot in every reader of SVG; one without length is not.
      this.lines('glue-outside', dotGrid(outline, 2, 0.6).map(levelStretch(0.005)));
    }
  }

  /** A filled arrowhead with its tip at `tip`, pointing the way of `degrees` clockwise from the right. */
  arrow(tip: Point2, degrees: number, length = 1.9): void {
    const radians = (degrees * Math.PI) / 180;
    const back = { x: tip.x - length * Math.cos(radians), y: tip.y - length * Math.sin(radians) };
    const aside = { x: -Math.sin(radians) * length * 0.17, y: Math.cos(radians) * length * 0.17 };
    const points = [
      tip,
      { x: back.x + aside.x, y: back.y + aside.y },
      { x: back.x - aside.x, y: back.y - aside.y },
    ];
    this.#put(points, 'path', { class: 'arrow', fill: 'currentColor', d: pathData(points, true) });
  }

  /** The edge of something round, in a line that means something. */
  ring(kind: LineKind, center: Point2, radius: number, fill = 'none'): void {
    const look = { class: kind, fill, stroke: 'currentColor', 'stroke-width': LINES[kind].width };
    const reach = boxCorners(around(center, radius));
    this.#put(reach, 'circle', { ...look, cx: center.x, cy: center.y, r: radius });
  }

  /** A small round mark: a dot where it is filled. */
  circle(center: Point2, radius: number, filled = false): void {
    this.ring('mark', center, radius, filled ? 'currentColor' : '#fff');
  }

  /** A letter or number in a circle. */
  badge(text: string, center: Point2, size: number = this.lettering): void {
    this.circle(center, badgeRadius(text, size));
    this.label([plain(text)], center, { size, strong: true });
  }

  /** @returns the box it takes up. */
  label(label: Label, at: Point2, setting: LabelSetting): DrawnBox {
    const { anchor = 'middle', size = this.lettering, upright = false } = setting;
    const box = labelBox(label, at, { ...setting, size });
    const descent = (upright ? 0 : DESCENT) * size;
    this.#reach(boxCorners({ ...box, bottom: box.bottom + descent }));
    if (setting.halo) {
      // Over and under the letters: at their ends there is room as it is.
      const [x, y] = upright ? [DESCENT * size, 0] : [0, DESCENT * size];
      this.paper(
        boxCorners({ left: box.left - x, right: box.right + x, top: box.top - y, bottom: box.bottom + y }),
      );
    }
    const top = upright ? box.left : box.top;
    for (const [index, lettering] of label.entries()) {
      const across = top + (CAPITAL + index * LINE_HEIGHT) * size;
      const place = upright ? { x: across, y: at.y } : { x: at.x, y: across };
      const attributes = {
        class: index === 0 && setting.strong ? 'lettering strong' : 'lettering',
        'data-unit': unitOf(lettering),
        x: place.x,
        y: place.y,
        'font-size': size,
        'font-weight': index === 0 && setting.strong ? '600' : undefined,
        'text-anchor': anchor === 'start' ? undefined : anchor,
        fill: 'currentColor',
        transform: upright ? `rotate(-90 ${coordinate(place.x)} ${coordinate(place.y)})` : undefined,
      };
      this.#marks.push(element('text', attributes, letteringMarkup(lettering)));
    }
    return box;
  }

  /** Another canvas seen through a window: what lies outside is cut off. Coordinates stay the same. */
  window(box: DrawnBox, other: Canvas): void {
    const [width, height] = [box.right - box.left, box.bottom - box.top];
    const viewBox = [box.left, box.top, width, height].map(coordinate).join(' ');
    const place = { x: box.left, y: box.top, width, height, viewBox };
    this.#put(boxCorners(box), 'svg', place, ...other.#marks);
  }

  /** Puts another canvas on this one as a group. */
  group(name: string, other: Canvas): void {
    if (other.#ink) this.#put(boxCorners(other.#ink), 'g', { class: name }, ...other.#marks);
  }

  /** The finished drawing, as large as its ink and a margin, or exactly as large as `frame`. */
  drawing(
    kind: string,
    alternative: string,
    frame?: DrawnBox,
    attributes: Readonly<Record<string, string>> = {},
  ): Drawing {
    const { left, top, right, bottom } = frame ?? around(this.ink, MARGIN);
    const [width, height] = [right - left, bottom - top];
    const root = {
      xmlns: 'http://www.w3.org/2000/svg',
      class: `drawing drawing-${kind}`,
      role: 'img',
      'aria-label': alternative,
      width: `${coordinate(width)}mm`,
      height: `${coordinate(height)}mm`,
      viewBox: [left, top, width, height].map(coordinate).join(' '),
      ...attributes,
    };
    return { svg: element('svg', root, ...this.#marks), alternative, width, height };
  }

  #path(kind: LineKind, d: string, points: readonly Point2[]): void {
    const { width, dashes }: LineType = LINES[kind];
    this.#put(points, 'path', {
      class: kind,
      fill: 'none',
      stroke: 'currentColor',
      'stroke-width': width,
      'stroke-dasharray': dashes?.map(coordinate).join(' '),
      'stroke-linecap': dashes ? undefined : 'round',
      'stroke-linejoin': dashes ? undefined : 'round',
      d,
    });
  }

  /** An element, and the points it reaches to. */
  #put(points: readonly Point2[], ...made: Parameters<typeof element>): void {
    this.#reach(points);
    this.#marks.push(element(...made));
  }

  #reach(points: readonly Point2[]): void {
    const corners = this.#ink ? [...boxCorners(this.#ink)] : [];
    if (points.length > 0) this.#ink = boxOf([...corners, ...points]);
  }
}

/** The radius of a letter or number in a circle, by the height of its lettering. */
export function badgeRadius(text: string, size: number): number {
  return size * Math.max(0.72, text.length * 0.42);
}

/** A stretch this far to the left and right of a point. */
function levelStretch(reach: number): (middle: Point2) => Segment {
  return ({ x, y }) => [
    { x: x - reach, y },
    { x: x + reach, y },
  ];
}

function uprightStretch(reach: number): (middle: Point2) => Segment {
  return ({ x, y }) => [
    { x, y: y - reach },
    { x, y: y + reach },
  ];
}

function around(what: Point2 | DrawnBox, margin: number): DrawnBox {
  const box = 'x' in what ? { left: what.x, right: what.x, top: what.y, bottom: what.y } : what;
  return {
    left: box.left - margin,
    top: box.top - margin,
    right: box.right + margin,
    bottom: box.bottom + margin,
  };
}
