import type { Picture, Project } from '../project/model.ts';
import { lowestBases } from './drawings/pile.ts';
import { stackDrawing } from './drawings/stack.ts';
import { drawingElement, pictureElement } from './figures.ts';
import type { SafeHtml } from './safe-html.ts';
import type { Setting } from './setting.ts';

/** The picture at the head of a sheet, and whether it is the drawing of the first base's layers. */
export type Hero = { readonly html: SafeHtml; readonly showsLayers: boolean };

/** The photo a project is shown by: the one whose file is called `finished`, else the first. */
export function leadPhoto(project: Project): Picture | undefined {
  const prose = [project.introduction, ...project.steps.map((step) => step.prose)];
  const pictures = prose.flatMap((each) => each.pictures);
  return pictures.find(({ path }) => /(?:^|\/)finished\.\w+$/iu.test(path.value)) ?? pictures[0];
}

const ROOM = { width: 40, height: 52 };

/** A photo, else the layers drawn; undefined where there is neither. */
export function heroOf({ project, pictures, editions, drawings }: Setting): Hero | undefined {
  const photo = leadPhoto(project);
  const placed = photo && pictures.get(photo.path.value);
  if (photo && placed) return { html: pictureElement(placed, photo.alternative), showsLayers: false };
  const [base] = lowestBases(editions);
  const drawing = base && stackDrawing(editions, base, ROOM, drawings);
  return drawing && { html: drawingElement(drawing), showsLayers: true };
}
