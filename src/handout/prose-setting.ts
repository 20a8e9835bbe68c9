import { type Figure, pictureFigure } from '../drawing/figures.ts';
import type { ProseSetting } from './markdown-nodes.ts';
import { measuredText } from './measured-text.ts';
import { referrer } from './references.ts';
import type { Setting } from './setting.ts';
import { stepDrawing } from './step-drawing.ts';

/** How the Markdown of one step, or of the introduction, is set. Made anew for each: it remembers what was mentioned. */
export function proseSetting(setting: Setting, headings: ProseSetting['headings']): ProseSetting {
  const { project, voice, editions, measures } = setting;
  return {
    voice,
    source: project.file.text,
    headings,
    refer: referrer(editions, measures, voice),
    measured: (text) => measuredText(text, setting),
    draw: (of, attributes) => stepDrawing(setting, of, attributes),
    picture: (path, alternative, caption) => placedFigure(setting, path, alternative, caption),
  };
}

function placedFigure(
  { pictures }: Setting,
  path: string,
  alternative: string,
  caption: string | undefined,
): Figure | undefined {
  const picture = pictures.get(path);
  return picture && pictureFigure(picture, alternative, caption);
}
