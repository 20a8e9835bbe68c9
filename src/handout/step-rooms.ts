import type { DrawingRoom } from '../drawing/style.ts';
import { COLUMN } from './column.ts';
import { areaWidth } from './css.ts';
import type { Setting } from './setting.ts';

/** Room for the drawings of a step, in millimeters: of a folded shape, a sheet that lies flat, and layers with their labels. */
export type StepRooms = Readonly<Record<'shape' | 'flat' | 'layers', DrawingRoom>>;

const PRINT: StepRooms = {
  shape: { width: 62, height: 58, widest: COLUMN },
  flat: { width: 76, height: 76 },
  layers: { width: COLUMN, height: 95 },
};
const PAGE: StepRooms = {
  shape: { width: 70, height: 64, widest: 120 },
  flat: { width: 110, height: 100 },
  layers: { width: 120, height: 110 },
};
/** The width of a page in large print. */
const LARGE_WIDEST = areaWidth('large-print');
const LARGE: StepRooms = {
  shape: { width: 100, height: 72, widest: LARGE_WIDEST },
  flat: { width: 140, height: 120 },
  layers: { width: LARGE_WIDEST, height: 100, hasSide: true },
};
/** Of several pictures, two side by side: the height of a page for all rows of them, with their labels in `labels`. */
const LARGE_BESIDE = { width: 92, rows: 220, labels: 62, shape: 66, layers: 75 };

/** @param pictures how many drawings and photos are in the step */
export function roomIn({ target }: Setting, pictures: number): StepRooms {
  if (target === 'page') return PAGE;
  if (target !== 'large-print') return PRINT;
  return pictures > 1 ? roomBeside(pictures) : LARGE;
}

function roomBeside(pictures: number): StepRooms {
  const { width, rows, labels, shape, layers } = LARGE_BESIDE;
  const most = rows / Math.ceil(pictures / 2) - labels;
  const room = (height: number): DrawingRoom => ({ width, height: Math.min(height, Math.max(most, 30)) });
  return {
    shape: { ...room(shape), widest: width },
    flat: room(layers),
    layers: { ...room(layers), widest: LARGE_WIDEST, hasSide: true },
  };
}

/** The same where layers and their labels take more of the page than they would beside one another. */
export function oneARow(rooms: StepRooms): StepRooms {
  const { widest: width = rooms.layers.width, ...layers } = rooms.layers;
  return { ...rooms, layers: { ...layers, width } };
}
