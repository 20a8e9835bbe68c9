import type { Root } from 'mdast';
import { restoreText } from './directives.ts';
import type { Prose, Step } from './model.ts';
import { parseWithin } from './nesting.ts';
import { checkPictures, type FindPicture } from './pictures.ts';
import type { Reader } from './reader.ts';
import { makeSafe } from './safe-content.ts';
import type { SourceFile } from './source.ts';
import { readSteps } from './steps.ts';

type SheetBody = {
  readonly body: Root;
  readonly introduction: Prose;
  readonly steps: readonly Step[];
};

/** Reads the Markdown of a sheet, whose frontmatter is blanked out. */
export function readBody(
  markdown: string,
  file: SourceFile,
  findPicture: FindPicture,
  reader: Reader,
): SheetBody {
  const body = parseWithin(markdown, file, reader.report);
  restoreText(body, file);
  makeSafe(body, file, reader.report);
  checkPictures(body, file, findPicture, reader.report);
  return { body, ...readSteps(body, file, reader) };
}
