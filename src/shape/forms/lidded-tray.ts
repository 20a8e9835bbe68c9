import { Length } from '../../measure/length.ts';
import type { Form } from '../form.ts';
import { readClearance, sizeOfBox } from '../forming/box.ts';
import { form, optionalLength } from '../forming/form.ts';
import { customary } from '../forming/ruler.ts';
import { readTrayTab, TRAY_TAB, trayLayout, usualTrayTab } from '../forming/tray.ts';
import type { Nesting } from '../net.ts';

const BASE = { floor: 'floor', above: 'front', left: 'left', right: 'right', below: 'back' };
const LID = {
  floor: 'top',
  above: 'lid-back',
  left: 'lid-left',
  right: 'lid-right',
  below: 'lid-front',
  isLid: true,
} as const;

/**
 * A tray with a second, slightly larger tray turned over it as a lid. The lid's usual height is common practice, no
 * source.
 */
export const liddedTray: Form = form({
  name: 'lidded tray',
  summary: 'A tray and, cut from a second sheet, a lid that slips over it.',
  size: sizeOfBox(1),
  parameters: {
    lid: optionalLength(
      'height of the lid; 1 in (25 mm), or the height of the tray where that is less, by default',
    ),
    clearance: optionalLength(
      'how much wider and deeper the lid is than the tray; four thicknesses, two of them tabs, and 1/16 in (2 mm) of play, up to the next 1/8 in (1 mm), by default',
    ),
    tab: TRAY_TAB,
  },
  panels: [
    'top',
    'lid-front',
    'lid-back',
    'lid-left',
    'lid-right',
    'front',
    'back',
    'left',
    'right',
    'floor',
  ],
  example: {
    settings: ['inside: 4 x 4 x 2', 'lid: 1'],
    layer: { panel: 'top', cut: '3 7/8 x 3 7/8' },
  },
  closing: 'Hold each corner until the glue grabs, then slip the lid on.',
  measure: (settings, base) => {
    const lid = settings.length('lid', Length.min(customary(settings.ruler, 1, 1), base.height), [
      settings.foldable,
      { most: base.height, why: 'a lid higher than its tray does not come down to its rim' },
    ]);
    const clearance = readClearance(settings, 2);
    const width = base.width.plus(clearance);
    const tab = usualTrayTab(settings, width, lid);
    const takes: readonly Nesting[] = [
      { walls: [BASE.left, BASE.right], by: clearance, tabs: 0, reach: lid },
      { walls: [BASE.above, BASE.below], by: clearance, tabs: 2, reach: lid },
    ];
    return {
      takes,
      base: { ...base, tab: readTrayTab(settings, base.width, base.height) },
      lid: { width, depth: base.depth.plus(clearance), height: lid, tab },
    };
  },
  layout: ({ base }) => trayLayout(base, BASE),
  parts: ({ lid, takes }) => ({ lid: { ...trayLayout(lid, LID), takes } }),
});
