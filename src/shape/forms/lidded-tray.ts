import { Length } from '../../measure/length.ts';
import type { Form } from '../form.ts';
import { leastNesting, nestingAllowance } from '../forming/allowance.ts';
import { BOX_PARAMETERS, BOX_SIZES, readBox, refuseNarrow, sizesOf } from '../forming/box.ts';
import { form } from '../forming/form.ts';
import { customary } from '../forming/ruler.ts';
import { TRAY_TAB_PARAMETER, trayNet, trayTab, usualTrayTab } from '../forming/tray.ts';

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
  parameters: [
    ...BOX_PARAMETERS,
    {
      key: 'lid',
      kind: 'length',
      required: false,
      says: 'height of the lid; 1 in (25 mm), or the height of the tray where that is less, when not given',
    },
    {
      key: 'clearance',
      kind: 'length',
      required: false,
      says: 'how much wider and deeper the lid is than the tray; two thicknesses and 1/16 in (2 mm) of play, up to the next 1/8 in (1 mm), when not given',
    },
    TRAY_TAB_PARAMETER,
  ],
  oneOf: BOX_SIZES,
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
  closing: 'Hold each corner until the glue has taken, then slip the lid over.',
  measure: (settings) => {
    const box = readBox(settings, 1);
    if (!box) return undefined;
    const { ruler, caliper } = settings;
    const base = sizesOf(box);
    const lid = settings.length('lid', Length.min(customary(ruler, 1, 1), base.height));
    const clearance = settings.length('clearance', nestingAllowance(ruler, caliper));
    refuseNarrow(settings, lid, 'the lid');
    settings.refuseOver(
      lid,
      base.height,
      'the lid',
      'a lid higher than its tray does not come down to its rim',
    );
    settings.refuseUnder(
      clearance,
      leastNesting(caliper),
      'the clearance',
      'two thicknesses of paper go into it',
    );
    const width = base.width.plus(clearance.value);
    return {
      base: { ...base, tab: trayTab(settings, base.width, base.height).value },
      lid: {
        width,
        depth: base.depth.plus(clearance.value),
        height: lid.value,
        tab: usualTrayTab(settings, width, lid.value),
      },
    };
  },
  shape: ({ base, lid }, corners) => ({
    net: trayNet(base, BASE, corners),
    parts: [{ name: 'lid', net: trayNet(lid, LID, corners) }],
  }),
});
