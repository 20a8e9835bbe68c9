import { createRenderer } from '../handout/render.ts';
import type { Printer } from '../print/printer.ts';
import type { Site } from '../project/model.ts';
import { labelsFor } from '../words/languages.ts';
import type { Studio } from './output.ts';
import type { PackageFiles } from './package-files.ts';

/** Sets up what every output uses: settings, templates, words and printer. */
export function openStudio(
  site: Site,
  files: PackageFiles,
  printer: Printer,
  { pdf, pdfsLater = false }: { readonly pdf: boolean; readonly pdfsLater?: boolean | undefined },
): Studio {
  const { labels } = labelsFor(files.labels, site.language);
  const offersPdfs = pdf || pdfsLater;
  return { site, files, printer, pdf, offersPdfs, labels, renderer: createRenderer(files) };
}
