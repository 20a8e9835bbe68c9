import type { Form } from '../form.ts';
import { sizeOfBox } from '../forming/box.ts';
import { form } from '../forming/form.ts';
import { readTrayTab, TRAY_TAB, trayLayout } from '../forming/tray.ts';

/** An open tray of one sheet: four walls around a floor, held by a tab at each corner. */
export const tray: Form = form({
  name: 'tray',
  summary: 'An open tray: four walls around a floor, with a glued tab inside each corner.',
  size: sizeOfBox(1),
  parameters: { tab: TRAY_TAB },
  panels: ['front', 'back', 'left', 'right', 'floor'],
  example: {
    settings: ['inside: 4 x 3 x 1'],
    layer: { panel: 'front', cut: '3 3/4 x 3/4' },
  },
  closing: 'Stand the walls up and hold each corner until the glue grabs.',
  measure: (settings, box) => ({ ...box, tab: readTrayTab(settings, box.width, box.height) }),
  layout: (measures) =>
    trayLayout(measures, { floor: 'floor', above: 'front', left: 'left', right: 'right', below: 'back' }),
});
