import type { Point2 } from '../shape/flat-polygon.ts';
import { extentOf, type Label } from './lettering.ts';
import type { DrawnBox } from './region.ts';

/** How a label is set about its point. */
export type LabelSetting = {
  /** Height of the lettering in millimeters of paper; the drawing's own when absent. */
  readonly size?: number;
  /** Where the point lies: at the label's start, middle (when absent) or end. */
  readonly anchor?: 'start' | 'middle' | 'end';
  /** Where the label lies about the point's height: on it (when absent), over or under it. */
  readonly sits?: 'on' | 'over' | 'under';
  /** Quarter turn anticlockwise, to be read from the right. */
  readonly upright?: boolean;
  /** The first line is the heavier one. */
  readonly strong?: boolean;
  /** Paper behind it, so that no line runs through it. */
  readonly halo?: boolean;
};

/** The box a label takes up, its lettering's width estimated. */
export function labelBox(
  label: Label,
  at: Point2,
  setting: LabelSetting & { readonly size: number },
): DrawnBox {
  const { anchor = 'middle', sits = 'on', size, upright = false } = setting;
  const extent = extentOf(label);
  const [width, height] = [extent.width * size, extent.height * size];
  const before = { start: 0, middle: width / 2, end: width }[anchor];
  const up = { on: height / 2, over: height, under: 0 }[sits];
  const [left, top] = upright ? [at.x - up, at.y + before - width] : [at.x - before, at.y - up];
  const [across, down] = upright ? [height, width] : [width, height];
  return { left, top, right: left + across, bottom: top + down };
}
