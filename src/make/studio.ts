import type { Printer } from '../print/printer.ts';
import type { Site } from '../project/model.ts';
import { createRenderer } from '../sheet/render.ts';
import type { Studio } from './output-kind.ts';
import type { PackageFiles } from './package-files.ts';

const FALLBACK = 'en';

/** Sets up what every output uses: settings, templates, words and printer. */
export function openStudio(site: Site, files: PackageFiles, printer: Printer, pdf: boolean): Studio {
  const labels = files.labels.get(site.language) ?? files.labels.get(FALLBACK);
  if (!labels) throw new Error('the English labels are missing from the package');
  return { site, files, printer, pdf, labels, renderer: createRenderer(files) };
}
