import type { Form } from '../form.ts';
import { BOX_PARAMETERS, BOX_SIZES, readBox, sizesOf } from '../forming/box.ts';
import { form } from '../forming/form.ts';
import { TRAY_TAB_PARAMETER, trayNet, trayTab } from '../forming/tray.ts';

/** An open tray of one sheet: four walls about a floor, held by a tab at each corner. */
export const tray: Form = form({
  name: 'tray',
  summary: 'An open tray: four walls about a floor, with a glued tab inside each corner.',
  parameters: [...BOX_PARAMETERS, TRAY_TAB_PARAMETER],
  oneOf: BOX_SIZES,
  panels: ['front', 'back', 'left', 'right', 'floor'],
  example: {
    settings: ['inside: 4 x 3 x 1'],
    layer: { panel: 'front', cut: '3 3/4 x 3/4' },
  },
  closing: 'Stand the walls up and hold each corner until the glue has taken.',
  measure: (settings) => {
    const box = readBox(settings, 1);
    if (!box) return undefined;
    const sizes = sizesOf(box);
    return { ...sizes, tab: trayTab(settings, sizes.width, sizes.height).value };
  },
  shape: (measures, corners) => {
    const names = { floor: 'floor', above: 'front', left: 'left', right: 'right', below: 'back' };
    return { net: trayNet(measures, names, corners) };
  },
});
