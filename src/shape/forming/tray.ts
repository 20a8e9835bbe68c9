import { Length } from '../../measure/length.ts';
import { optionalLength, type Parameters } from './form.ts';
import { type Layout, mountain } from './layout.ts';
import { roundToGroove } from './ruler.ts';
import type { Settings } from './settings.ts';

/** An open tray from score line to score line. */
type TrayMeasures = {
  readonly width: Length;
  readonly depth: Length;
  readonly height: Length;
  /** How far each corner tab reaches along the front or back wall. */
  readonly tab: Length;
};

/**
 * What the panels of a tray are called. `above` is the wall that lies above the floor when the outside of the floor
 * faces the reader: a tray tipped over to show its underside has its front there, a lid seen from above its back.
 */
type TrayNames = {
  readonly floor: string;
  readonly above: string;
  readonly left: string;
  readonly right: string;
  readonly below: string;
  /** It lies upside down, as a lid does. */
  readonly isLid?: true;
};

export const TRAY_TAB: Parameters[string] = optionalLength(
  'how far the corner tabs reach along the front and the back; the whole corner square by default, less where two would meet on one wall',
);

/** The corner tab of a tray; `height` says what it may be at most, `width` of the wall it shares with another. */
export function readTrayTab(settings: Settings, width: Length, height: Length): Length {
  return settings.length('tab', usualTrayTab(settings, width, height), [
    { most: height, why: 'it is cut from the corner square, which is only that long' },
    { most: width.half(), why: 'two tabs would meet on the front' },
  ]);
}

/** The whole corner square; cut back to half the wall where two of them would meet. */
export function usualTrayTab({ ruler }: Settings, width: Length, height: Length): Length {
  return height.greaterThan(width.half()) ? Length.min(height, roundToGroove(ruler, width.half())) : height;
}

/**
 * The sheet of a tray: one score a wall's height in from each edge, one slit at each corner. The corner squares hang
 * on the left and right walls and are glued inside the front and the back.
 */
export function trayLayout(measures: TrayMeasures, names: TrayNames): Layout {
  const { width, depth, height, tab } = measures;
  const { floor, above, left, right, below, isLid } = names;
  const tabs = [`${above}-left-tab`, `${above}-right-tab`, `${below}-left-tab`, `${below}-right-tab`];
  const [aboveLeft = '', aboveRight = '', belowLeft = '', belowRight = ''] = tabs;
  return {
    columns: [height, width, height],
    rows: [height, depth, height],
    cells: [
      [aboveLeft, above, aboveRight],
      [left, floor, right],
      [belowLeft, below, belowRight],
    ],
    bends: [
      mountain(1, [`${left}|${floor}`, `${floor}|${right}`]),
      mountain(2, [`${left}|${aboveLeft}`, `${left}|${belowLeft}`]),
      mountain(2, [`${right}|${aboveRight}`, `${right}|${belowRight}`]),
      mountain(3, [`${above}|${floor}`, `${floor}|${below}`]),
    ],
    roles: { [floor]: isLid ? 'over' : 'under', [isLid ? below : above]: 'front' },
    taper: tabs,
    glue: [
      [aboveLeft, above],
      [aboveRight, above],
      [belowLeft, below],
      [belowRight, below],
    ],
    shorten: { panels: tabs, to: tab },
  };
}
