import type { Length } from '../../measure/length.ts';
import type { Form } from '../form.ts';
import { leastNesting, nestingAllowance } from '../forming/allowance.ts';
import { BOX_PARAMETERS, BOX_SIZES, readBox, sizesOf, TAB_PARAMETER, usualTab } from '../forming/box.ts';
import { form } from '../forming/form.ts';
import { layoutNet, mountain } from '../forming/layout.ts';
import { trayNet, usualTrayTab } from '../forming/tray.ts';
import type { Net } from '../net.ts';

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
  parameters: [
    ...BOX_PARAMETERS,
    {
      ...TAB_PARAMETER,
      says: 'width of the glue tab of the sleeve; 1/2 in (13 mm), or its width where that is less, when not given',
    },
    {
      key: 'clearance',
      kind: 'length',
      required: false,
      says: 'how much wider and higher the sleeve is than the drawer; two thicknesses and 1/16 in (2 mm) of play, up to the next 1/8 in (1 mm), when not given',
    },
  ],
  oneOf: BOX_SIZES,
  panels: ['top', 'left', 'right', 'bottom', 'front', 'back'],
  example: {
    settings: ['inside: 3 x 4 x 1'],
    layer: { panel: 'top', cut: '2 7/8 x 3 3/4' },
  },
  closing: 'Let the glue dry, then slide the drawer into the sleeve.',
  measure: (settings) => {
    const box = readBox(settings, 1);
    if (!box) return undefined;
    const drawer = sizesOf(box);
    const clearance = settings.length('clearance', nestingAllowance(settings.ruler, settings.caliper));
    const width = drawer.width.plus(clearance.value);
    const tab = settings.length('tab', usualTab(settings, width));
    settings.refuseUnder(
      clearance,
      leastNesting(settings.caliper),
      'the clearance',
      'two thicknesses of paper go into it',
    );
    settings.refuseOver(
      tab,
      width,
      'the tab',
      'it is glued to the bottom of the sleeve, which is only that wide',
    );
    return {
      drawer: { ...drawer, tab: usualTrayTab(settings, drawer.width, drawer.height) },
      sleeve: { width, height: drawer.height.plus(clearance.value), length: drawer.depth, tab: tab.value },
    };
  },
  shape: ({ drawer, sleeve }, corners) => ({
    net: trayNet(drawer, DRAWER, corners),
    parts: [{ name: 'sleeve', net: sleeveNet(sleeve) }],
  }),
});

function sleeveNet({
  width,
  height,
  length,
  tab,
}: Record<'width' | 'height' | 'length' | 'tab', Length>): Net {
  return layoutNet({
    columns: [width, height, width, height, tab],
    rows: [length],
    cells: [['bottom', 'left', 'top', 'right', 'tab']],
    roles: { bottom: 'under', tab: 'tab' },
    bends: [mountain(1, ['bottom|left', 'left|top', 'top|right', 'right|tab'])],
    taper: ['tab'],
    glue: [['tab', 'bottom']],
  });
}
