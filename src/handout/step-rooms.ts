import type { DrawingRoom } from '../drawing/style.ts';
import { COLUMN } from './column.ts';
import type { Setting } from './setting.ts';

/** Room for the drawings of a step, in millimeters: of a folded shape, a sheet that lies flat, and layers with their labels. */
type StepRooms = Readonly<Record<'shape' | 'flat' | 'layers', DrawingRoom>>;

const PRINT: StepRooms = {
  shape: { width: 62, height: 58 },
  flat: { width: 76, height: 76 },
  layers: { width: COLUMN, height: 95 },
};
const PAGE: StepRooms = {
  shape: { width: 70, height: 64 },
  flat: { width: 110, height: 100 },
  layers: { width: 120, height: 110 },
};
const LARGE: StepRooms = {
  shape: { width: 100, height: 90 },
  flat: { width: 140, height: 120 },
  layers: { width: 165, height: 130 },
};

export function roomIn({ target }: Setting): StepRooms {
  if (target === 'page') return PAGE;
  return target === 'large-print' ? LARGE : PRINT;
}
