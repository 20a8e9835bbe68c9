import type { Printer } from '../print/printer.ts';
import type { Site } from '../project/model.ts';
import { labelsFor } from '../sheet/languages.ts';
import { createRenderer } from '../sheet/render.ts';
import type { Studio } from './output-kind.ts';
import type { PackageFiles } from './package-files.ts';

/** Sets up what every output uses: settings, templates, words and printer. */
export function openStudio(site: Site, files: PackageFiles, printer: Printer, pdf: boolean): Studio {
  const { labels } = labelsFor(files.labels, site.language);
  return { site, files, printer, pdf, labels, renderer: createRenderer(files) };
}
