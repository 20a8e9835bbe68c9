import type { Kit } from '../kit/plan.ts';
import { kitCsv } from '../kit/report/csv.ts';
import type { Currency } from '../kit/report/figures.ts';
import { kitJson } from '../kit/report/json.ts';
import { bagLabels, bagLabelsTitle, renderBagLabels } from '../kit-pages/bag-labels.ts';
import { kitPage, kitTitle, renderKit } from '../kit-pages/page.ts';
import { openPrinter } from '../print/printer.ts';
import type { Site } from '../project/model.ts';
import { printStyles } from './assets.ts';
import { checkWritable, type OutputFile, putFiles, type Written } from './files.ts';
import { labelsOf } from './languages.ts';
import { dayOfProject, openStudio, type Studio } from './output.ts';
import { readPackageFiles } from './package-files.ts';

export type KitFilesOptions = {
  readonly kit: Kit;
  readonly site: Site;
  readonly currency: Currency;
  /** The output folder, absolute. */
  readonly out: string;
  /** A page of labels for the bags too. */
  readonly labels: boolean;
  /** The browser's program, if one is named. */
  readonly browser?: string | undefined;
};

/** Where the files of a kit lie below the output folder: the demonstrator's own, never part of the site. */
export function kitFolder({ project, attendees }: Kit): string {
  return `host/${project.slug}-kit-${attendees}`;
}

/**
 * Writes a kit: `index.html`, `kit.json`, `kit.csv` and the PDFs. What needs no browser is written before one is asked.
 * @throws Unwritable, BrowserMissing or PrintFault, each with a remedy in one line.
 */
export async function makeKitFiles(options: KitFilesOptions): Promise<readonly Written[]> {
  const { kit, currency, out, site } = options;
  await checkWritable(out);
  const printer = openPrinter(options.browser === undefined ? {} : { browser: options.browser });
  try {
    const files = readPackageFiles();
    const labels = labelsOf(kit.project, site, files.labels);
    const studio = { ...openStudio(site, files, printer, { pdf: true }), labels };
    const folder = kitFolder(kit);
    const texts = [
      { path: `${folder}/index.html`, bytes: pageHtml(options, studio, 'page') },
      { path: `${folder}/kit.json`, bytes: kitJson(kit, currency) },
      { path: `${folder}/kit.csv`, bytes: kitCsv(kit, currency) },
    ];
    const written = await putFiles(out, texts);
    return [...written, ...(await putFiles(out, await printed(options, studio, folder)))];
  } finally {
    await printer.close();
  }
}

async function printed(options: KitFilesOptions, studio: Studio, folder: string): Promise<OutputFile[]> {
  const { kit, site, currency } = options;
  const { project, attendees } = kit;
  const { labels, printer, renderer } = studio;
  const date = dayOfProject(project);
  const [target = 'letter'] = site.paper;
  const sheets = await printer.pdf(pageHtml(options, studio, target), { title: kitTitle(kit, labels), date });
  const files = [{ path: `${folder}/${project.slug}-kit-${attendees}.pdf`, bytes: sheets }];
  if (!options.labels) return files;
  const page = bagLabels({ kit, site, currency, labels, target, styles: printStyles(studio.files, 'kit') });
  const title = bagLabelsTitle(kit, labels);
  const bags = await printer.pdf(renderBagLabels(page, renderer, labels), { title, date });
  return [...files, { path: `${folder}/${project.slug}-labels.pdf`, bytes: bags }];
}

function pageHtml(options: KitFilesOptions, studio: Studio, target: 'page' | 'letter' | 'a4'): string {
  const { kit, site, currency } = options;
  const { labels, renderer, files } = studio;
  const page = kitPage({ kit, site, currency, labels, target, styles: printStyles(files, 'kit') });
  return renderKit(page, renderer, labels);
}
