import type { Drawing } from '../drawing/drawing.ts';
import { foldedDrawing } from '../drawing/folded.ts';
import { lowestBases } from '../drawing/pile.ts';
import { stackDrawing } from '../drawing/stack.ts';
import { mainPiece } from '../handout/finished-size.ts';
import { speaker } from '../words/labels.ts';
import type { ProjectMaterial } from './output.ts';

/** The picture's name in the project's folder. */
export const DRAWN_PICTURE = 'picture.svg';

const ROOM = { width: 120, height: 90 };

/**
 * The picture of a project that has no photo, for people, not for cutting by: the folded shape of its main piece, or
 * a flat one with what lies on it. No measurements stand in it; it is shown small.
 */
export function drawnPicture({ editions, labels }: ProjectMaterial): Drawing | undefined {
  const style = { leading: editions.own, say: speaker(labels) };
  const main = mainPiece(editions);
  const drawing = main && foldedDrawing(editions, main.id.value, 'folded', ROOM, style);
  if (drawing) return drawing;
  const [base] = lowestBases(editions);
  return base && stackDrawing(editions, base, ROOM, style);
}
