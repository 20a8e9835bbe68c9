import { CALIBRATION, drawCalibration } from './calibration.ts';
import { Canvas } from './canvas.ts';
import { drawKey, type KeyEntry } from './key.ts';
import type { Page } from './pages.ts';
import type { DrawnBox } from './region.ts';
import type { DrawingStyle } from './style.ts';
import { drawFoot, type FootFacts, footFor } from './template-foot.ts';

/** What stands under what is drawn on a page: calibration, key and foot, side by side or below one another. */
type Strip = { readonly height: number; readonly draw: (canvas: Canvas) => void };

const GAP = 3;
/** Millimeters; words narrower than this go below the calibration. */
const LEAST_BESIDE = 90;

export function stripOn(
  { printable }: Page,
  entries: readonly KeyEntry[],
  told: FootFacts,
  style: DrawingStyle,
): Strip {
  const { left, right, bottom } = printable;
  const beside = right - left - CALIBRATION.width - 2 * GAP;
  const isBeside = beside >= LEAST_BESIDE;
  const width = isBeside ? beside : right - left;
  const foot = footFor(told, width, style);
  const key = drawKey(new Canvas(style), entries, { left: 0, top: 0, width });
  // Under its last row a key has some room of its own.
  const words = key + foot.height;
  const height = isBeside ? Math.max(CALIBRATION.height, words) : words + CALIBRATION.height + GAP;
  const calibration = bottom - CALIBRATION.height - (isBeside ? 0 : foot.height + GAP);
  const box = { left: right - width, top: bottom - height, right, bottom };
  return {
    height,
    draw: (canvas) => {
      drawKey(canvas, entries, { left: box.left, top: box.top, width });
      drawCalibration(canvas, { x: left, y: calibration });
      drawFoot(canvas, foot, box);
    },
  };
}

/** What is left of a page above a strip. */
export function roomAbove({ printable }: Page, { height }: Pick<Strip, 'height'>): DrawnBox {
  return { ...printable, bottom: printable.bottom - height - GAP };
}
