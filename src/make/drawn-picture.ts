import type { Drawing } from '../sheet/drawing.ts';
import { foldedDrawing } from '../sheet/drawings/folded.ts';
import { lowestBases } from '../sheet/drawings/pile.ts';
import { stackDrawing } from '../sheet/drawings/stack.ts';
import { speaker } from '../sheet/labels.ts';
import type { ProjectMaterial } from './output-kind.ts';

/** The picture's name in the project's folder. */
export const DRAWN_PICTURE = 'picture.svg';

const ROOM = { width: 120, height: 90 };

/** The picture of a project that has no photo: the folded shape of its first piece, else its layers. */
export function drawnPicture({ editions, labels }: ProjectMaterial): Drawing | undefined {
  const style = { leading: editions.own, say: speaker(labels) };
  const { project, shapes } = editions[editions.own];
  const folded = [...project.pieces.keys()].find((id) => (shapes.nets.get(id)?.folds.length ?? 0) > 0);
  if (folded !== undefined) return foldedDrawing(editions, folded, 'folded', ROOM, style);
  const [base] = lowestBases(editions);
  return base && stackDrawing(editions, base, ROOM, style);
}
