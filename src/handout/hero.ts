import { drawingElement, pictureElement } from '../drawing/figures.ts';
import { foldedDrawing } from '../drawing/folded.ts';
import { lowestBases } from '../drawing/pile.ts';
import { stackDrawing } from '../drawing/stack.ts';
import { ownEdition } from '../edition/editions.ts';
import type { Picture, Project } from '../project/model.ts';
import type { SafeHtml } from '../words/safe-html.ts';
import { mainPiece } from './finished-size.ts';
import type { Setting } from './setting.ts';

/** The picture at the head of a sheet, and whether it is the drawing of the first base's layers lying flat. */
export type Hero = { readonly html: SafeHtml; readonly showsLayers: boolean };

/** The photo a project is shown by: the one whose file is called `finished`, else the first. */
export function leadPhoto(project: Project): Picture | undefined {
  const prose = [project.introduction, ...project.steps.map((step) => step.prose)];
  const pictures = prose.flatMap((each) => each.pictures);
  return pictures.find(({ path }) => /(?:^|\/)finished\.\w+$/iu.test(path.value)) ?? pictures[0];
}

const ROOM = { folded: { width: 54, height: 42 }, layers: { width: 36, height: 38 } };

/** A photo, else the folded shape drawn, else the layers; undefined where there is nothing of the kind. */
export function heroOf({ project, pictures, editions, drawings }: Setting): Hero | undefined {
  const photo = leadPhoto(project);
  const placed = photo && pictures.get(photo.path.value);
  if (photo && placed) return { html: pictureElement(placed, photo.alternative), showsLayers: false };
  const main = mainPiece(editions);
  const folds = main && ownEdition(editions).shapes.nets.get(main.id.value)?.folds.length;
  const folded = main && folds && foldedDrawing(editions, main.id.value, 'folded', ROOM.folded, drawings);
  if (folded) return { html: drawingElement(folded), showsLayers: false };
  const [base] = lowestBases(editions);
  const drawing = base && stackDrawing(editions, base, ROOM.layers, drawings);
  return drawing && { html: drawingElement(drawing), showsLayers: true };
}
