import type { Form } from '../form.ts';
import { readClearance, readTab, sizeOfBox } from '../forming/box.ts';
import { form, optionalLength } from '../forming/form.ts';
import { mountain } from '../forming/layout.ts';
import { trayLayout, usualTrayTab } from '../forming/tray.ts';

const DRAWER = {
  floor: 'drawer-floor',
  above: 'front',
  left: 'drawer-left',
  right: 'drawer-right',
  below: 'back',
};

/** A drawer that slides front to back through a sleeve of the same length. */
export const slideBox: Form = form({
  name: 'slide box',
  summary: 'A drawer and, cut from a second sheet, the sleeve it slides in.',
  size: sizeOfBox(1),
  parameters: {
    tab: optionalLength(
      'width of the glue tab of the sleeve; 1/2 in (13 mm), or its width where that is less, by default',
    ),
    clearance: optionalLength(
      'how much wider and higher the sleeve is than the drawer; three thicknesses, one of them the tab, and 1/16 in (2 mm) of play, up to the next 1/8 in (1 mm), by default',
    ),
  },
  panels: ['top', 'left', 'right', 'bottom', 'front', 'back'],
  example: {
    settings: ['inside: 3 x 4 x 1'],
    layer: { panel: 'top', cut: '2 7/8 x 3 3/4' },
  },
  closing: 'Let the glue dry, then slide the drawer into the sleeve.',
  measure: (settings, box) => {
    const clearance = readClearance(settings, 1);
    const width = box.width.plus(clearance);
    const tab = readTab(settings, width, 'to the bottom of the sleeve');
    return {
      drawer: { ...box, tab: usualTrayTab(settings, box.width, box.height) },
      takes: [
        { walls: [DRAWER.left, DRAWER.right], by: clearance, tabs: 0 },
        { walls: [DRAWER.floor], by: clearance, tabs: 1 },
      ] as const,
      sleeve: { width, height: box.height.plus(clearance), length: box.depth, tab },
    };
  },
  layout: ({ drawer }) => trayLayout(drawer, DRAWER),
  parts: ({ takes, sleeve: { width, height, length, tab } }) => ({
    sleeve: {
      takes,
      columns: [width, height, width, height, tab],
      rows: [length],
      cells: [['bottom', 'left', 'top', 'right', 'tab']],
      roles: { bottom: 'under' },
      bends: [mountain(1, ['bottom|left', 'left|top', 'top|right', 'right|tab'])],
      taper: ['tab'],
      glue: [['tab', 'bottom']],
      corners: undefined,
    },
  }),
});
