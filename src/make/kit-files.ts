import { createRenderer } from '../handout/render.ts';
import type { Kit } from '../kit/plan.ts';
import { kitCsv } from '../kit/report/csv.ts';
import type { Currency } from '../kit/report/figures.ts';
import { kitJson } from '../kit/report/json.ts';
import type { Person } from '../kit/roster.ts';
import { bagLabels } from '../kit-pages/bag-labels.ts';
import { kitPage } from '../kit-pages/page.ts';
import { addressLabels, packingList } from '../kit-pages/roster-pages.ts';
import { openPrinter } from '../print/printer.ts';
import type { Site } from '../project/model.ts';
import { printStyles, typeset } from './assets.ts';
import { checkWritable, type OutputFile, putFiles, type Written } from './files.ts';
import { labelsOf } from './languages.ts';
import { dayOfProject } from './output.ts';
import { filesFor } from './package-files.ts';

export type KitFilesOptions = {
  readonly kit: Kit;
  readonly site: Site;
  readonly currency: Currency;
  /** The output folder, absolute. */
  readonly out: string;
  /** A page of labels for the bags too. */
  readonly labels: boolean;
  /** Who gets the kits, if that is known: bags with names, a packing list and address labels. Nowhere else. */
  readonly people?: readonly Person[] | undefined;
  /** The browser's program, if one is named. */
  readonly browser?: string | undefined;
};

/** Where the files of a kit lie below the output folder: the demonstrator's own, never part of the site. */
export function kitFolder(kit: Kit): string {
  return `host/${kitName(kit)}`;
}

/** `bulb-box-kit-12`; of variants `bulb-box-kit-6-small-6-large`. */
function kitName({ project, makings, attendees }: Kit): string {
  const variants = makings.flatMap(({ project: { variant }, attendees: own }) =>
    variant ? [`${own}-${variant.slug}`] : [],
  );
  return [project.slug, 'kit', ...(variants.length > 0 ? variants : [attendees])].join('-');
}

/**
 * Writes a kit: `index.html`, `kit.json`, `kit.csv` and the PDFs. What needs no browser is written before one is asked.
 * @throws Unwritable, BrowserMissing or PrintFault, each with a remedy in one line.
 */
export async function makeKitFiles(options: KitFilesOptions): Promise<readonly Written[]> {
  const { kit, currency, out, site, browser, people = [] } = options;
  const { project } = kit;
  await checkWritable(out);
  const files = filesFor(site);
  const labels = labelsOf(project, site, files.labels);
  const [paper = 'letter'] = site.paper;
  const styles = printStyles(files, 'kit');
  const input = { kit, site, currency, labels, styles, renderer: createRenderer(files), target: paper };
  const at = (name: string): string => `${kitFolder(kit)}/${name}`;
  const written = await putFiles(out, [
    { path: at('index.html'), bytes: typeset(kitPage({ ...input, target: 'page' }).html, files) },
    { path: at('kit.json'), bytes: kitJson(kit, currency) },
    { path: at('kit.csv'), bytes: kitCsv(kit, currency) },
  ]);
  const prints = [
    { path: at(`${kitName(kit)}.pdf`), page: kitPage(input) },
    ...(options.labels || people.length > 0
      ? [{ path: at(`${project.slug}-labels.pdf`), page: bagLabels(input, people) }]
      : []),
    ...(people.length > 0
      ? [{ path: at(`${project.slug}-packing-list.pdf`), page: packingList(input, people) }]
      : []),
    ...(people.some(({ by }) => by === 'post')
      ? [{ path: at(`${project.slug}-addresses.pdf`), page: addressLabels(input, people, paper) }]
      : []),
  ];
  const printer = openPrinter({ browser });
  try {
    const printed: OutputFile[] = [];
    for (const { path, page } of prints) {
      const date = dayOfProject(project);
      printed.push({
        path,
        bytes: await printer.pdf(typeset(page.html, files), { title: page.title, date }),
      });
    }
    return [...written, ...(await putFiles(out, printed))];
  } finally {
    await printer.close();
  }
}
